package flatten

import (
	"fmt"
	"math"

	"understructure/geometry/plane"
)

// hold is the shift of the diagonal, as a fraction of the mean stiffness, that fixes the
// place and turn of the piece, which no energy does.
const hold = 1e-9

// spread lays a patch: conformally first, then supple, then ever stiffer.
func spread(p Patch) ([]plane.Point, error) {
	sh, err := newSheet(p)
	if err != nil {
		return nil, err
	}
	s := newSolver(sh)
	x, err := sh.conformal(s)
	if err != nil {
		return nil, err
	}
	x = sh.descend(s, supple{}, x, 12)
	return sh.stiffen(s, x), nil
}

// conformal is the least squares conformal map with the two vertices farthest apart held at their
// distance, scaled to the patch's area.
func (sh sheet) conformal(s *solver) ([]plane.Point, error) {
	pts := sh.patch.Points
	a, b := farthest(sh.patch)
	shift := sh.shift(1e-12)
	shift[a] += 1e4
	shift[b] += 1e4
	_, ok := s.factor(len(pts), func(t int, l *local) { sh.elements[t].conform(l) }, shift)
	if !ok {
		return nil, fmt.Errorf("flatten: no conformal map found; the patch has points too close together")
	}
	u := make([]float64, 2*len(pts))
	u[2*b] = pts[a].Dist(pts[b]) * shift[b]
	s.solve(u)
	x := places(u)
	area := 0.0
	for _, t := range sh.patch.Triangles {
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

// shift returns a small multiple of one for every vertex.
func (sh sheet) shift(s float64) []float64 {
	d := make([]float64, len(sh.patch.Points))
	for i := range d {
		d[i] = s
	}
	return d
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

// stiffen raises the stiffness until the greatest strain no longer falls.
func (sh sheet) stiffen(s *solver, x []plane.Point) []plane.Point {
	best, least := x, sh.greatest(x)
	for _, c := range []float64{1.5, 2.5, 4, 6, 9, 12} {
		if least < 1e-7 {
			break
		}
		x = sh.descend(s, stiff{c / sh.greatest(x)}, x, 2)
		if g := sh.greatest(x); g < least {
			best, least = x, g
		}
	}
	return best
}

// descend takes at most the given number of Newton steps, each shortened until the energy falls.
func (sh sheet) descend(s *solver, en energy, x []plane.Point, steps int) []plane.Point {
	value := sh.total(en, x)
	for range steps {
		grad, ok := s.factor(len(x), func(t int, l *local) { sh.elements[t].expand(en, x, l) }, sh.shift(hold))
		if !ok {
			return x
		}
		step := append([]float64(nil), grad...)
		s.solve(step)
		slope := 0.0
		for i, g := range grad {
			slope += g * step[i]
		}
		if !(slope > 1e-22*sh.area) {
			return x
		}
		y, v := sh.search(en, x, places(step), value, slope)
		if !(v < value) {
			return x
		}
		x, value = y, v
	}
	return x
}

// search halves the step until the energy falls by a part of what the slope promises
// (Armijo, "Minimization of functions having Lipschitz continuous first partial derivatives", Pacific J. Math. 16, 1966).
func (sh sheet) search(en energy, x, step []plane.Point, value, slope float64) ([]plane.Point, float64) {
	for t := 1.0; t > 1e-6; t /= 2 {
		y := make([]plane.Point, len(x))
		for i := range x {
			y[i] = x[i].Sub(step[i].Mul(t))
		}
		if v := sh.total(en, y); v < value-1e-4*t*slope {
			return y, v
		}
	}
	return x, value
}
