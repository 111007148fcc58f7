package flatten

import (
	"math"

	"understructure/geometry/plane"
)

// removal is a vertex taken out of a laid patch, with the ring of vertices that were round it,
// counter-clockwise, and their places as seen from it.
type removal struct {
	vertex int
	ring   []int
	round  []plane.Point
	rim    bool
}

// restore puts the removed vertices back, last removed first, among those that stayed and have moved.
func (th *thinner) restore(x []plane.Point) {
	for i := len(th.gone) - 1; i >= 0; i-- {
		if r := th.gone[i]; r.rim {
			x[r.vertex] = r.affine(x)
		} else {
			x[r.vertex] = r.mean(x)
		}
	}
}

// renamed gives the new names of those of the vertices that stayed.
func (th *thinner) renamed(vertices, name []int) []int {
	var some []int
	for _, v := range vertices {
		if th.round[v] != nil {
			some = append(some, name[v])
		}
	}
	return some
}

// mean places an inner vertex by mean value coordinates, which are exact for affine maps
// (Floater, "Mean value coordinates", Comput. Aided Geom. Design 20, 2003).
func (r removal) mean(y []plane.Point) plane.Point {
	var sum plane.Point
	n, total := len(r.ring), 0.0
	half := func(i int) float64 { // tan(γ/2) between places i and i+1
		a, b := r.round[i], r.round[(i+1)%n]
		return math.Tan(math.Atan2(a.Cross(b), a.Dot(b)) / 2)
	}
	for i, w := range r.ring {
		λ := (half((i+n-1)%n) + half(i)) / r.round[i].Norm()
		sum, total = sum.Add(y[w].Mul(λ)), total+λ
	}
	return sum.Mul(1 / total)
}

// affine places a vertex of the boundary by the affine map that best carries the ring to where it
// lies, leaning a little towards a rigid one for a ring that lies nearly in a line.
func (r removal) affine(y []plane.Point) plane.Point {
	var from, to plane.Point
	n := float64(len(r.ring))
	for i, w := range r.ring {
		from, to = from.Add(r.round[i].Mul(1/n)), to.Add(y[w].Mul(1/n))
	}
	var xx, xy, yy float64 // Σ a·aᵀ
	var px, py plane.Point // Σ b·aᵀ, by columns
	for i, w := range r.ring {
		a, b := r.round[i].Sub(from), y[w].Sub(to)
		xx, xy, yy = xx+a.X*a.X, xy+a.X*a.Y, yy+a.Y*a.Y
		px, py = px.Add(b.Mul(a.X)), py.Add(b.Mul(a.Y))
	}
	turn := plane.Point{X: px.X + py.Y, Y: px.Y - py.X}
	turn = turn.Mul(1 / turn.Norm())
	lean := 0.01 * (xx + yy)
	px, py = px.Add(turn.Mul(lean)), py.Add(plane.Point{X: -turn.Y, Y: turn.X}.Mul(lean))
	xx, yy = xx+lean, yy+lean
	det := xx*yy - xy*xy
	u, v := (yy*from.X-xy*from.Y)/det, (xx*from.Y-xy*from.X)/det
	return to.Sub(px.Mul(u)).Sub(py.Mul(v))
}
