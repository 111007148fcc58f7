package flatten

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"

	"understructure/geometry/plane"
)

// length is that of a path on the flat piece.
func length(x []plane.Point, path []int) float64 {
	sum := 0.0
	for i := 1; i < len(path); i++ {
		sum += x[path[i]].Dist(x[path[i-1]])
	}
	return sum
}

// pull adds to b how a path's length changes as its vertices move.
func pull(b []float64, x []plane.Point, path []int, sign float64) {
	for i := 1; i < len(path); i++ {
		v, w := path[i-1], path[i]
		u := x[v].Sub(x[w])
		u = u.Mul(sign / u.Norm())
		b[2*v], b[2*v+1] = b[2*v]+u.X, b[2*v+1]+u.Y
		b[2*w], b[2*w+1] = b[2*w]-u.X, b[2*w+1]-u.Y
	}
}

// tie is a promise about lengths on the flat piece: that of the path more exceeds that of the
// path less by so many millimetres. Between the legs of a dart it is 0; a run that keeps its length has no less.
type tie struct {
	more, less []int
	by         float64
}

// ties are all promises that a sheet makes.
func (sh sheet) ties() []tie {
	var all []tie
	for _, d := range sh.darts {
		all = append(all, tie{more: append(slices.Clone(d.Left), d.Apex), less: append(slices.Clone(d.Right), d.Apex)})
	}
	return append(all, sh.kept...)
}

// broken is by how much the promise is not kept.
func (t tie) broken(x []plane.Point) float64 { return length(x, t.more) - length(x, t.less) - t.by }

// sew changes a Newton step so that it keeps every tie, at the least cost: with the Hessian
// H, which s holds decomposed, the gradients C of the ties and what they are broken by, d, it adds H⁻¹C·λ,
// where CᵀH⁻¹C·λ = d − Cᵀstep: Newton's step under linear constraints.
func (sh sheet) sew(s *solver, x []plane.Point, step []float64) {
	ties := sh.ties()
	if len(ties) == 0 {
		return
	}
	c, w := make([][]float64, len(ties)), make([][]float64, len(ties))
	rest := mat.NewVecDense(len(ties), nil)
	for i, t := range ties {
		c[i] = make([]float64, len(step))
		pull(c[i], x, t.more, 1)
		pull(c[i], x, t.less, -1)
		w[i] = slices.Clone(c[i])
		s.solve(w[i])
		rest.SetVec(i, t.broken(x)-floats.Dot(c[i], step))
	}
	compliance := mat.NewSymDense(len(ties), nil)
	for i := range ties {
		for j := range i + 1 {
			compliance.SetSym(i, j, floats.Dot(c[i], w[j]))
		}
	}
	var chol mat.Cholesky
	if !chol.Factorize(compliance) || chol.SolveVecTo(rest, rest) != nil {
		return // two ties that contradict each other
	}
	for i := range ties {
		floats.AddScaled(step, rest.AtVec(i), w[i])
	}
}

// join moves x so that every tie is kept, keeping the energy as low as that allows.
func (sh sheet) join(s *solver, x []plane.Point) {
	if len(sh.darts)+len(sh.kept) == 0 {
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
		l, r := length(x, append(slices.Clone(d.Left), d.Apex)), length(x, append(slices.Clone(d.Right), d.Apex))
		c.darts[i].Length, c.darts[i].Mismatch = (l+r)/2, math.Abs(l-r)/((l+r)/2)
	}
}
