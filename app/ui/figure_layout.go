package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/control"
	"understructure/app/ui/picture"
	"understructure/geometry/unit"
	"understructure/geometry/view"
)

// standpoints are the views that show the figure from one side.
func standpoints() map[string]unit.Angle {
	return map[string]unit.Angle{
		lang.L("Front"): view.Front, lang.L("Three-quarter"): view.ThreeQuarter, lang.L("Left"): view.LeftSide, lang.L("Back"): view.Back,
	}
}

// layOut puts everything in its place.
func (f *figure) layOut() {
	both, unrolled := lang.L("Front and side"), lang.L("Unrolled")
	f.views = control.NewSwitch(both, lang.L("Front"), lang.L("Three-quarter"), lang.L("Left"), lang.L("Back"), unrolled)
	f.views.Choose(both)
	f.spin = widget.NewButtonWithIcon("", theme.ViewRefreshIcon(), f.turn)
	f.spin.Importance = widget.LowImportance
	plain, clearance := lang.L("Mount"), lang.L("Clearance")
	f.colours = control.NewSwitch(plain, clearance)
	f.colours.Choose(plain)
	f.legend.Hide()
	f.views.OnChosen = func(word string) {
		f.table.Stop()
		f.look(word, word == both, word == unrolled)
	}
	f.colours.OnChosen = func(word string) { f.paint(word == clearance) }
	f.look(both, true, false)

	small(f.layer)
	f.layer.Alignment = fyne.TextAlignTrailing
	top := container.NewBorder(nil, nil, f.colours, nil, container.NewHBox(layout.NewSpacer(), f.views, f.spin))
	foot := container.NewVBox(f.legend, container.New(buildRow{}, f.layers, f.layer))
	stage := container.NewBorder(top, foot, nil, nil, container.NewStack(f.elevation, f.table, f.unrolled))
	f.box = container.New(figureColumns{}, stage, f.layOutSection())
}

// layOutSection puts what is said of the section over and under it.
func (f *figure) layOutSection() fyne.CanvasObject {
	f.level.TextStyle.Bold = true
	f.level.SizeName = theme.SizeNameSubHeadingText
	f.notes.Wrapping = fyne.TextWrapWord
	small(f.numbers)
	small(f.notes)
	outlines, places, notes := lang.L("Outlines"), lang.L("Worst places"), lang.L("Notes")
	f.panels = control.NewSwitch(outlines, places, notes)
	f.below = map[string]fyne.CanvasObject{outlines: f.key, places: f.worst, notes: container.NewVScroll(f.notes)}
	pages := container.NewStack(f.key, f.worst, f.below[notes])
	choose := func(word string) {
		for w, page := range f.below {
			if page.Hide(); w == word {
				page.Show()
			}
		}
	}
	f.panels.OnChosen = choose
	f.panels.Choose(outlines)
	choose(outlines)
	foot := container.NewVBox(container.NewHBox(f.panels), container.New(layout.NewCustomPaddedLayout(0, 6, 6, 14), pages))
	return container.NewBorder(together(f.level, f.numbers), foot, nil, nil, f.section)
}

func small(l *widget.Label) { l.SizeName = theme.SizeNameCaptionText }

// look goes to a view: front and side beside each other, the map, or one side.
func (f *figure) look(word string, both, unrolled bool) {
	for _, o := range []fyne.CanvasObject{f.elevation, f.table, f.unrolled} {
		o.Hide()
	}
	switch {
	case both:
		f.elevation.Show()
	case unrolled:
		f.unrolled.Show()
	default:
		f.table.Turn(standpoints()[word])
		f.table.Show()
	}
	f.showLegend()
}

// turn sets the figure going, or holds it.
func (f *figure) turn() {
	if f.table.Going() {
		f.table.Stop()
		return
	}
	if !f.table.Visible() {
		f.views.Choose(lang.L("Three-quarter"))
		f.look(f.views.Chosen(), false, false)
	}
	f.table.Start()
}

// paint chooses whether the colours say how the mount is made or where the garment sits.
func (f *figure) paint(clearance bool) {
	mode := picture.Plain
	if clearance {
		mode = picture.Clearance
	}
	f.elevation.Paint(mode)
	f.table.Paint(mode)
	f.section.Paint(mode)
	f.showLegend()
}

// showLegend explains the colours of the clearance wherever they are seen.
func (f *figure) showLegend() {
	if f.legend.Hide(); f.unrolled.Visible() || f.colours.Chosen() == lang.L("Clearance") {
		f.legend.Show()
	}
}

// buildRow is the slider of the layers with the name of the one that was laid last.
type buildRow struct{}

const layerWidth = 190

// MinSize is that of both beside each other.
func (buildRow) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(2*layerWidth, max(o[0].MinSize().Height, o[1].MinSize().Height))
}

// Layout gives the name its width and the slider the rest.
func (buildRow) Layout(o []fyne.CanvasObject, size fyne.Size) {
	for i, width := range []float32{size.Width - layerWidth - 8, layerWidth} {
		h := o[i].MinSize().Height
		o[i].Resize(fyne.NewSize(width, h))
		o[i].Move(fyne.NewPos(float32(i)*(size.Width-layerWidth), (size.Height-h)/2))
	}
}
