package torso

import (
	"understructure/geometry/measure"
	"understructure/geometry/space"
	"understructure/geometry/surface"
)

// RowGap is the greatest distance between two rows of a figure's skin, mm; see package surface.
const RowGap = 4.0

// ridgeGap is the same through the shoulders, where the skin is nearly level.
const ridgeGap = 2.0

// belowHip is how far the skin goes on upright below the hip, mm, so that the hip itself
// is not an edge.
const belowHip = 40.0

// torso closes the figure at the heights found.
func (d *draft) torso() Torso {
	l, z := d.stack(), d.z
	t := Torso{
		Skin: surface.Through(l.z, l.slices, d.rows(l)), Armscye: d.armscye(),
		Neck:      space.Point{X: d.upper.neckHalf, Y: d.upper.ridge, Z: z.neck},
		Shoulder:  space.Point{X: d.upper.reach(), Y: d.upper.ridge, Z: z.shoulder},
		Nape:      space.Point{Y: d.upper.nape, Z: z.nape},
		NeckFront: space.Point{Y: d.upper.nape + 2*d.upper.neckDepth, Z: z.neckFront},
		Drawn:     d.drawn, Lengths: d.lengths, Notices: d.notices,
	}
	b := d.bustPoint()
	t.BustPoint = space.Point{X: b.X, Y: b.Y, Z: z.at(measure.Bust)}
	for _, name := range measure.Levels {
		s := t.Skin.At(z.at(name))
		t.Levels = append(t.Levels, Level{Name: name, Height: z.at(name), Girth: s.Tape(), Taken: d.taken(name), Section: s})
	}
	return t
}

func (d *draft) rows(l loft) []float64 {
	fixed := append([]float64{}, l.z...)
	lo, hi := l.z[0]-belowHip, l.z[len(l.z)-1]
	below := surface.Rows(lo, d.z.shoulder, RowGap, fixed...)
	above := surface.Rows(d.z.shoulder, hi, ridgeGap, fixed...)
	return append(below, above[1:]...)
}

// taken reports whether a tape took the girth at a level.
func (d *draft) taken(l measure.Level) bool {
	if l == measure.NeckBase {
		_, ok := d.sheet[measure.NeckBaseGirth]
		return ok
	}
	for _, t := range taped {
		if t.level == l {
			_, ok := d.sheet[t.girth]
			return ok
		}
	}
	return false
}
