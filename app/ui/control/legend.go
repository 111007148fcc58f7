package control

import (
	"fmt"
	"image"
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/look"
	"understructure/app/ui/picture"
	"understructure/geometry/fit"
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

// BandWord is what a band is called.
func BandWord(b fit.Band) string {
	return [fit.Bands]string{lang.L("strain"), lang.L("touching"), lang.L("as wanted"), lang.L("slack"), lang.L("very slack")}[b]
}

// SideWord is what a side of the figure is called, which geometry names in English.
func SideWord(side string) string {
	return map[string]string{
		"front": lang.L("front"), "left front": lang.L("left front"), "left": lang.L("left"), "left back": lang.L("left back"),
		"back": lang.L("back"), "right back": lang.L("right back"), "right": lang.L("right"), "right front": lang.L("right front"),
	}[side]
}

// swatchOf shows how a band looks in the pictures.
func swatchOf(b fit.Band) *canvas.Raster {
	painter := new(picture.Painter)
	patch := canvas.NewRaster(func(w, h int) image.Image {
		img := image.NewRGBA(image.Rect(0, 0, w, h))
		painter.Swatch(img, img.Rect, look.Palette().Legend()[b], float64(h)/swatchHigh)
		return img
	})
	patch.SetMinSize(fyne.NewSize(swatchWide, swatchHigh))
	return patch
}

// Size of a swatch, in the toolkit's units.
const swatchWide, swatchHigh = 24, 14

// between writes the limits of a band.
func between(s swatch.Swatch) string {
	switch {
	case math.IsInf(s.From, -1):
		return fmt.Sprintf("< %s", minus(s.To))
	case math.IsInf(s.To, 1):
		return fmt.Sprintf("> %s", minus(s.From))
	}
	return fmt.Sprintf("%s – %s", minus(s.From), minus(s.To))
}

// minus writes a number with a true minus.
func minus(v float64) string { return strings.Replace(fmt.Sprintf("%g", v), "-", "−", 1) }

// CreateRenderer is for the toolkit.
func (l *Legend) CreateRenderer() fyne.WidgetRenderer {
	row := container.New(layout.NewCustomPaddedHBoxLayout(6))
	for _, s := range look.Palette().Legend() {
		row.Add(container.NewCenter(swatchOf(s.Band)))
		row.Add(container.NewCenter(words(BandWord(s.Band)+"  "+between(s), look.ColorFaint, false)))
		row.Add(layout.NewSpacer())
	}
	row.Add(container.NewCenter(words("mm", look.ColorFaint, false)))
	return widget.NewSimpleRenderer(row)
}
