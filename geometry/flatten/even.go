package flatten

import (
	"math"
	"slices"

	"understructure/geometry/plane"
	"understructure/geometry/space"
)

// coarsest is the number of vertices that the strain is first made even with; fewer would
// not follow the shape, more would take longer.
const coarsest = 150

// even makes the strain even: first with a quarter of the vertices, from which few steps remain with all
// (Brandt, "Multi-level adaptive solutions to boundary-value problems", Math. Comp. 31, 1977).
func (sh sheet) even(s *solver, x []plane.Point) []plane.Point {
	if len(x) < 2*coarsest {
		return sh.stiffen(s, x)
	}
	th := thinned(sh, x, len(x)/4)
	few, stay := sh.coarse(th, x)
	if len(stay) > len(x)*2/3 {
		return sh.stiffen(s, x)
	}
	at := make([]space.Point, len(stay))
	y := make([]plane.Point, len(stay))
	for i, v := range stay {
		at[i], y[i] = space.Point{X: x[v].X, Y: x[v].Y}, x[v]
	}
	y = few.even(newSolver(few, at), y)
	x = slices.Clone(x)
	for i, v := range stay {
		x[v] = y[i]
	}
	th.restore(x)
	return sh.polish(s, x, few.greatest(y))
}

// stiffen raises the stiffness step by step: stiffness times greatest strain says how far the worst
// triangles outweigh the slack ones.
func (sh sheet) stiffen(s *solver, x []plane.Point) []plane.Point {
	x = slices.Clone(x)
	sh.join(s, x)
	best, least := x, sh.worst(x)
	for _, c := range []float64{1.5, 2.5, 4, 6, 9, 12, 18, 25} {
		limit := sh.greatest(x)
		x = sh.descend(s, stiff{c / limit, limit}, x, 2)
		if g := sh.worst(x); g < least {
			best, least = x, g
		}
	}
	return best
}

// coarse makes the sheet of the vertices that stayed. Its triangles are at rest as the fine
// triangles in them are on average: their metric, pulled back to the laid patch, is the mean of theirs.
func (sh sheet) coarse(th *thinner, x []plane.Point) (sheet, []int) {
	var few sheet
	var stay []int
	name := make([]int, len(x))
	for v := range x {
		if th.round[v] != nil {
			name[v] = len(stay)
			stay = append(stay, v)
		}
	}
	few.points = len(stay)
	for _, d := range sh.darts {
		few.darts = append(few.darts, Dart{Left: th.renamed(d.Left, name), Right: th.renamed(d.Right, name), Apex: name[d.Apex]})
	}
	for _, k := range sh.kept {
		few.kept = append(few.kept, tie{more: th.renamed(k.more, name), by: k.by})
	}
	for i, t := range th.tris {
		if t[0] < 0 {
			continue
		}
		e := sh.mean(th.holds[i], x, [3]plane.Point{x[t[0]], x[t[1]], x[t[2]]})
		e.v = [3]int{name[t[0]], name[t[1]], name[t[2]]}
		few.elements = append(few.elements, e)
		few.area += e.area
	}
	return few, stay
}

// mean is the triangle with corners q in the laid patch, at rest under the mean metric of the elements held,
// slivers left out. Where there are only slivers it is one too, and has no strain.
func (sh sheet) mean(held []int, x []plane.Point, q [3]plane.Point) element {
	firm := slices.DeleteFunc(slices.Clone(held), func(h int) bool { return sh.elements[h].sliver })
	loose := len(firm) == 0
	if loose {
		firm = held
	}
	var xx, xy, yy, area float64
	for _, h := range firm {
		e := &sh.elements[h]
		a, b, c := e.metric(x)
		xx, xy, yy, area = xx+a*e.area, xy+b*e.area, yy+c*e.area, area+e.area
	}
	xx, xy, yy = xx/area, xy/area, yy/area
	dot := func(u, v plane.Point) float64 { return xx*u.X*v.X + xy*(u.X*v.Y+u.Y*v.X) + yy*u.Y*v.Y }
	u, v := q[1].Sub(q[0]), q[2].Sub(q[0])
	long := math.Sqrt(dot(u, u))
	e := newElement([3]int{}, long, dot(u, v)/long, u.Cross(v)*math.Sqrt(xx*yy-xy*xy)/long)
	e.sliver, e.speck = loose, loose
	return e
}

// metric is the metric of the surface in the coordinates of the laid patch: (J·Jᵀ)⁻¹, J the map's derivative.
func (e *element) metric(x []plane.Point) (xx, xy, yy float64) {
	ar, ai, br, bi := e.derivatives(x)
	ux, uy, vx, vy := ar+br, ai+bi, bi-ai, ar-br
	sxx, sxy, syy := ux*ux+vx*vx, ux*uy+vx*vy, uy*uy+vy*vy
	det := sxx*syy - sxy*sxy
	return syy / det, -sxy / det, sxx / det
}
