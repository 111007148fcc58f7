package tapes

import (
	"understructure/geometry/measure"
	"understructure/geometry/plane"
)

// The heights of a bodice from its hem to the nape, in parts of the frame. They are drawn the same for
// everyone: a drawing shows where a tape goes, not how anyone is built.
const (
	hemAt       = 12.0
	hipAt       = 20.0
	highHipAt   = 33.0
	waistAt     = 45.0
	underbustAt = 56.0
	bustAt      = 66.0
	underarmAt  = 72.0
	acrossAt    = 80.5
	pitAt       = 86.5
	neckAt      = 95.0
	napeAt      = 93.5
)

var levels = []float64{hemAt, hipAt, highHipAt, waistAt, underbustAt, bustAt, underarmAt}

// figure is a torso: its shoulder in the front view, and its edges. Its front is to the right in the side view.
type figure struct {
	neck, shoulder    plane.Point // right half of the front view
	across            float64     // half, at the middle of the armhole
	bustPoint         float64     // half of the width
	side, chest, back edge        // in the front view; in the side view the last two
	bare              bool        // a form on its pole instead of a garment
	wearer            measure.Wearer
}

var figures = map[measure.Wearer]figure{
	measure.Woman: {
		neck: at(8, neckAt), shoulder: at(22.5, 89), across: 19.5, bustPoint: 9.5, wearer: measure.Woman,
		side:  edgeThrough(levels, []float64{27, 25, 20.5, 14.5, 18.5, 22.5, 22}),
		chest: edgeThrough(append(levels[:7:7], acrossAt, pitAt), []float64{16.5, 16, 14.5, 11.5, 14.5, 20, 18.5, 12, 6}),
		back:  edgeThrough(append(levels[:7:7], acrossAt, napeAt), []float64{-21, -19.5, -15, -8.5, -11.5, -13.5, -14.5, -14.5, -6}),
	},
	measure.Man: {
		neck: at(8.5, neckAt), shoulder: at(26.5, 89), across: 23, bustPoint: 10.5, wearer: measure.Man,
		side:  edgeThrough(levels, []float64{24.5, 24, 22.5, 21, 22.5, 25, 25.5}),
		chest: edgeThrough(append(levels[:7:7], acrossAt, pitAt), []float64{14, 14, 14, 13.5, 14.5, 16, 15.5, 12, 6}),
		back:  edgeThrough(append(levels[:7:7], acrossAt, napeAt), []float64{-17, -16.5, -14, -11.5, -14, -16, -16.5, -15.5, -6}),
	},
	measure.Child: {
		neck: at(7.5, neckAt), shoulder: at(20, 90), across: 17.5, bustPoint: 8, wearer: measure.Child,
		side:  edgeThrough(levels, []float64{22.5, 21.5, 20, 18.5, 18.5, 19.5, 19.5}),
		chest: edgeThrough(append(levels[:7:7], acrossAt, pitAt), []float64{16, 16, 16.5, 16, 14.5, 14, 13, 11, 6}),
		back:  edgeThrough(append(levels[:7:7], acrossAt, napeAt), []float64{-16.5, -15.5, -13, -11, -12, -12.5, -13, -13, -6}),
	},
}

// figureOf returns the torso of a wearer, bare for a form.
func figureOf(p Part, w measure.Wearer) figure {
	f, ok := figures[w]
	if !ok {
		f = figures[measure.Woman]
	}
	f.bare = p == Form
	return f
}
