package flatten

import (
	"slices"

	"understructure/geometry/plane"
)

// hold is the share of itself by which the diagonal of a Hessian is raised; it fixes the place and
// turn of the piece, which no energy does.
const hold = 1e-9

// descend takes at most the given number of Newton steps, each shortened until the energy falls.
func (sh sheet) descend(s *solver, en energy, x []plane.Point, steps int) []plane.Point {
	value := sh.total(en, x)
	for range steps {
		grad, ok := s.factor(len(x), func(t int, l *local) { sh.elements[t].expand(en, x, l) }, nil)
		if !ok {
			return x
		}
		step := slices.Clone(grad)
		s.solve(step)
		sh.sew(s, x, step)
		slope := 0.0
		for i, g := range grad {
			slope += g * step[i]
		}
		if !(slope > 1e-4*value) {
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
