// Package drawing holds what everything drawn is made of: lines, filled areas and words on
// named layers. A Canvas is paper, file or picture; whoever draws does not know which.
//
// Coordinates are millimetres, y up, from the lower left corner of the page.
// It does not know pieces, nor any file format.
package drawing

import (
	"math"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
)

// Canvas takes what is drawn. Lines are as fine as they are given, never curves of the canvas's own.
type Canvas interface {
	// On says to which layer the following belongs.
	On(Layer)
	// Line strokes through the points; a closed line joins the last to the first.
	Line(points []plane.Point, closed bool, pen Pen)
	// Fill fills the closed line through the points.
	Fill(points []plane.Point, colour Colour)
	// Word sets one line of text.
	Word(Word)
}

// Colour is opaque; the zero Colour is black.
type Colour struct{ R, G, B uint8 }

// Greys for what should stand back.
var (
	Black = Colour{}
	Grey  = Colour{0x70, 0x70, 0x70}
	Pale  = Colour{0xd9, 0xd9, 0xd9}
	Mist  = Colour{0xf1, 0xf1, 0xf1}
	White = Colour{0xff, 0xff, 0xff}
)

// Pen is how a line is drawn. Width and dashes are millimetres; no dashes is a solid line.
type Pen struct {
	Width  float64
	Dash   []float64
	Colour Colour
}

// Word is one line of text. Size is the letter size (em) in millimetres, Turn a turn
// counter-clockwise in radians about At, the left end of the base line.
type Word struct {
	Text   string
	At     plane.Point
	Size   float64
	Bold   bool
	Turn   float64
	Colour Colour
}

// Width is the length of the word.
func (w Word) Width() float64 { return fonts.Of(w.Bold).Width(w.Text, w.Size) }

// Along is the direction in which the word is read.
func (w Word) Along() plane.Point { return plane.Point{X: math.Cos(w.Turn), Y: math.Sin(w.Turn)} }

// Back returns the word moved back along its line by a part of its width:
// ½ centres it on At, 1 makes it end there.
func (w Word) Back(part float64) Word {
	w.At = w.At.Sub(w.Along().Mul(part * w.Width()))
	return w
}

// Fit returns the word made readable and shortened to a width.
func (w Word) Fit(width float64) Word {
	w.Text = fonts.Of(w.Bold).Shorten(fonts.Readable(w.Text), w.Size, width)
	return w
}

// Corners are those of the box round the word, from the tails of its letters to their heads.
func (w Word) Corners() []plane.Point {
	along := w.Along().Mul(w.Width())
	up := w.up().Mul(w.Size)
	low, high := w.At.Sub(up.Mul(fonts.Descent)), w.At.Add(up.Mul(fonts.Ascent))
	return []plane.Point{low, low.Add(along), high.Add(along), high}
}

// steep is the cosine of the steepest line, 80 degrees, that is still read from left to right; steeper
// ones are read upward.
const steep = 0.17

// OnItsHead reports whether words along a direction of length 1 would have to be read from below.
func OnItsHead(d plane.Point) bool {
	return d.X < -steep || d.X <= steep && d.Y < 0
}

func (w Word) up() plane.Point { return plane.Point{X: -math.Sin(w.Turn), Y: math.Cos(w.Turn)} }
