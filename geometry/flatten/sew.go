package flatten

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"

	"understructure/geometry/plane"
)

// leg is the length of one leg of a dart on the flat piece.
func leg(x []plane.Point, vertices []int, apex int) float64 {
	sum := 0.0
	for i, v := range vertices {
		w := apex
		if i+1 < len(vertices) {
			w = vertices[i+1]
		}
		sum += x[v].Dist(x[w])
	}
	return sum
}

// pull adds to b how a leg's length changes as its vertices move.
func pull(b []float64, x []plane.Point, vertices []int, apex int, sign float64) {
	for i, v := range vertices {
		w := apex
		if i+1 < len(vertices) {
			w = vertices[i+1]
		}
		u := x[v].Sub(x[w])
		u = u.Mul(sign / u.Norm())
		b[2*v], b[2*v+1] = b[2*v]+u.X, b[2*v+1]+u.Y
		b[2*w], b[2*w+1] = b[2*w]-u.X, b[2*w+1]-u.Y
	}
}

// sew changes a Newton step so that it makes the two legs of every dart equal, at the least
// cost: with the Hessian H, which s holds decomposed, and the gradient c of the difference d between the legs it adds
// H⁻¹c·(d − cᵀstep)/(cᵀH⁻¹c), Newton's step under a linear constraint. Several darts are
// taken in turn, which converges since they hardly touch each other.
func (sh sheet) sew(s *solver, x []plane.Point, step []float64) {
	type seam struct {
		c, w             []float64
		diff, compliance float64
	}
	seams := make([]seam, len(sh.darts))
	for i, d := range sh.darts {
		c := make([]float64, len(step))
		pull(c, x, d.Left, d.Apex, 1)
		pull(c, x, d.Right, d.Apex, -1)
		w := slices.Clone(c)
		s.solve(w)
		seams[i] = seam{c, w, leg(x, d.Left, d.Apex) - leg(x, d.Right, d.Apex), floats.Dot(c, w)}
	}
	for range 3 * len(seams) {
		for _, m := range seams {
			floats.AddScaled(step, (m.diff-floats.Dot(m.c, step))/m.compliance, m.w)
		}
	}
}

// join moves x so that the legs become equal, keeping the energy as low as that allows.
func (sh sheet) join(s *solver, x []plane.Point) {
	if len(sh.darts) == 0 {
		return
	}
	if _, ok := s.factor(len(x), func(t int, l *local) { sh.elements[t].expand(supple{}, x, l) }, hold, nil); !ok {
		return
	}
	for range 3 {
		step := make([]float64, 2*len(x))
		sh.sew(s, x, step)
		for i, d := range places(step) {
			x[i] = x[i].Sub(d)
		}
	}
}

// measure notes the lengths of the legs.
func (c cut) measure(x []plane.Point) {
	for i, d := range c.darts {
		l, r := leg(x, d.Left, d.Apex), leg(x, d.Right, d.Apex)
		c.darts[i].Length, c.darts[i].Mismatch = (l+r)/2, math.Abs(l-r)/((l+r)/2)
	}
}
