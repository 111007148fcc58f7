package flatten

import (
	"math"

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

// sew makes the two legs of every dart equal, by the change that costs the least energy: with the
// Hessian H and the gradient c of the difference d between the legs it is −H⁻¹c·d/(cᵀH⁻¹c)
// (Newton's step for one linear constraint). A few rounds remove what is not linear.
func (c cut) sew(sh sheet, x []plane.Point) {
	if len(c.darts) == 0 {
		return
	}
	s := newSolver(sh, c.patch.Points)
	limit := sh.greatest(x)
	en := stiff{6 / limit, limit}
	if _, ok := s.factor(len(x), func(t int, l *local) { sh.elements[t].expand(en, x, l) }, 1e-6, nil); !ok {
		return
	}
	for range 4 {
		for _, d := range c.darts {
			s.level(x, d)
		}
	}
	for i, d := range c.darts {
		l, r := leg(x, d.Left, d.Apex), leg(x, d.Right, d.Apex)
		c.darts[i].Length, c.darts[i].Mismatch = (l+r)/2, math.Abs(l-r)/((l+r)/2)
	}
}

// level moves x so that the legs of one dart become equal.
func (s *solver) level(x []plane.Point, d Dart) {
	c := make([]float64, 2*len(x))
	pull(c, x, d.Left, d.Apex, 1)
	pull(c, x, d.Right, d.Apex, -1)
	w := append([]float64(nil), c...)
	s.solve(w)
	across := 0.0
	for i := range c {
		across += c[i] * w[i]
	}
	diff := leg(x, d.Left, d.Apex) - leg(x, d.Right, d.Apex)
	for i := range x {
		x[i] = x[i].Sub(plane.Point{X: w[2*i], Y: w[2*i+1]}.Mul(diff / across))
	}
}
