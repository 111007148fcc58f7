package torso

import (
	"understructure/geometry/measure"
	"understructure/geometry/section"
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
	l, z, u := d.stack(), d.z, &d.upper
	t := Torso{
		Skin: surface.Through(l.z, l.slices, d.rows(l)), Armscye: d.armscye(),
		Neck:      space.Point{X: u.neck.Right, Y: u.ridge, Z: z.neck},
		Shoulder:  raised(u.tip(), z.shoulder),
		BustPoint: raised(d.bustPoint(), z.at(measure.Bust)),
		Nape:      space.Point{Y: u.nape, Z: z.nape},
		NeckFront: space.Point{Y: u.nape + 2*u.neckDepth, Z: z.neckFront},
		Drawn:     d.drawn, Lengths: d.lengths, draft: d,
	}
	for _, name := range measure.Levels {
		s := t.Skin.At(z.at(name))
		t.Levels = append(t.Levels, d.level(name, s))
	}
	d.noteHand(t.Levels)
	t.Notices = d.notices
	return t
}

// level is the level of that name with its slice.
func (d *draft) level(name measure.Level, s section.Section) Level {
	seam := d.seamAt(name, s)
	return Level{Name: name, Height: d.z.at(name), Girth: s.Tape(), Taken: d.taken(name), Section: s, Seam: seam, Reading: s.Reading(seam)}
}

// seamAt is the y of the side seams of a slice: of the neck and shoulder points at their
// levels, and at mid-depth where nothing else is known.
func (d *draft) seamAt(name measure.Level, s section.Section) float64 {
	if y, ok := d.seam[name]; ok {
		return y
	}
	if name == measure.AcrossChest {
		lo, hi := s.Ring().Bounds()
		return (lo.Y + hi.Y) / 2
	}
	return d.upper.ridge
}

func (d *draft) rows(l loft) []float64 {
	fixed := append([]float64{}, l.z...)
	lo, hi := l.z[0]-belowHip, l.z[len(l.z)-1]
	below := surface.Rows(lo, d.z.shoulder, RowGap, fixed...)
	above := surface.Rows(d.z.shoulder, hi, ridgeGap, fixed...)
	return append(below, above[1:]...)
}

// taken reports whether a tape, or the hand, gave the girth at a level.
func (d *draft) taken(l measure.Level) bool {
	_, ok := d.sheet[girthKey(l)]
	return ok || d.hand[l].Girth != nil
}
