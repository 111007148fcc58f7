package pads

import (
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/section"
)

// Disc closes the neck: stiff card, covered, that lies in the neck opening.
type Disc struct {
	Outline plane.Ring
	Hole    plane.Ring // for the pole, clockwise; nil where the pole ends below
}

// Neck returns the disc for a neck whose outline at its base is given, front up: smaller all round by the thickness of what covers it, so that the
// covered disc has the neck's girth. pole is the diameter of a pole that passes it at a place, 0 for none.
func Neck(base section.Section, cover, pole float64, at plane.Point) (Disc, error) {
	girth := base.Tape()
	for _, c := range []struct {
		what          string
		value, lo, hi float64
	}{{"neck girth, mm,", girth, 100, 1000}, {"cover, mm,", cover, 0, girth / 20}, {"pole, mm,", pole, 0, girth / 5}} {
		if err := check(c.what, c.value, c.lo, c.hi); err != nil {
			return Disc{}, err
		}
	}
	inner := base
	if cover > 0 {
		inner = base.Parallel(-cover)
	}
	d := Disc{Outline: inner.Ring().Hull()}
	if pole > 0 {
		r := pole / 2 / math.Cos(math.Pi/ellipseSteps) // drawn round its circle, so that it is never short
		d.Hole = ellipse(r, r).Move(at).Reverse()
	}
	return d, nil
}
