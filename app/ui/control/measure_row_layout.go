package control

import "fyne.io/fyne/v2"

// CreateRenderer is for the toolkit.
func (r *measureRow) CreateRenderer() fyne.WidgetRenderer { return measureRowRenderer{r} }

type measureRowRenderer struct{ *measureRow }

func (r measureRowRenderer) Destroy() {}
func (r measureRowRenderer) Refresh() { r.Layout(r.Size()) }

func (r measureRowRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.label, r.again, r.entry, r.unit, r.more, r.readings.box, r.note}
}

func (r measureRowRenderer) MinSize() fyne.Size {
	size := fyne.NewSize(nameWidth+entryWidth+unitWidth, r.entry.MinSize().Height)
	for _, below := range []fyne.CanvasObject{r.readings.box, r.note} {
		if below.Visible() {
			size.Height += below.MinSize().Height
		}
	}
	return size
}

func (r measureRowRenderer) Layout(size fyne.Size) {
	height := r.entry.MinSize().Height
	middle := func(o fyne.CanvasObject) float32 { return (height - o.MinSize().Height) / 2 }
	right := size.Width - unitWidth
	r.unit.Resize(fyne.NewSize(unitWidth-markWidth+8, height))
	r.unit.Move(fyne.NewPos(right-4, middle(r.unit)))
	r.more.Resize(fyne.NewSize(markWidth, height))
	r.more.Move(fyne.NewPos(size.Width-markWidth, 0))
	r.entry.Resize(fyne.NewSize(entryWidth, height))
	r.entry.Move(fyne.NewPos(right-entryWidth, 0))
	r.label.Resize(fyne.NewSize(right-entryWidth, height))
	r.label.Move(fyne.NewPos(0, middle(r.label)))
	r.placeAgain(right-entryWidth, height)
	y := height
	if r.readings.box.Visible() {
		r.readings.box.Move(fyne.NewPos(0, y))
		r.readings.box.Resize(fyne.NewSize(size.Width, r.readings.box.MinSize().Height))
		y += r.readings.box.MinSize().Height
	}
	r.note.Resize(fyne.NewSize(size.Width, r.note.MinSize().Height))
	r.note.Move(fyne.NewPos(0, y-4))
}
