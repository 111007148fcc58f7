// Package tapes shows where each tape goes: for every measurement a small drawing of a garment, or
// of a bare form, with the tape on it. One set of drawings serves the window and the printed sheet.
//
// A drawing has no scale. It lies in Frame, whose sides are 100 parts long, and fills whatever
// square it is drawn into.
// The package does not know values, and it does not write files.
package tapes

import (
	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
)

// Part is what is measured, by the name that its readings have in a record.
type Part string

// The parts. A form is measured by the keys of a bodice.
const (
	Bodice Part = "bodice"
	Skirt  Part = "skirt"
	Sleeve Part = "sleeve"
	Form   Part = "form"
)

// Frame is the square that every drawing lies in.
var Frame = drawing.Box{Lo: plane.Point{X: -50}, Hi: plane.Point{X: 50, Y: 100}}

// Drawing is a garment with one tape on it. The zero Drawing is empty.
type Drawing struct {
	garment
	tape   []run
	ends   []plane.Point
	guides []line
}

// garment is the outline of a garment seen from one side, and its seams.
type garment struct {
	cloth []line // closed
	seams []line
}

// run is a stretch of the tape; one that is hidden lies behind the garment.
type run struct {
	line
	hidden bool
}

// Of returns the drawing of a measurement on a part as the wearer would have it, and whether there
// is one. A wearer who is not known is drawn as a woman.
func Of(p Part, k measure.Key, w measure.Wearer) (Drawing, bool) {
	draw, ok := map[Part]map[measure.Key]func(figure) Drawing{
		Bodice: onBodice, Form: onBodice, Skirt: onSkirt, Sleeve: onSleeve,
	}[p][k]
	if !ok {
		return Drawing{}, false
	}
	return draw(figureOf(p, w)), true
}

// Plain returns a part from the front without any tape.
func Plain(p Part, w measure.Wearer) Drawing {
	switch p {
	case Skirt:
		return Drawing{garment: skirtFront}
	case Sleeve:
		return Drawing{garment: sleeve}
	}
	return Drawing{garment: figureOf(p, w).front()}
}

// Path returns where the tape runs, in parts of the frame.
func (d Drawing) Path() [][]plane.Point {
	var all [][]plane.Point
	for _, r := range d.tape {
		all = append(all, r.line)
	}
	return all
}
