package flatten

import (
	"math"

	"understructure/geometry/plane"
)

// thin and small mark a sliver: its height is under a twelfth of its longest side, and its
// area under an eighth of the mean. A patch cut fine one way and coarse the other has none.
// An area under tiny times the mean is a speck, a few hundredths of a square millimetre, whose strain nobody could see.
const (
	thin  = 1. / 12
	small = 1. / 8
	tiny  = 1. / 1000
)

// floor is the least height and half the least longest side of a triangle at rest, as a fraction of the root of the
// mean area: a few thousandths of a millimetre. Below it rounding would decide which way a triangle faces.
const floor = 1e-3

// element is one triangle at rest. In the plane with complex coordinate z, a map that is
// linear on it has ∂f/∂z = Σ cⱼ fⱼ and ∂f/∂z̄ = Σ c̄ⱼ fⱼ over its corners j; its stretches are
// σ₁ = |∂f/∂z| + |∂f/∂z̄| and σ₂ = |∂f/∂z| − |∂f/∂z̄|, the second negative when it is turned over.
type element struct {
	v      [3]int
	cr, ci [3]float64
	area   float64
	sliver bool
	speck  bool    // too small to have a strain
	long   float64 // the side from v[0] to v[1], the longest
}

// sheet is a patch made ready to be laid.
type sheet struct {
	points   int
	elements []element
	area     float64
	darts    []Dart // whose legs are to come out equal
	kept     []tie  // runs that are to keep their length
}

func newSheet(p Patch) sheet {
	sh := sheet{points: len(p.Points), elements: make([]element, len(p.Triangles)), area: p.Area()}
	mean := sh.area / float64(len(p.Triangles))
	for i, t := range p.Triangles {
		sh.elements[i] = p.rest(t, mean)
	}
	return sh
}

// rest lays one triangle in its own plane, its longest side along the x-axis. mean is the mean
// area of all triangles.
func (p Patch) rest(t [3]int, mean float64) element {
	pt := p.Points
	for range 2 {
		if s := pt[t[0]].Dist(pt[t[1]]); s < pt[t[1]].Dist(pt[t[2]]) || s < pt[t[2]].Dist(pt[t[0]]) {
			t = [3]int{t[1], t[2], t[0]}
		}
	}
	base, side := pt[t[1]].Sub(pt[t[0]]), pt[t[2]].Sub(pt[t[0]])
	long := base.Norm()
	least := floor * math.Sqrt(mean)
	x, y := side.Dot(base)/long, base.Cross(side).Norm()/long
	speck := long*y/2 < tiny*mean
	if long < 2*least {
		x, y, long = least, least, 2*least
	}
	e := newElement(t, long, x, math.Max(y, least))
	e.sliver, e.speck = speck || y < thin*long && e.area < small*mean, speck
	return e
}

// newElement has its corners at (0, 0), (long, 0) and (x, y) at rest.
func newElement(v [3]int, long, x, y float64) element {
	double := long * y
	return element{
		v: v, long: long, area: double / 2,
		cr: [3]float64{-y / (2 * double), y / (2 * double), 0},
		ci: [3]float64{-(x - long) / (2 * double), x / (2 * double), -long / (2 * double)},
	}
}

// derivatives returns ∂f/∂z and ∂f/∂z̄ of the map that takes the corners to x.
func (e *element) derivatives(x []plane.Point) (ar, ai, br, bi float64) {
	for j, v := range e.v {
		p, r, i := x[v], e.cr[j], e.ci[j]
		ar += r*p.X - i*p.Y
		ai += r*p.Y + i*p.X
		br += r*p.X + i*p.Y
		bi += r*p.Y - i*p.X
	}
	return
}

// stretches returns σ₁ and σ₂.
func (e *element) stretches(x []plane.Point) (float64, float64) {
	ar, ai, br, bi := e.derivatives(x)
	α, β := math.Hypot(ar, ai), math.Hypot(br, bi)
	return α + β, α - β
}

// strain is the larger of |σ₁−1| and |σ₂−1|; for a sliver, that of its longest side.
func (e *element) strain(x []plane.Point) float64 {
	if e.speck {
		return 0
	}
	if e.sliver {
		return math.Abs(x[e.v[0]].Dist(x[e.v[1]])/e.long - 1)
	}
	σ1, σ2 := e.stretches(x)
	return math.Max(math.Abs(σ1-1), math.Abs(σ2-1))
}
