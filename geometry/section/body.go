package section

import (
	"math"

	"understructure/geometry/curve"
	"understructure/geometry/plane"
)

// Profile is the usual outline of bodies at one level, as cosine coefficients of its
// radius: r(θ) = Σ cₖ cos kθ, θ from the front round to the back, left and right alike.
// Only its shape matters; breadth and depth stretch it.
type Profile []float64

// Body is a slice in the shape of bodies: a usual profile, stretched to a breadth and a
// depth, fuller or leaner on its diagonals in front and behind. Its tape outline is the
// convex hull; two lobes may lie under the tape.
type Body struct {
	Breadth, Depth float64 // of the tape outline, mm, > 0
	Front, Back    float64 // fullness of the front and back diagonals: 0 is the profile's own
	Balance        float64 // ln of left over right half breadth; 0 is symmetric
	Seam           float64 // how far in front of mid-depth the side seams lie, mm
	Y              float64 // y of mid-depth, mm
	Lobe           float64 // half the distance between two lobes' tips, mm; 0 for none
	Valley         float64 // depth of the hollow between them, mm

	radius *[Directions]float64 // the profile, from direction 0
}

// Shaped returns a body of the profile with breadth and depth given and no fullness of its own.
func Shaped(p Profile, breadth, depth float64) Body {
	b := Body{Breadth: breadth, Depth: depth, radius: new([Directions]float64)}
	for j := range b.radius {
		θ := math.Pi/2 - 2*math.Pi*float64(j)/Directions
		for k, c := range p {
			b.radius[j] += c * math.Cos(float64(k)*θ)
		}
	}
	return b
}

// Like returns the body that has the tape outline of a slice, which is taken to be alike on both
// sides, with its side seams at mid-depth.
func Like(s Section) Body {
	hull := s.Ring().Hull()
	lo, hi := hull.Bounds()
	b := Body{Breadth: hi.X - lo.X, Depth: hi.Y - lo.Y, Y: (lo.Y + hi.Y) / 2}
	round := Of(hull.Map(func(p plane.Point) plane.Point {
		return plane.Point{X: p.X * 2 / b.Breadth, Y: (p.Y - b.Y) * 2 / b.Depth}
	}))
	b.radius = (*[Directions]float64)(&round)
	return b
}

// Sides are the distances of the right and the left side from the middle, mm.
func (b Body) Sides() (right, left float64) {
	right, left = b.halves()
	return b.Breadth / 2 * right, b.Breadth / 2 * left
}

// Halves is the body of a circular profile as superellipses, about its own middle.
func (b Body) Halves() Halves {
	right, left := b.Sides()
	return Halves{Right: right, Left: left, Front: b.Depth / 2, Back: b.Depth / 2, FrontFullness: exponent(b.Front), BackFullness: exponent(b.Back)}
}

// halves are the right and the left half breadth as parts of their mean.
func (b Body) halves() (right, left float64) {
	right, left = math.Exp(-b.Balance), math.Exp(b.Balance)
	return 2 * right / (right + left), 2 * left / (right + left)
}

// quarter is a quarter turn in directions.
const quarter = Directions / 4

// logCosine is the logarithm of cos θ in the directions of the first quarter; that of sin θ
// runs the other way.
var logCosine [quarter + 1]float64

func init() {
	for j := range logCosine {
		logCosine[j] = math.Log(math.Cos(2 * math.Pi * float64(j) / Directions))
	}
}

// full returns how much farther out the diagonals lie for a fullness κ, in the directions of
// a quarter. It is what lies between a circle and the superellipse |x|ⁿ + |y|ⁿ = 1 (G. Lamé,
// 1818) with n = 2·exp(2κ/ln 2), which lies a part κ outside the circle at 45° when κ is
// small, is a diamond at n = 1 and a square for great n.
func full(κ float64) (out [quarter + 1]float64) {
	n := exponent(κ)
	for j := range out {
		out[j] = math.Exp(-math.Log(math.Exp(n*logCosine[j])+math.Exp(n*logCosine[quarter-j])) / n)
	}
	return out
}

func exponent(κ float64) float64 { return 2 * math.Exp(2*κ/math.Ln2) }

// inQuarter is the direction of the first quarter that is as far from the sides as j.
func inQuarter(j int) int {
	j &= Directions/2 - 1
	if j > quarter {
		return Directions/2 - j
	}
	return j
}

// outline is the skin of a body before it is stretched to its size: fullness alone shapes it.
type outline struct {
	p            [Directions]plane.Point
	hi, lo, wide float64 // its extents to the front, the back and the right
}

func (b Body) outline() *outline {
	o := new(outline)
	front := full(b.Front)
	back := front
	if b.Back != b.Front {
		back = full(b.Back)
	}
	for j := range o.p {
		r := b.radius[j]
		if j <= Directions/2 {
			r *= front[inQuarter(j)]
		} else {
			r *= back[inQuarter(j)]
		}
		o.p[j] = plane.Point{X: r * cosine[j], Y: r * sine[j]}
	}
	o.hi = extent(&o.p, func(q plane.Point) float64 { return q.Y })
	o.lo = -extent(&o.p, func(q plane.Point) float64 { return -q.Y })
	o.wide = extent(&o.p, func(q plane.Point) float64 { return q.X })
	return o
}

// skin is the outline about mid-depth before the tape is pulled tight.
func (b Body) skin() [Directions]plane.Point { return b.stretched(b.outline()) }

// stretched is the skin drawn from the outline of b's fullness.
func (b Body) stretched(o *outline) (p [Directions]plane.Point) {
	right, left := b.halves()
	for j, q := range o.p {
		f := b.Breadth / 2 / o.wide * right
		if q.X < 0 {
			f = b.Breadth / 2 / o.wide * left
		}
		p[j] = plane.Point{X: q.X * f, Y: (q.Y - (o.lo+o.hi)/2) * b.Depth / (o.hi - o.lo)}
	}
	return p
}

// extent is the greatest value round the outline, between points too: the top of the
// parabola through the greatest and its neighbours, so that it changes smoothly with the outline.
func extent(p *[Directions]plane.Point, of func(plane.Point) float64) float64 {
	best := 0
	for j := range p {
		if of(p[j]) > of(p[best]) {
			best = j
		}
	}
	a, b, c := of(p[(best+Directions-1)%Directions]), of(p[best]), of(p[(best+1)%Directions])
	if bend := a - 2*b + c; bend < 0 {
		return b - (a-c)*(a-c)/(8*bend)
	}
	return b
}

// Arcs measures the taut tape: the whole girth, the part in front of the side seams, and
// the part from centre front round the left side to centre back.
func (b Body) Arcs() (girth, front, left float64) {
	p := b.skin()
	return arcs(&p, b.Seam)
}

// arcs measures the tape round a skin, with the side seams at y = seam.
func arcs(p *[Directions]plane.Point, seam float64) (girth, front, left float64) {
	var hull [Directions + 1]plane.Point
	n := scan(p[:], &hull)
	for i := 1; i < n; i++ {
		a, c := hull[i-1], hull[i]
		l := a.Dist(c)
		girth += l
		front += l * above(a.Y-seam, c.Y-seam)
		left += l * above(-a.X, -c.X)
	}
	return girth, front, left
}

// SeamOf returns how far before mid-depth the side seams lie that cut off a front arc of the
// given length; the front or the back where none do.
func (b Body) SeamOf(front float64) float64 {
	p := b.skin()
	y, err := curve.Root(func(y float64) float64 {
		_, f, _ := arcs(&p, y)
		return f - front
	}, -b.Depth/2, b.Depth/2, met/10)
	switch {
	case err == nil:
		return y
	case front > 0:
		return -b.Depth / 2
	}
	return b.Depth / 2
}

// Ring returns the outline as the tape sees it, with the hollow between the lobes,
// counter-clockwise.
func (b Body) Ring() plane.Ring {
	p := b.skin()
	tape := Of(hullAround(&p)[1:])
	ring := tape.Ring()
	front := 0.0
	for j, q := range ring {
		if b.Lobe > 0 && q.Y > 0 && math.Abs(q.X) < b.Lobe {
			c := math.Cos(q.X / b.Lobe * math.Pi / 2)
			ring[j].Y -= b.Valley * c * c
		}
		front = math.Max(front, ring[j].Y)
	}
	for j := range ring {
		if b.Lobe > 0 && ring[j].Y > 0 {
			ring[j].Y *= b.Depth / 2 / front // the hollow must not cost depth
		}
		ring[j].Y += b.Y
	}
	return ring
}

// FrontAt is the y of the tape outline in front, at distance x from the middle.
func (b Body) FrontAt(x float64) float64 {
	p := b.skin()
	hull := hullAround(&p)
	for i := 1; i < len(hull); i++ {
		a, c := hull[i-1], hull[i]
		if a.X >= x && c.X < x {
			return b.Y + a.Lerp(c, (a.X-x)/(a.X-c.X)).Y
		}
	}
	return b.Y
}

// above is the fraction of a straight edge that lies where the coordinate is positive.
func above(a, b float64) float64 {
	switch {
	case a >= 0 && b >= 0:
		return 1
	case a <= 0 && b <= 0:
		return 0
	case a > 0:
		return a / (a - b)
	}
	return b / (b - a)
}
