package flatten

import (
	"fmt"
	"math"

	"understructure/geometry/plane"
)

// exact is the greatest strain below which a patch counts as developable.
const exact = 1e-7

// spread lays a patch: conformally, then supple, then, unless that is enough, with its strain made even. What is to be
// equally long is made so to the last.
func (sh sheet) spread(p Patch, rough bool) ([]plane.Point, error) {
	s := newSolver(sh, p.Points)
	x, err := sh.conformal(s, p)
	if err != nil {
		return nil, err
	}
	x = sh.slacken(s, x)
	if rough || sh.greatest(x) < exact {
		return x, nil
	}
	x = sh.even(s, x)
	sh.join(s, x)
	return x, nil
}

// slacken takes supple steps as long as each takes half of the energy away, as it does on
// the way to no strain at all.
func (sh sheet) slacken(s *solver, x []plane.Point) []plane.Point {
	for before := sh.total(supple{}, x); ; {
		x = sh.descend(s, supple{}, x, 1)
		now := sh.total(supple{}, x)
		if !(now < before/20) || now < 1e-20*sh.area {
			return x
		}
		before = now
	}
}

// conformal is the least squares conformal map with the two vertices farthest apart held at their
// distance, scaled to the patch's area.
func (sh sheet) conformal(s *solver, p Patch) ([]plane.Point, error) {
	pts := p.Points
	a, b := farthest(p)
	pins := map[int]float64{a: 1e4, b: 1e4}
	_, ok := s.factor(len(pts), func(t int, l *local) { sh.elements[t].conform(l) }, hold, pins)
	if !ok {
		return nil, fmt.Errorf("flatten: no conformal map found; the patch has points too close together")
	}
	u := make([]float64, 2*len(pts))
	u[2*b] = pts[a].Dist(pts[b]) * pins[b]
	s.solve(u)
	x := places(u)
	area := 0.0
	for _, t := range p.Triangles {
		area += x[t[1]].Sub(x[t[0]]).Cross(x[t[2]].Sub(x[t[0]])) / 2
	}
	if !(area > 0) {
		return nil, fmt.Errorf("flatten: the conformal map is turned over; the patch must be divided")
	}
	for i := range x {
		x[i] = x[i].Mul(math.Sqrt(sh.area / area))
	}
	return x, nil
}

// farthest returns two vertices far apart: the one farthest from the first, and the one farthest from that.
func farthest(p Patch) (a, b int) {
	from := func(c int) int {
		best := c
		for i, q := range p.Points {
			if q.Dist(p.Points[c]) > p.Points[best].Dist(p.Points[c]) {
				best = i
			}
		}
		return best
	}
	a = from(0)
	return a, from(a)
}
