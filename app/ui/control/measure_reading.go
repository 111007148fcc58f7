package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// reading is the line of one reading.
type reading struct {
	label *widget.Label
	entry *readingEntry
	out   *mark
	box   *fyne.Container
}

func newReading(s *readings) *reading {
	l := &reading{label: widget.NewLabel("")}
	l.label.SizeName = theme.SizeNameCaptionText
	l.label.Alignment = fyne.TextAlignTrailing
	l.entry = newReadingEntry(s, l)
	l.out = newMark("×", func() { s.remove(l) })
	l.box = container.New(readingLayout{}, l.label, l.entry, l.out)
	return l
}

// tell says which reading it is, and emphasises the one that is kept.
func (l *reading) tell(i int, kept bool) {
	text := lang.L("reading {{.N}}", map[string]any{"N": i + 1})
	if kept {
		text = lang.L("reading {{.N}}, kept", map[string]any{"N": i + 1})
	}
	if l.label.Text != text {
		l.label.TextStyle.Bold = kept
		l.label.SetText(text)
		l.entry.TextStyle.Bold = kept
		l.entry.Refresh()
	}
	if empty := l.entry.Text == ""; empty == l.out.Visible() {
		l.out.Hidden = empty
		l.box.Refresh()
	}
}

// readingLayout puts a reading into the columns of the row above.
type readingLayout struct{}

// MinSize is that of the row above.
func (readingLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(nameWidth+entryWidth+unitWidth, o[1].MinSize().Height)
}

// Layout gives label and entry the columns of the row above.
func (readingLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	label, entry, out := o[0], o[1], o[2]
	right := size.Width - unitWidth
	label.Resize(fyne.NewSize(right-entryWidth, size.Height))
	label.Move(fyne.NewPos(0, (size.Height-label.MinSize().Height)/2))
	entry.Resize(fyne.NewSize(entryWidth, size.Height))
	entry.Move(fyne.NewPos(right-entryWidth, 0))
	out.Resize(fyne.NewSize(markWidth, size.Height))
	out.Move(fyne.NewPos(right, 0))
}
