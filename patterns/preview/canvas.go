package preview

import (
	"math"
	"sync"

	"github.com/fogleman/gg"
	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
)

// canvas is a picture that is drawn on.
type canvas struct {
	gg       *gg.Context
	scale    float64     // pixels in a millimetre
	view     drawing.Box // what of the drawing is seen, in millimetres
	thinnest float64     // pixels; thinner lines would fade
	colour   func(drawing.Colour) drawing.Colour
	faces    map[face]font.Face
}

type face struct {
	bold bool
	size float64 // in pixels
}

// newCanvas is a white picture of a drawing's lower left corner.
func newCanvas(width, height int, scale float64) *canvas {
	c := &canvas{gg: gg.NewContext(max(width, 1), max(height, 1)), scale: scale, thinnest: 1, faces: map[face]font.Face{}}
	c.colour = func(k drawing.Colour) drawing.Colour { return k }
	c.look(plane.Point{})
	c.gg.SetRGB(1, 1, 1)
	c.gg.Clear()
	return c
}

// look has a point of the drawing at the lower left corner of the picture.
func (c *canvas) look(from plane.Point) {
	c.view = drawing.Box{Lo: from, Hi: from.Add(plane.Point{X: float64(c.gg.Width()), Y: float64(c.gg.Height())}.Mul(1 / c.scale))}
}

// sees reports whether any of what lies within a pen's width of the points can be in the picture.
func (c *canvas) sees(points []plane.Point, width float64) bool {
	b := drawing.Empty().Round(points...).Grow(width + c.thinnest/c.scale)
	return b.Lo.X <= c.view.Hi.X && b.Hi.X >= c.view.Lo.X && b.Lo.Y <= c.view.Hi.Y && b.Hi.Y >= c.view.Lo.Y
}

// On is part of drawing.Canvas; a picture has no layers.
func (c *canvas) On(drawing.Layer) {}

// Line is part of drawing.Canvas.
func (c *canvas) Line(line []plane.Point, closed bool, pen drawing.Pen) {
	if !c.sees(line, pen.Width) {
		return
	}
	c.trace(line, closed)
	c.ink(pen.Colour)
	c.gg.SetLineWidth(math.Max(pen.Width*c.scale, c.thinnest))
	dashes := make([]float64, len(pen.Dash))
	for i, d := range pen.Dash {
		dashes[i] = d * c.scale
	}
	c.gg.SetDash(dashes...)
	c.gg.Stroke()
}

// Fill is part of drawing.Canvas.
func (c *canvas) Fill(line []plane.Point, colour drawing.Colour) {
	if !c.sees(line, 0) {
		return
	}
	c.trace(line, true)
	c.ink(colour)
	c.gg.Fill()
}

// legible is the size from which letters can be told apart, in pixels.
const legible = 4

// Word is part of drawing.Canvas. Words too small to be read are hinted at by a line.
func (c *canvas) Word(w drawing.Word) {
	if !c.sees(w.Corners(), 0) {
		return
	}
	if w.Size*c.scale < legible {
		at := w.At.Add(w.Along().Mul(w.Width()))
		c.Line([]plane.Point{w.At, at}, false, drawing.Pen{Width: w.Size * fonts.CapHeight / 3, Colour: drawing.Grey})
		return
	}
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

func (c *canvas) ink(k drawing.Colour) {
	k = c.colour(k)
	c.gg.SetRGB255(int(k.R), int(k.G), int(k.B))
}

func (c *canvas) pixel(p plane.Point) (x, y float64) {
	return (p.X - c.view.Lo.X) * c.scale, float64(c.gg.Height()) - (p.Y-c.view.Lo.Y)*c.scale
}

func (c *canvas) face(f face) font.Face {
	if _, ok := c.faces[f]; !ok {
		made, err := opentype.NewFace(parsed()[f.bold], &opentype.FaceOptions{Size: f.size, DPI: 72})
		if err != nil {
			panic("preview: the embedded font cannot be set")
		}
		c.faces[f] = unkerned{made}
	}
	return c.faces[f]
}

// unkerned sets letters side by side as they are set on paper, where none is pulled under another.
type unkerned struct{ font.Face }

// Kern is how far two letters move together.
func (unkerned) Kern(_, _ rune) fixed.Int26_6 { return 0 }

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
