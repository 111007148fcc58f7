package tapes

import (
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
)

// Ink is what a drawing is drawn in.
type Ink struct{ Cloth, Line, Tape drawing.Colour }

// Print is for paper: the tape is told from the garment by its weight alone.
var Print = Ink{Cloth: drawing.Mist, Line: drawing.Grey, Tape: drawing.Black}

// Widths in parts of the frame.
const (
	outlineWidth = 0.9
	seamWidth    = 0.55
	tapeWidth    = 2.7
	hiddenWidth  = 1.5
	endRadius    = 2.6
	mostLine     = 0.35 // millimetres: however large the drawing, the garment stays thin
)

var dashes = []float64{2.6, 2.2}

// Draw draws into the middle of a box, as large as it lets it.
func (d Drawing) Draw(c drawing.Canvas, box drawing.Box, ink Ink) {
	part := min(box.Width()/Frame.Width(), box.Height()/Frame.Height())
	put := func(l line) []plane.Point {
		return l.mapped(func(p plane.Point) plane.Point { return box.Centre().Add(p.Sub(Frame.Centre()).Mul(part)) })
	}
	thin := func(width float64, dash ...float64) drawing.Pen {
		return drawing.Pen{Width: min(width*part, mostLine), Dash: scaled(dash, part), Colour: ink.Line}
	}
	for _, l := range d.cloth {
		c.Fill(put(l), ink.Cloth)
		c.Line(put(l), true, thin(outlineWidth))
	}
	for _, l := range d.seams {
		c.Line(put(l), false, thin(seamWidth))
	}
	for _, l := range d.guides {
		c.Line(put(l), false, thin(seamWidth, dashes...))
	}
	for _, r := range d.tape {
		pen := drawing.Pen{Width: tapeWidth * part, Colour: ink.Tape}
		if r.hidden {
			pen.Width, pen.Dash = hiddenWidth*part, scaled(dashes, part)
		}
		c.Line(put(r.line), false, pen)
	}
	for _, p := range d.ends {
		c.Fill(put(oval(p, endRadius, endRadius)), ink.Tape)
	}
}

func scaled(dash []float64, by float64) []float64 {
	var out []float64
	for _, d := range dash {
		out = append(out, d*by)
	}
	return out
}
