// Package preview makes pictures of pages, elevations and sections, on a white ground.
// It does not write files.
package preview

import (
	"image"
	"math"
	"sync"

	"github.com/fogleman/gg"
	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/elevation"
	"understructure/patterns/plan"
	"understructure/patterns/sheet"
)

// Page is a picture of a page at a number of pixels in a millimetre.
func Page(p sheet.Page, pxPerMM float64) image.Image {
	c := newCanvas(pixels(p.Width*pxPerMM), pixels(p.Height*pxPerMM), pxPerMM)
	p.Draw(c)
	return c.gg.Image()
}

// onScreen is how many pixels stand for a millimetre of drawing in a picture that is not true to size:
// letters of 2.4 mm are then 10 pixels high.
const onScreen = 4.2

// Elevation is a picture of the mount from elevation.Front or elevation.Side, with a key below.
func Elevation(p plan.Plan, side string, width, height int) image.Image {
	c, box := framed(p, width, height)
	elevation.Draw(c, p, side, box)
	return c.gg.Image()
}

// Section is a picture of the mount cut at a level, front at the top, with a key below.
func Section(p plan.Plan, level string, width, height int) image.Image {
	c, box := framed(p, width, height)
	elevation.Section(c, p, level, box)
	return c.gg.Image()
}

func framed(p plan.Plan, width, height int) (*canvas, drawing.Box) {
	c := newCanvas(width, height, onScreen)
	elevation.Key(c, p, plane.Point{X: 4, Y: 3})
	return c, drawing.Box{
		Lo: plane.Point{X: 4, Y: 8},
		Hi: plane.Point{X: float64(c.gg.Width())/onScreen - 4, Y: float64(c.gg.Height())/onScreen - 4},
	}
}

// pixels keeps a picture between one pixel and what still fits into memory.
func pixels(x float64) int { return int(math.Round(math.Max(1, math.Min(x, 20000)))) }

// canvas is a picture that is drawn on.
type canvas struct {
	gg    *gg.Context
	scale float64 // pixels in a millimetre
	faces map[face]font.Face
}

type face struct {
	bold bool
	size float64 // in pixels
}

func newCanvas(width, height int, scale float64) *canvas {
	c := &canvas{gg: gg.NewContext(max(width, 1), max(height, 1)), scale: scale, faces: map[face]font.Face{}}
	c.gg.SetRGB(1, 1, 1)
	c.gg.Clear()
	return c
}

// On is part of drawing.Canvas; a picture has no layers.
func (c *canvas) On(drawing.Layer) {}

// Line is part of drawing.Canvas.
func (c *canvas) Line(line []plane.Point, closed bool, pen drawing.Pen) {
	c.trace(line, closed)
	c.ink(pen.Colour)
	c.gg.SetLineWidth(math.Max(pen.Width*c.scale, 1)) // thinner lines would fade
	dashes := make([]float64, len(pen.Dash))
	for i, d := range pen.Dash {
		dashes[i] = d * c.scale
	}
	c.gg.SetDash(dashes...)
	c.gg.Stroke()
}

// Fill is part of drawing.Canvas.
func (c *canvas) Fill(line []plane.Point, colour drawing.Colour) {
	c.trace(line, true)
	c.ink(colour)
	c.gg.Fill()
}

// Word is part of drawing.Canvas.
func (c *canvas) Word(w drawing.Word) {
	c.ink(w.Colour)
	c.gg.SetFontFace(c.face(face{w.Bold, w.Size * c.scale}))
	x, y := c.pixel(w.At)
	c.gg.Push()
	c.gg.RotateAbout(-w.Turn, x, y)
	c.gg.DrawString(fonts.Readable(w.Text), x, y)
	c.gg.Pop()
}

func (c *canvas) trace(line []plane.Point, closed bool) {
	c.gg.ClearPath()
	for _, p := range line {
		c.gg.LineTo(c.pixel(p))
	}
	if closed {
		c.gg.ClosePath()
	}
}

func (c *canvas) ink(k drawing.Colour) { c.gg.SetRGB255(int(k.R), int(k.G), int(k.B)) }

func (c *canvas) pixel(p plane.Point) (x, y float64) {
	return p.X * c.scale, float64(c.gg.Height()) - p.Y*c.scale
}

func (c *canvas) face(f face) font.Face {
	if _, ok := c.faces[f]; !ok {
		made, err := opentype.NewFace(parsed()[f.bold], &opentype.FaceOptions{Size: f.size, DPI: 72})
		if err != nil {
			panic("preview: the embedded font cannot be set")
		}
		c.faces[f] = made
	}
	return c.faces[f]
}

// parsed holds the two weights, by whether they are bold.
var parsed = sync.OnceValue(func() map[bool]*opentype.Font {
	m := map[bool]*opentype.Font{}
	for _, bold := range []bool{false, true} {
		f, err := opentype.Parse(fonts.Of(bold).TTF)
		if err != nil {
			panic("preview: the embedded font cannot be read")
		}
		m[bold] = f
	}
	return m
})
