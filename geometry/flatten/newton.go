package flatten

import (
	"slices"

	"gonum.org/v1/gonum/floats"

	"understructure/geometry/plane"
)

// hold is the share of itself by which the diagonal of a Hessian is raised; it fixes the place and
// turn of the piece, which no energy does.
const hold = 1e-9

// descend takes at most the given number of Newton steps.
func (sh sheet) descend(s *solver, en energy, x []plane.Point, steps int) []plane.Point {
	for range steps {
		y := sh.step(s, en, x, hold)
		if &y[0] == &x[0] {
			break
		}
		x = y
	}
	return x
}

// step takes one Newton step, shortened until the energy falls, with the diagonal of the Hessian raised by a share of
// itself. It returns x itself when there is nowhere to go.
func (sh sheet) step(s *solver, en energy, x []plane.Point, raise float64) []plane.Point {
	value := 0.0
	grad, ok := s.factor(len(x), func(t int, l *local) {
		sh.elements[t].expand(en, x, l)
		value += l.e
	}, raise, nil)
	if !ok {
		return x
	}
	step := slices.Clone(grad)
	s.solve(step)
	sh.sew(s, x, step)
	slope := floats.Dot(grad, step)
	if !(slope > 1e-4*value) {
		return x
	}
	return sh.search(en, x, places(step), value, slope)
}

// search halves the step until the energy falls by a part of what the slope promises
// (Armijo, "Minimization of functions having Lipschitz continuous first partial derivatives", Pacific J. Math. 16, 1966).
func (sh sheet) search(en energy, x, step []plane.Point, value, slope float64) []plane.Point {
	for t := 1.0; t > 1e-6; t /= 2 {
		y := make([]plane.Point, len(x))
		for i := range x {
			y[i] = x[i].Sub(step[i].Mul(t))
		}
		if v := sh.total(en, y); v < value-1e-4*t*slope {
			return y
		}
	}
	return x
}
