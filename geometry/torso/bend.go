package torso

import (
	"math"

	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/space"
)

// bend is what the hand did to a slice of the upper figure: the natural logarithm of how much
// farther from the axis it lies in each direction. Above and below it runs out, so that the slices
// between follow. A nil bend does nothing.
type bend section.Section

// bentBy is how much farther from the axis the hand put a rib in direction j.
func (u *upper) bentBy(r rib, j int) float64 {
	farther := 0.0
	if u.bentChest != nil {
		farther += r.chest * u.bentChest[j]
	}
	if u.bentTip != nil {
		farther += r.tip * u.bentTip[j]
	}
	return math.Exp(farther)
}

// moved is where a point of the slice before the hand lies after it.
func (b *bend) moved(p plane.Point) plane.Point {
	if b == nil {
		return p
	}
	turn := math.Atan2(p.Y, p.X) * section.Directions / (2 * math.Pi)
	j, t := math.Floor(turn), turn-math.Floor(turn)
	at := func(j int) float64 { return b[j&(section.Directions-1)] }
	return p.Mul(math.Exp(at(int(j))*(1-t) + at(int(j)+1)*t))
}

// tip is the shoulder point as seen from above.
func (u *upper) tip() plane.Point { return u.bentTip.moved(plane.Point{X: u.reach(), Y: u.ridge}) }

// raised is a point seen from above, at height z.
func raised(p plane.Point, z float64) space.Point { return space.Point{X: p.X, Y: p.Y, Z: z} }

// bendUpper shapes the slices at across-chest and shoulder as the hand wants them. That at
// the shoulder hangs on the heights, so it is bent anew whenever they have moved.
func (d *draft) bendUpper() {
	for _, c := range [...]struct {
		level measure.Level
		bend  **bend
	}{{measure.AcrossChest, &d.upper.bentChest}, {measure.Shoulder, &d.upper.bentTip}} {
		a := d.hand[c.level]
		if !shapes(a) && a.Girth == nil || c.level == measure.AcrossChest && *c.bend != nil {
			continue
		}
		raw, s := d.shapingUpper(c.level, a)
		_, drawn := s.correct(s.settle(), bender(raw, s.before))
		*c.bend = new(bend)
		for j := range raw {
			(*c.bend)[j] = math.Log(drawn.Section[j] / raw[j])
		}
		d.shaped[c.level], d.seam[c.level] = s, drawn.seam
		d.kept = loft{}
	}
}

// shapingUpper is what the hand does at across-chest or shoulder, and the slice there before it.
//
// Where no girth was typed none is known there: what the hand leaves alone stays as it was, and
// the girth follows. A girth typed makes the slice deeper or shallower, and broader or narrower
// too where no tape says how broad it is.
func (d *draft) shapingUpper(l measure.Level, a measure.Adjustment) (section.Section, *shaping) {
	raw := d.upper.unbent(d.upper.frame(d.z).rib(d.z.at(l)))
	b := section.Like(raw)
	if l == measure.Shoulder {
		b.Seam = d.upper.ridge - b.Y
	}
	s := &shaping{before: b, ratio: d.stats.shape[measure.Underarm].spread, hand: a}
	switch {
	case a.Girth == nil:
		s.taken = section.Readings{Breadth: b.Breadth, Depth: b.Depth}
	case d.broad(l):
		s.taken = section.Readings{Girth: *a.Girth, Breadth: b.Breadth}
	default:
		s.taken = section.Readings{Girth: *a.Girth}
	}
	return raw, s
}

// broad reports whether a tape says how broad the figure is at a level.
func (d *draft) broad(l measure.Level) bool {
	if l == measure.Shoulder {
		return d.sheet[measure.ShoulderLength] > 0
	}
	return d.sheet[measure.AcrossFront] > 0 || d.sheet[measure.AcrossBack] > 0
}

// bender draws the slice raw in the shape of a body, hollows and flats kept.
func bender(raw section.Section, was section.Body) func(section.Body) drawing {
	before := section.Of(was.Ring())
	return func(b section.Body) drawing {
		after := section.Of(b.Ring())
		for j := range after {
			after[j] *= raw[j] / before[j]
		}
		return drawing{after, b.Y + b.Seam}
	}
}

// shapingNeck is what the hand does at the neck base, whose outline is a circle's kin.
func (d *draft) shapingNeck(a measure.Adjustment) *shaping {
	u := &d.upper
	s := &shaping{before: section.Shaped(section.Profile{1}, 2*u.neckHalf, 2*u.neckDepth), ratio: neckSpread, hand: a}
	s.before.Seam = u.ridge - u.nape - u.neckDepth
	s.taken.Girth = d.girth[measure.NeckBase]
	return s
}

// neckDrawer draws a neck where it will stand about the axis, its middle at y for a depth: centre moves it
// by a part of the way from the nape. A neck does not move past its seams; they move.
func neckDrawer(y, depth float64) func(section.Body) drawing {
	return func(b section.Body) drawing {
		h := b.Halves()
		h.Y = y + (1-nearNeck)*(b.Depth-depth)/2
		return drawing{section.Of(h.Ring()), h.Y + b.Seam}
	}
}

// neckSpread is the standard deviation of ln(breadth/depth) of a neck: as a waist's, from memory.
const neckSpread = 0.1

// shapeNeck gives the neck the outline that the hand wants. Its side seams are the neck points.
func (d *draft) shapeNeck(a measure.Adjustment) {
	u := &d.upper
	s := d.shapingNeck(a)
	draw := neckDrawer((1-nearNeck)*(u.nape+u.neckDepth), 2*u.neckDepth)
	b, _ := s.correct(s.settle(), draw)
	drawn := draw(b)
	f := s.taken.Girth / drawn.Tape()
	b.Breadth, b.Depth, b.Seam = f*b.Breadth, f*b.Depth, f*b.Seam
	d.shaped[measure.NeckBase] = s
	u.neck = b.Halves()
	u.neckHalf, u.neckDepth = b.Breadth/2, b.Depth/2
	u.ridge = u.nape + u.neckDepth + b.Seam
}
