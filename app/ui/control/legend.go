package control

import (
	"fmt"
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/look"
	"understructure/app/ui/picture"
	"understructure/patterns/swatch"
)

// Legend says in millimetres what the colours and the hatching of the clearance mean.
type Legend struct {
	widget.BaseWidget
}

// NewLegend returns one.
func NewLegend() *Legend {
	l := &Legend{}
	l.ExtendBaseWidget(l)
	return l
}

// bandWords are what the bands are called, from strain to slack.
var bandWords = [...]string{"strain", "touching", "as wanted", "slack", "very slack"}

// between writes the limits of a band.
func between(s swatch.Swatch) string {
	switch {
	case math.IsInf(s.From, -1):
		return fmt.Sprintf("< %g", s.To)
	case math.IsInf(s.To, 1):
		return fmt.Sprintf("> %g", s.From)
	}
	return fmt.Sprintf("%g – %g", s.From, s.To)
}

// CreateRenderer is for the toolkit.
func (l *Legend) CreateRenderer() fyne.WidgetRenderer {
	row := container.New(layout.NewCustomPaddedHBoxLayout(6))
	for i, s := range look.Palette().Legend() {
		painter := new(picture.Painter)
		patch := canvas.NewRaster(func(w, h int) image.Image {
			img := image.NewRGBA(image.Rect(0, 0, w, h))
			painter.Swatch(img, img.Rect, look.Palette().Legend()[i], float64(h)/14)
			return img
		})
		patch.SetMinSize(fyne.NewSize(24, 14))
		row.Add(container.NewCenter(patch))
		row.Add(container.NewCenter(words(lang.L(bandWords[i])+"  "+between(s), look.ColorFaint, false)))
		row.Add(layout.NewSpacer())
	}
	row.Add(container.NewCenter(words(lang.L("mm at each point"), look.ColorFaint, false)))
	return widget.NewSimpleRenderer(row)
}
