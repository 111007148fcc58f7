// Package control holds the window's own widgets: the figure with its tapes, one section, and the
// list of measurements. Data comes in, events go out.
// It does not know records, plans or files.
package control

import (
	"image/color"
	"math"
	"unicode"
	"unicode/utf8"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
)

// words makes a line of text as small as a caption.
func words(text string, colour fyne.ThemeColorName, bold bool) *canvas.Text {
	t := canvas.NewText(text, theme.Color(colour))
	t.TextSize = theme.CaptionTextSize()
	t.TextStyle.Bold = bold
	return t
}

// place puts an object with its middle at y and its left, middle or right (align 0, 0.5, 1) at x,
// on whole units: words that begin between two pixels are blurred.
func place(o fyne.CanvasObject, x, y, align float32) {
	size := o.MinSize()
	o.Resize(size)
	o.Move(fyne.NewPos(round(x-align*size.Width), round(y-size.Height/2)))
}

func round(x float32) float32 { return float32(math.Round(float64(x))) }

// line makes a straight line between two points.
func line(x0, y0, x1, y1 float32, colour fyne.ThemeColorName, width float32) *canvas.Line {
	l := canvas.NewLine(theme.Color(colour))
	l.StrokeWidth = width
	l.Position1, l.Position2 = fyne.NewPos(x0, y0), fyne.NewPos(x1, y1)
	return l
}

// ring marks a place on a picture.
func ring(x, y float32) *canvas.Circle {
	const radius = 7
	c := canvas.NewCircle(color.Transparent)
	c.StrokeColor, c.StrokeWidth = theme.Color(theme.ColorNamePrimary), 2.5
	c.Move(fyne.NewPos(x-radius, y-radius))
	c.Resize(fyne.NewSize(2*radius, 2*radius))
	return c
}

// Sentence begins with a capital.
func Sentence(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}
