package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// newAgain is the quiet mark beside a name that says what to measure again.
func newAgain() *widget.Label {
	l := widget.NewLabel("")
	l.SizeName = theme.SizeNameCaptionText
	l.Importance = widget.HighImportance
	l.Hide()
	return l
}

// dot stands for the words of a mark where there is no room for them.
const dot = "•"

// markAgain shows the mark where the value has one, and where it is in hand says why.
func (r *measureRow) markAgain() {
	if foot := r.list.foot; foot.key == r.measure.Key {
		foot.show(r.measure)
	}
	if hidden := r.measure.Again == ""; hidden != r.again.Hidden {
		r.again.Hidden = hidden
		r.Refresh()
	} else if !hidden {
		r.placeAgain(r.entry.Position().X, r.entry.Size().Height)
	}
}

// placeAgain puts the mark before the entry, which begins at right.
func (r *measureRow) placeAgain(right, height float32) {
	text, letters := r.measure.Again, theme.SizeNameCaptionText
	name := fyne.MeasureText(r.label.Text, theme.TextSize(), r.label.TextStyle).Width
	mark := fyne.MeasureText(text, theme.CaptionTextSize(), fyne.TextStyle{}).Width
	if text != "" && name+mark+3*theme.InnerPadding() > right {
		text, letters = dot, theme.SizeNameSubHeadingText
	}
	if r.again.Text != text {
		r.again.SizeName = letters
		r.again.SetText(text)
	}
	size := r.again.MinSize()
	r.again.Resize(size)
	r.again.Move(fyne.NewPos(right-size.Width, (height-size.Height)/2))
}

// Again returns the mark beside the name of a key, "" where there is none.
func (l *MeasureList) Again(key string) string {
	if r := l.row(key); r != nil && r.again.Visible() {
		return r.again.Text
	}
	return ""
}
