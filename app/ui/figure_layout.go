package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/control"
)

// layOut puts everything in its place.
func (f *figure) layOut() {
	f.shows = control.NewSwitch(mountShown(), clearanceShown(), mapShown())
	f.shows.Choose(mountShown())
	f.views = control.NewSwitch(bothViews(), lang.L("Front"), lang.L("Three-quarter"), lang.L("Left"), lang.L("Back"), turningView())
	f.look()

	small(f.layer)
	first := widget.NewLabel(lang.L("Built so far"))
	small(first)
	top := container.NewBorder(nil, nil, f.shows, f.views)
	foot := container.NewVBox(f.legend, container.New(layerRow{}, first, f.layers, f.layer))
	stage := container.NewBorder(top, foot, nil, nil, container.NewStack(f.elevation, f.unrolled))
	f.box = container.New(figureColumns{}, stage, f.layOutSection())
}

// layOutSection puts what is said of the section over and under it.
func (f *figure) layOutSection() fyne.CanvasObject {
	f.level.TextStyle.Bold = true
	f.level.SizeName = theme.SizeNameSubHeadingText
	f.level.Truncation = fyne.TextTruncateEllipsis
	f.notes.Wrapping = fyne.TextWrapWord
	small(f.notes)
	head := []fyne.CanvasObject{f.level}
	for _, l := range f.said {
		small(l)
		l.Truncation = fyne.TextTruncateEllipsis
		head = append(head, l)
	}
	outlines, places, notes := lang.L("Outlines"), lang.L("Worst places"), lang.L("Notes")
	f.panels = control.NewSwitch(outlines, places, notes)
	f.below = map[string]fyne.CanvasObject{outlines: f.key, places: f.worst, notes: container.NewVScroll(f.notes)}
	pages := container.NewStack(f.key, f.worst, f.below[notes])
	f.panels.OnChosen = f.turnPage
	f.panels.Choose(outlines)
	f.turnPage(outlines)
	foot := container.NewVBox(container.NewHBox(f.panels), container.New(layout.NewCustomPaddedLayout(0, 6, 6, 14), pages))
	return container.NewBorder(container.New(layout.NewCustomPaddedVBoxLayout(-11), head...), foot, nil, nil, f.section)
}

// turnPage shows below the section what a word of panels stands for.
func (f *figure) turnPage(word string) {
	for w, page := range f.below {
		if page.Hide(); w == word {
			page.Show()
		}
	}
}

func small(l *widget.Label) { l.SizeName = theme.SizeNameCaptionText }

// layerRow is the slider of the layers between its name and the layer that was laid last.
type layerRow struct{}

// Widths beside the slider, in the toolkit's units.
const firstWidth, layerWidth = 90, 130

// MinSize is that of all three beside each other.
func (layerRow) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(firstWidth+2*layerWidth, max(o[0].MinSize().Height, o[1].MinSize().Height))
}

// Layout gives the words their widths and the slider the rest.
func (layerRow) Layout(o []fyne.CanvasObject, size fyne.Size) {
	x := float32(0)
	for i, width := range []float32{firstWidth, size.Width - firstWidth - layerWidth, layerWidth} {
		h := o[i].MinSize().Height
		o[i].Resize(fyne.NewSize(width, h))
		o[i].Move(fyne.NewPos(x, (size.Height-h)/2))
		x += width
	}
}
