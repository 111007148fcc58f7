package ui

import "fyne.io/fyne/v2"

// columns are the list, the figure and the section beside each other. The figure, in the middle,
// gets whatever a larger window has more, and the section a part of it.
type columns struct{}

// Widths in the toolkit's units.
const (
	listWidth    = 276
	sectionShare = 0.22
	leastSection = 262
	mostSection  = 440
	columnGap    = 12
)

// MinSize is that of the columns together.
func (columns) MinSize(o []fyne.CanvasObject) fyne.Size {
	list, middle, section := o[0].MinSize(), o[1].MinSize(), o[2].MinSize()
	return fyne.NewSize(max(listWidth, list.Width)+middle.Width+max(leastSection, section.Width)+2*columnGap,
		max(list.Height, middle.Height, section.Height))
}

// Layout gives list and section their widths and the figure the rest.
func (columns) Layout(o []fyne.CanvasObject, size fyne.Size) {
	left := max(listWidth, o[0].MinSize().Width)
	right := max(min(max(sectionShare*size.Width, leastSection), mostSection), o[2].MinSize().Width)
	x := float32(0)
	for i, width := range []float32{left, size.Width - left - right - 2*columnGap, right} {
		o[i].Move(fyne.NewPos(x, 0))
		o[i].Resize(fyne.NewSize(width, size.Height))
		x += width + columnGap
	}
}
