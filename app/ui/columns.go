package ui

import "fyne.io/fyne/v2"

// Widths in the toolkit's units.
const (
	listWidth    = 276
	sectionShare = 0.22
	leastSection = 262
	mostSection  = 440
	columnGap    = 12
)

// topRow has the head over the left column, and the places beside it.
type topRow struct{}

// MinSize is that of both together.
func (topRow) MinSize(o []fyne.CanvasObject) fyne.Size {
	head, bar := o[0].MinSize(), o[1].MinSize()
	return fyne.NewSize(max(listWidth, head.Width)+columnGap+bar.Width, max(head.Height, bar.Height))
}

// Layout gives the head the left column's width.
func (topRow) Layout(o []fyne.CanvasObject, size fyne.Size) {
	bar := o[1].MinSize()
	o[0].Resize(fyne.NewSize(listWidth, o[0].MinSize().Height))
	o[1].Resize(bar)
	o[1].Move(fyne.NewPos(listWidth+columnGap, (size.Height-bar.Height)/2))
}

// twoColumns are what is typed and, as wide as the window leaves room, what is seen of it.
type twoColumns struct{}

// MinSize is that of both together.
func (twoColumns) MinSize(o []fyne.CanvasObject) fyne.Size {
	list, stage := o[0].MinSize(), o[1].MinSize()
	return fyne.NewSize(max(listWidth, list.Width)+columnGap+stage.Width, max(list.Height, stage.Height))
}

// Layout gives the list its width and the stage the rest.
func (twoColumns) Layout(o []fyne.CanvasObject, size fyne.Size) {
	left := max(listWidth, o[0].MinSize().Width)
	o[0].Resize(fyne.NewSize(left, size.Height))
	o[1].Move(fyne.NewPos(left+columnGap, 0))
	o[1].Resize(fyne.NewSize(size.Width-left-columnGap, size.Height))
}

// figureColumns are the figure and its section: the figure gets whatever a larger window has more,
// and the section a part of it.
type figureColumns struct{}

// MinSize is that of both together.
func (figureColumns) MinSize(o []fyne.CanvasObject) fyne.Size {
	figure, section := o[0].MinSize(), o[1].MinSize()
	return fyne.NewSize(figure.Width+columnGap+max(leastSection, section.Width), max(figure.Height, section.Height))
}

// Layout gives the section its width and the figure the rest.
func (figureColumns) Layout(o []fyne.CanvasObject, size fyne.Size) {
	right := max(min(max(sectionShare*(size.Width+listWidth), leastSection), mostSection), o[1].MinSize().Width)
	o[0].Resize(fyne.NewSize(size.Width-right-columnGap, size.Height))
	o[1].Move(fyne.NewPos(size.Width-right, 0))
	o[1].Resize(fyne.NewSize(right, size.Height))
}
