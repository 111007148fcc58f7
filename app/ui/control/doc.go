// Package control holds the window's own widgets: the figure with its tapes, one section, and the
// list of measurements. Data comes in, events go out.
// It does not know records, plans or files.
package control

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"

	"understructure/app/ui/picture"
)

// The colours that a theme must have for these widgets, beside those of the toolkit.
const (
	ColorInk    fyne.ThemeColorName = "understructure.ink"
	ColorFaint  fyne.ThemeColorName = "understructure.faint"
	ColorSkin   fyne.ThemeColorName = "understructure.skin"
	ColorStrain fyne.ThemeColorName = "understructure.strain"
	ColorSlack  fyne.ThemeColorName = "understructure.slack"
)

// palette reads the picture's colours from the theme in force.
func palette() picture.Palette {
	c := func(n fyne.ThemeColorName) color.NRGBA {
		return color.NRGBAModel.Convert(theme.Color(n)).(color.NRGBA)
	}
	return picture.Palette{Ink: c(ColorInk), Faint: c(ColorFaint), Skin: c(ColorSkin), Strain: c(ColorStrain), Slack: c(ColorSlack)}
}

// words makes a line of text as small as a caption.
func words(text string, colour fyne.ThemeColorName, bold bool) *canvas.Text {
	t := canvas.NewText(text, theme.Color(colour))
	t.TextSize = theme.CaptionTextSize()
	t.TextStyle.Bold = bold
	return t
}

// place puts an object with its middle at y and its left, middle or right (align 0, 0.5, 1) at x.
func place(o fyne.CanvasObject, x, y, align float32) {
	size := o.MinSize()
	o.Resize(size)
	o.Move(fyne.NewPos(x-align*size.Width, y-size.Height/2))
}

// line makes a straight line between two points.
func line(x0, y0, x1, y1 float32, colour fyne.ThemeColorName, width float32) *canvas.Line {
	l := canvas.NewLine(theme.Color(colour))
	l.StrokeWidth = width
	l.Position1, l.Position2 = fyne.NewPos(x0, y0), fyne.NewPos(x1, y1)
	return l
}
