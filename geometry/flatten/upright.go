package flatten

import (
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/space"
)

// upright turns the piece so that up on the patch is up in the plane on average, and moves its
// lower left corner to the origin. A patch that lies level all over has its front (y) up.
func upright(sh sheet, p Patch, x []plane.Point) []plane.Point {
	up := sh.image(p, x, space.Point{Z: 1})
	if up.Norm() < 1e-6*sh.area {
		up = sh.image(p, x, space.Point{Y: 1})
	}
	up = up.Mul(1 / up.Norm())
	r := make(plane.Ring, len(x))
	for i, p := range x {
		r[i] = plane.Point{X: p.X*up.Y - p.Y*up.X, Y: p.Dot(up)}
	}
	lo, _ := r.Bounds()
	return r.Move(lo.Mul(-1))
}

// image is the direction d, as far as it lies in the surface, carried to the plane and summed over the area.
func (sh sheet) image(patch Patch, x []plane.Point, d space.Point) plane.Point {
	var sum plane.Point
	for i := range sh.elements {
		e := &sh.elements[i]
		p := patch.Points
		base := p[e.v[1]].Sub(p[e.v[0]]).Unit()
		side := p[e.v[2]].Sub(p[e.v[0]])
		across := side.Sub(base.Mul(side.Dot(base))).Unit()
		u, v := d.Dot(base), d.Dot(across)
		// f(x, y) has ∂f/∂x = a + b and ∂f/∂y = i(a − b), with a = ∂f/∂z and b = ∂f/∂z̄.
		ar, ai, br, bi := e.derivatives(x)
		sum = sum.Add(plane.Point{X: u*(ar+br) - v*(ai-bi), Y: u*(ai+bi) + v*(ar-br)}.Mul(e.area))
	}
	if math.IsNaN(sum.X + sum.Y) {
		return plane.Point{}
	}
	return sum
}
