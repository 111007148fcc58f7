package torso

import (
	"math"

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
	neckHalf, neckDepth   float64        // half breadth and half depth of the neck, mm
	nape                  float64        // y of the nape
	ridge                 float64        // y of the shoulder ridge
	chest                 section.Halves // the across-chest slice before the armscye cuts it
	cutFront, cutBack     plane.Point    // where it cuts, on the right
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
	h := d.halves[measure.Underarm]
	depth := h.Front + h.Back
	u := &d.upper
	u.shoulderLength = d.take(measure.ShoulderLength, s.shoulderLength(bust), s.source)
	u.slope = d.take(measure.ShoulderSlope, s.shoulderSlope, s.slopeSource) * math.Pi / 180
	u.chest = section.Halves{
		Front: h.Front - s.chestFalls*depth, Back: h.Back - s.backFalls*depth,
		FrontFullness: h.FrontFullness, BackFullness: h.BackFullness, Y: h.Y,
	}
	u.nape = h.Y - u.chest.Back + s.napeForward*depth
	d.fitNeck()
	reach := u.neckHalf + u.shoulderLength*math.Cos(u.slope)
	full := (h.Right+h.Left)/4 + 0.55*reach // wide enough that the armscye cuts it all the way
	u.chest.Right, u.chest.Left = full, full
	u.cutBack = d.cut(measure.AcrossBack, s.acrossBack(bust), u.chest, -1)
	u.cutFront = d.cut(measure.AcrossFront, s.acrossFront(bust), u.chest, 1)
}

// fitNeck sizes the neck so that a tape round the neck base has the girth taken. The slice
// there is the neck itself, for the shoulders have closed to its breadth.
func (d *draft) fitNeck() {
	u := &d.upper
	girth := d.take(measure.NeckBaseGirth, d.stats.neckGirth(d.girth[measure.Bust]), d.stats.source)
	unit := section.Halves{Right: 1, Left: 1, Front: d.stats.neckDepth, Back: d.stats.neckDepth, FrontFullness: 2, BackFullness: 2}
	round, _, _ := unit.Arcs()
	u.neckHalf = girth / round
	u.neckDepth = u.neckHalf * d.stats.neckDepth
	u.ridge = u.nape + u.neckDepth
	d.girth[measure.NeckBase] = girth
}

// cut finds the point of the slice, on the right, where a tape laid from armscye to
// armscye across the front (side 1) or back (side −1) has the length taken.
func (d *draft) cut(k measure.Key, usual float64, h section.Halves, side float64) plane.Point {
	want := d.take(k, usual, d.stats.source) / 2
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
	d.note("across-too-wide", k, 2*(want-length), "%s reaches %.0f mm farther than the figure has surface; it is taken as %.0f mm.", k, 2*(want-length), 2*length)
	return prev
}

// reach is the half breadth at the shoulder point.
func (u *upper) reach() float64 { return u.neckHalf + u.shoulderLength*math.Cos(u.slope) }

// slices returns the heights and slices from across-chest to above the nape.
func (u *upper) slices(z heights) ([]float64, []section.Section) {
	chest, top := z.at(measure.AcrossChest), z.nape+aboveNape
	pit := u.nape + 2*u.neckDepth
	front := curve.Through([]float64{chest, z.neckFront, top}, []float64{u.chest.Y + u.chest.Front, pit, pit - aboveNape})
	back := curve.Through([]float64{chest, z.nape, top}, []float64{u.chest.Y - u.chest.Back, u.nape, u.nape + aboveNape})
	side := curve.Through([]float64{chest, z.shoulder, top}, []float64{u.chest.Y, u.ridge, u.ridge})
	half := func(h float64) float64 {
		if h <= z.shoulder {
			return u.chest.Right + (u.reach()-u.chest.Right)*(h-chest)/(z.shoulder-chest)
		}
		return u.reach() + (u.neckHalf-u.reach())*(h-z.shoulder)/(z.neck-z.shoulder)
	}
	var hs []float64
	var out []section.Section
	for _, h := range u.knots(z, chest, top) {
		y := side.At(h)
		t := math.Min((h-chest)/(z.shoulder-chest), 1) // from the chest to the shoulder point
		a := math.Max(half(h), u.neckHalf*0.5)
		body := section.Halves{
			Right: a, Left: a, Y: y,
			Front: math.Max(front.At(h)-y, 1), Back: math.Max(y-back.At(h), 1),
			FrontFullness: u.chest.FrontFullness + (ridgeFullness-u.chest.FrontFullness)*t,
			BackFullness:  u.chest.BackFullness + (ridgeFullness-u.chest.BackFullness)*t,
		}
		s := section.Of(body.Ring())
		u.cutSides(&s, t)
		if h > math.Min(z.neckFront, z.shoulder) {
			s = section.Blend(s, u.neckSlice(h-z.neck), fillet)
		}
		if h == z.neck {
			s = section.Of(section.Halves{Right: u.neckHalf, Left: u.neckHalf, Front: u.neckDepth, Back: u.neckDepth, FrontFullness: 2, BackFullness: 2, Y: u.ridge}.Ring())
		}
		hs, out = append(hs, h), append(out, s)
	}
	return hs, out
}

// ridgeFullness is the fullness of the lens-shaped slices through the shoulders. From memory.
const ridgeFullness = 2.0

// knots are the heights at which the upper figure is drawn.
func (u *upper) knots(z heights, chest, top float64) []float64 {
	hs := []float64{chest, (chest + z.shoulder) / 2, z.shoulder}
	for k := 1; k <= 4; k++ {
		hs = append(hs, z.shoulder+(z.neck-z.shoulder)*float64(k)/4)
	}
	hs[len(hs)-1] = z.neck
	if z.nape > z.neck+5 {
		hs = append(hs, z.nape)
	}
	return append(hs, top)
}

// cutSides lays the flat of the armscye on both sides: at the across-chest level from the
// front cut to the back cut, running out to nothing at the shoulder point.
func (u *upper) cutSides(s *section.Section, t float64) {
	tip := plane.Point{X: u.reach()}
	f, b := u.cutFront.Lerp(plane.Point{X: tip.X, Y: u.cutFront.Y}, t), u.cutBack.Lerp(plane.Point{X: tip.X, Y: u.cutBack.Y}, t)
	along := f.Sub(b)
	for j := range s {
		d := section.Direction(j)
		d.X = math.Abs(d.X) // both sides alike
		if den := d.Cross(along); den > 1e-9 {
			s[j] = math.Min(s[j], b.Cross(along)/den)
		}
	}
}

// neckSlice is the neck at a height above the neck point.
func (u *upper) neckSlice(above float64) section.Section {
	return section.Of(section.Halves{
		Right: u.neckHalf, Left: u.neckHalf, Front: u.neckDepth, Back: u.neckDepth,
		FrontFullness: 2, BackFullness: 2, Y: u.ridge + neckLean*above,
	}.Ring())
}

// armscye is the right opening: a loop from the shoulder point forwards, down to the
// underarm and up the back.
func (d *draft) armscye() []space.Point { return d.upper.loop(d.z, d.halves[measure.Underarm]) }
