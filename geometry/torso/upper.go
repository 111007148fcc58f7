package torso

import (
	"math"
	"slices"

	"understructure/geometry/curve"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/space"
)

// upper is the figure above the underarm: the chest cut by the armscye, the shoulders
// that close it along a sloping ridge, and the neck that stands in them.
type upper struct {
	shoulderLength, slope float64        // along the ridge, mm; down from level, rad
	across                float64        // half breadth at the shoulder point where the hand set it, mm; else 0
	neckHalf, neckDepth   float64        // half breadth and half depth of the neck, mm
	neck                  section.Halves // its outline about its own middle
	nape                  float64        // y of the nape
	ridge                 float64        // y of the shoulder ridge
	chest                 section.Halves // the across-chest slice before the armscye cuts it
	cutFront, cutBack     plane.Point    // where it cuts, on the right
	bentChest, bentTip    *bend          // what the hand did to the slices at across-chest and shoulder
}

// neckLean is how far the neck leans forward a millimetre of height: about 15 degrees.
// From memory; it shapes only what shows above the neck base.
const neckLean = 0.27

// fillet is the radius-like blend where the neck stands in the shoulders, mm. From memory.
const fillet = 12.0

// aboveNape is how far the skin goes on above the nape, mm, so that the neck base itself
// is not an edge.
const aboveNape = 30.0

// startUpper settles the sizes of the upper figure.
func (d *draft) startUpper() {
	s, bust := d.stats, d.girth[measure.Bust]
	b := d.bodies[measure.Underarm]
	u := &d.upper
	u.shoulderLength = d.take(measure.ShoulderLength, s.shoulder.of(bust), s.sources.girth)
	u.slope = d.take(measure.ShoulderSlope, s.slope, s.sources.neck) * math.Pi / 180
	half := s.upper.chest * b.Depth / 2
	u.chest = section.Halves{
		Front: half, Back: half, FrontFullness: chestFullness, BackFullness: chestFullness,
		Y: b.Y - s.upper.back*b.Depth,
	}
	u.nape = u.chest.Y - half + s.upper.nape*b.Depth
	d.fitNeck()
	full := b.Breadth/4 + 0.55*u.reach() // wide enough that the armscye cuts it all the way
	u.setAcross(d.hand[measure.Shoulder])
	u.chest.Right, u.chest.Left = full, full
	u.cutBack = d.cut(measure.AcrossBack, s.across.of(bust), u.chest, -1)
	u.cutFront = d.cut(measure.AcrossFront, s.chest*bust, u.chest, 1)
}

// move moves the upper figure forward by dy.
func (u *upper) move(dy float64) {
	u.chest.Y += dy
	u.nape += dy
	u.ridge += dy
	u.cutFront.Y += dy
	u.cutBack.Y += dy
}

// chestFullness is the superellipse exponent of front and back at the across-chest level (mesh).
const chestFullness = 2.8

// fitNeck sizes the neck so that a tape round the neck base has the girth taken. The slice
// there is the neck itself, for the shoulders have closed to its breadth.
func (d *draft) fitNeck() {
	u := &d.upper
	girth := d.take(measure.NeckBaseGirth, d.stats.neck.of(d.girth[measure.Bust]), d.stats.sources.girth)
	deep := d.stats.upper.neckDeep
	round := section.Halves{Right: 1, Left: 1, Front: deep, Back: deep, FrontFullness: 2, BackFullness: 2}.Ring().Tape()
	u.neckHalf = girth / round
	u.neckDepth = u.neckHalf * deep
	u.ridge = u.nape + 2*u.neckDepth*d.stats.upper.neckAt
	u.neck = section.Halves{Right: u.neckHalf, Left: u.neckHalf, Front: u.neckDepth, Back: u.neckDepth, FrontFullness: 2, BackFullness: 2}
	d.girth[measure.NeckBase] = girth
	if a := d.hand[measure.NeckBase]; shapes(a) {
		d.shapeNeck(a)
	}
}

// cut finds the point of the slice, on the right, where a tape laid from armscye to
// armscye across the front (side 1) or back (side −1) has the length taken.
func (d *draft) cut(k measure.Key, usual float64, h section.Halves, side float64) plane.Point {
	want := d.take(k, usual, d.stats.sources.girth) / 2
	var half []plane.Point // from the middle outwards
	for _, p := range h.Ring() {
		if p.X >= 0 && side*(p.Y-h.Y) >= 0 {
			half = append(half, p)
		}
	}
	if side > 0 { // the front right quarter runs from the side in
		for i, j := 0, len(half)-1; i < j; i, j = i+1, j-1 {
			half[i], half[j] = half[j], half[i]
		}
	}
	middle := plane.Point{Y: half[0].Y}
	prev, length := middle, 0.0
	for _, p := range half {
		step := p.Dist(prev)
		if length+step >= want && step > 0 {
			return prev.Lerp(p, (want-length)/step)
		}
		length += step
		prev = p
	}
	d.note("across-too-wide", k, 2*(want-length), "The %s reaches %.0f mm farther than the figure has surface; it is taken as %.0f mm.", label(k), 2*(want-length), 2*length)
	return prev
}

// setAcross sets the breadth at the shoulder as the hand wants it.
func (u *upper) setAcross(a measure.Adjustment) {
	u.across = 0
	if a.Breadth != nil {
		u.across = u.acrossRoom().Clamp(*a.Breadth) / 2
	}
}

// acrossRoom is how broad the shoulders may be set by hand: they leave room for the neck.
func (u *upper) acrossRoom() section.Span {
	s := likely(2 * u.reach())
	return section.Span{Least: math.Max(s.Least, 2.4*u.neckHalf), Most: s.Most}
}

// reach is the half breadth at the shoulder point.
func (u *upper) reach() float64 {
	if u.across > 0 {
		return u.across
	}
	return u.neckHalf + u.shoulderLength*math.Cos(u.slope)
}

// rib is the upper figure at one height: shoulders, and the neck that stands in them.
type rib struct {
	z          float64
	shoulders  section.Halves
	t          float64 // the part of the way from the chest to the shoulder point
	neck       section.Halves
	neckOnly   bool
	chest, tip float64 // how much of what the hand did at across-chest and shoulder shows here
}

// frame is the upper figure from front, back and side, from across-chest to above the neck.
type frame struct {
	*upper
	z                 heights
	chest, top        float64
	front, back, side curve.Monotone
}

func (u *upper) frame(z heights) frame {
	chest, top := z.at(measure.AcrossChest), math.Max(z.nape, z.neck)+aboveNape
	pit := u.nape + 2*u.neckDepth
	return frame{
		upper: u, z: z, chest: chest, top: top,
		front: curve.Through([]float64{chest, z.neckFront, top}, []float64{u.chest.Y + u.chest.Front, pit, pit - aboveNape}),
		back:  curve.Through([]float64{chest, z.nape, top}, []float64{u.chest.Y - u.chest.Back, u.nape, u.nape + aboveNape}),
		side:  curve.Through([]float64{chest, z.shoulder, top}, []float64{u.chest.Y, u.ridge, u.ridge}),
	}
}

// ribs returns the upper figure from across-chest to above the neck.
func (u *upper) ribs(z heights) []rib {
	f := u.frame(z)
	var out []rib
	for _, h := range u.knots(z, f.chest, f.top) {
		out = append(out, f.rib(h))
	}
	return out
}

// rib is the upper figure at height h.
func (f frame) rib(h float64) rib {
	z := f.z
	r := rib{z: h, neck: f.neckAt(h - z.neck), neckOnly: h == z.neck}
	y := f.side.At(h)
	r.shoulders = section.Halves{Y: y, Front: math.Max(f.front.At(h)-y, 1), Back: math.Max(y-f.back.At(h), 1)}
	r.t = math.Min((h-f.chest)/(z.shoulder-f.chest), 1)
	r.chest, r.tip = 1-r.t, r.t
	if h > z.shoulder {
		r.tip = math.Max(1-(h-z.shoulder)/(z.neck-z.shoulder), 0)
	}
	f.widen(&r, z)
	return r
}

// widen gives the shoulders of a rib their breadth and fullness.
func (u *upper) widen(r *rib, z heights) {
	a := u.chest.Right + (u.reach()-u.chest.Right)*r.t
	if r.z > z.shoulder {
		a = u.reach() + (u.neckHalf-u.reach())*(r.z-z.shoulder)/(z.neck-z.shoulder)
	}
	a = math.Max(a, u.neckHalf/2)
	b := &r.shoulders
	b.Right, b.Left = a, a
	b.FrontFullness = chestFullness + (ridgeFullness-chestFullness)*r.t
	b.BackFullness = b.FrontFullness
}

// slice draws a rib in every direction.
func (u *upper) slice(r rib) section.Section {
	s := u.unbent(r)
	if u.bentChest != nil || u.bentTip != nil {
		for j := range s {
			s[j] *= u.bentBy(r, j)
		}
	}
	return s
}

// unbent is the slice before the hand.
func (u *upper) unbent(r rib) section.Section {
	neck := section.Of(r.neck.Ring())
	if r.neckOnly {
		return neck
	}
	s := section.Of(r.shoulders.Ring())
	for j := range s {
		s[j] = math.Min(s[j], u.flat(j, r.t))
	}
	return section.Blend(s, neck, fillet)
}

// toward is the distance of a rib from the axis in one direction: slice without the others.
func (u *upper) toward(r rib, j int) float64 {
	d := r.neck.Toward(j)
	if !r.neckOnly {
		d = section.Farther(math.Min(r.shoulders.Toward(j), u.flat(j, r.t)), d, fillet)
	}
	return d * u.bentBy(r, j)
}

// ridgeFullness is the fullness of the lens-shaped slices through the shoulders. From memory.
const ridgeFullness = 2.0

// knots are the heights at which the upper figure is drawn.
func (u *upper) knots(z heights, chest, top float64) []float64 {
	named := []float64{chest, z.shoulder, z.nape, z.neck, top}
	hs := append([]float64{(chest + z.shoulder) / 2}, named...)
	for k := 1; k <= 3; k++ {
		hs = append(hs, z.shoulder+(z.neck-z.shoulder)*float64(k)/4)
	}
	slices.Sort(hs)
	const apart = 2.5 // mm; closer, and one of the two says nothing
	out := hs[:0]
	for _, h := range hs {
		if n := len(out); n > 0 && h-out[n-1] < apart {
			if slices.Contains(named, h) && !slices.Contains(named[:4], out[n-1]) {
				out[n-1] = h
			} else if h == z.neck || h == z.shoulder && u.bentTip != nil && out[n-1] != chest {
				out[n-1] = h
			}
			continue
		}
		out = append(out, h)
	}
	return out
}

// flat is how far away the flat of the armscye lies in direction j, on both sides alike: at
// the across-chest level (t = 0) it runs from the front cut to the back cut, and it runs out to
// nothing at the shoulder point (t = 1). Infinite where it is not met.
func (u *upper) flat(j int, t float64) float64 {
	x := u.reach()
	f, b := u.cutFront.Lerp(plane.Point{X: x, Y: u.cutFront.Y}, t), u.cutBack.Lerp(plane.Point{X: x, Y: u.cutBack.Y}, t)
	along := f.Sub(b)
	d := section.Direction(j)
	d.X = math.Abs(d.X)
	if den := d.Cross(along); den > 1e-9 {
		return b.Cross(along) / den
	}
	return math.Inf(1)
}

// neckAt is the neck at a height above the neck point; below it stands upright, hidden
// in the shoulders.
func (u *upper) neckAt(above float64) section.Halves {
	h := u.neck
	h.Y = u.nape + u.neckDepth + neckLean*math.Max(above, 0)
	return h
}

// armscye is the right opening: a loop from the shoulder point forwards, down to the
// underarm and up the back.
func (d *draft) armscye() []space.Point { return d.upper.loop(d.z, d.bodies[measure.Underarm]) }
