package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// NewGroup is the head of a group of values.
func NewGroup(name string) fyne.CanvasObject {
	return widget.NewLabelWithStyle(Sentence(name), fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
}

// NewName is what stands before a value.
func NewName(name string) *widget.Label {
	l := widget.NewLabel(Sentence(name))
	l.Truncation = fyne.TextTruncateEllipsis
	return l
}

// ChoiceLayout puts a name and what is chosen beside each other in the columns of a list of values.
type ChoiceLayout struct{}

// MinSize is that of a value's row.
func (ChoiceLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(nameWidth+entryWidth+unitWidth, o[1].MinSize().Height)
}

// Layout gives what is chosen the columns of entry and unit.
func (ChoiceLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	name, pick := o[0], o[1]
	left := size.Width - entryWidth - unitWidth
	pick.Move(fyne.NewPos(left, 0))
	pick.Resize(fyne.NewSize(entryWidth+unitWidth, size.Height))
	name.Move(fyne.NewPos(0, (size.Height-name.MinSize().Height)/2))
	name.Resize(fyne.NewSize(left, name.MinSize().Height))
}
