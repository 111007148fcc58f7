package flatten

import (
	"math"

	"understructure/geometry/plane"
)

// polish ends what the coarse sheet began. The greatest strain there is nearly the least
// possible, so the steps end soon after it is reached; the last are only for a triangle that lies on its face.
func (sh sheet) polish(s *solver, x []plane.Point, goal float64) []plane.Point {
	x = sh.unfold(s, x)
	sh.join(s, x)
	best, least := x, sh.worst(x)
	limit := math.Min(1.2*goal, sh.greatest(x))
	for i, c := range []float64{7, 10, 15, 22, 32, 32, 32, 32} {
		if least < 1.1*goal || i > 4 && least < 1 {
			break
		}
		x = sh.descend(s, stiff{c / limit, limit}, x, 1)
		if g := sh.worst(x); g < least {
			best, least = x, g
		}
	}
	return sh.finish(s, best, least, goal)
}

// far is how many times the coarse sheet's strain may be left without more ado.
const far = 1.25

// finish takes further steps from the best places found, softer and stiffer by turns, while the strain is far from the coarse sheet's and
// one of two steps helps: what that could not see is settled among a few triangles.
func (sh sheet) finish(s *solver, best []plane.Point, least, goal float64) []plane.Point {
	idle := 0
	for i := 0; i < 6 && idle < 2 && least > far*goal; i++ {
		limit := sh.greatest(best)
		x := sh.descend(s, stiff{[]float64{18, 35}[i%2] / limit, limit}, best, 1)
		idle++
		if g := sh.worst(x); g < 0.99*least {
			best, least, idle = x, g, 0
		}
	}
	return best
}

// drag is the share by which the diagonal of the Hessian is raised to even out only
// what is rough over a few triangles.
const drag = 0.3

// unfold turns back slivers that lie on their face, which putting vertices back between moved neighbours does to
// them, and leaves the rest as it lies.
func (sh sheet) unfold(s *solver, x []plane.Point) []plane.Point {
	for range 3 {
		if !sh.folded(x) {
			break
		}
		x = sh.step(s, supple{}, x, drag)
	}
	return x
}

// folded reports whether a triangle is turned over or nearly so.
func (sh sheet) folded(x []plane.Point) bool {
	for i := range sh.elements {
		if _, σ2 := sh.elements[i].stretches(x); σ2 < lifted {
			return true
		}
	}
	return false
}
