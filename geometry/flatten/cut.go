package flatten

import (
	"cmp"
	"math"
	"slices"

	"understructure/geometry/plane"
	"understructure/geometry/space"
)

// cut is a patch after cutting.
type cut struct {
	patch  Patch
	source []int // the vertex of the original that each vertex came from
	darts  []Dart
}

// whole is the patch as given, checked.
func whole(p Patch) (cut, error) {
	if _, err := p.Boundary(); err != nil {
		return cut{}, err
	}
	c := cut{patch: p, source: make([]int, len(p.Points))}
	for i := range c.source {
		c.source[i] = i
	}
	return c, nil
}

// path returns the vertices along the edges that follow the straight line from the boundary vertex foot to the inner
// vertex apex of a laid patch, and false when the line leaves the patch or runs along its boundary.
// Of every edge that the line crosses it takes the nearer end.
func path(tris [][3]int, x []plane.Point, rim []bool, foot, apex int) ([]int, bool) {
	type crossing struct {
		at     float64
		vertex int
	}
	along := x[apex].Sub(x[foot])
	var list []crossing
	near := map[[2]int]bool{}
	for _, t := range tris {
		for j := range t {
			a, b := t[j], t[(j+1)%3]
			da, db := along.Cross(x[a].Sub(x[foot])), along.Cross(x[b].Sub(x[foot]))
			near[[2]int{a, b}], near[[2]int{b, a}] = true, true
			if (da > 0) == (db > 0) {
				continue
			}
			at := along.Dot(x[a].Lerp(x[b], da/(da-db)).Sub(x[foot])) / along.Dot(along)
			if math.Abs(da) > math.Abs(db) {
				a = b
			}
			if at >= 0 && at <= 1 {
				list = append(list, crossing{at, a})
			}
		}
	}
	slices.SortFunc(list, func(p, q crossing) int {
		return cmp.Or(cmp.Compare(p.at, q.at), p.vertex-q.vertex)
	})
	way := []int{foot}
	for _, c := range append(list, crossing{1, apex}) {
		if k := slices.Index(way, c.vertex); k >= 0 {
			way = way[:k]
		}
		way = append(way, c.vertex)
	}
	for i, v := range way[1:] {
		if rim[v] || !near[[2]int{way[i], v}] {
			return nil, false
		}
	}
	return way, way[0] == foot && way[len(way)-1] == apex
}

// slit parts the triangles along a path from the boundary to an inner vertex. The vertices of the path but the last are doubled;
// those on its left keep their numbers and those on its right get the new ones, in order, from n on.
func slit(tris [][3]int, n int, way []int) [][3]int {
	left := Patch{Triangles: tris}.sides()
	out := slices.Clone(tris)
	for i, v := range way[:len(way)-1] {
		keep := map[int]bool{}
		for w := way[i+1]; i == 0 || w != way[i-1]; {
			t, ok := left[[2]int{v, w}]
			if !ok {
				break
			}
			keep[t] = true
			_, w = opposite(tris[t], v)
		}
		for t := range out {
			if j := slices.Index(tris[t][:], v); j >= 0 && !keep[t] {
				out[t][j] = n + i
			}
		}
	}
	return out
}

// slit cuts the patch along a path.
func (c cut) slit(way []int) cut {
	n := len(c.patch.Points)
	d := cut{
		patch:  Patch{Points: slices.Clone(c.patch.Points), Triangles: slit(c.patch.Triangles, n, way)},
		source: slices.Clone(c.source), darts: slices.Clone(c.darts),
	}
	legs := way[:len(way)-1]
	dart := Dart{Left: slices.Clone(legs), Apex: way[len(way)-1]}
	for i, v := range legs {
		d.patch.Points = append(d.patch.Points, c.patch.Points[v])
		d.source = append(d.source, c.source[v])
		dart.Right = append(dart.Right, n+i)
	}
	d.darts = append(d.darts, dart)
	return d
}

// straighten moves the inner vertices of a path onto its straight line in the laid patch, and
// along the surface by as much, as far as no triangle round them becomes too thin.
func (c cut) straighten(x []plane.Point, way []int) {
	foot, along := x[way[0]], x[way[len(way)-1]].Sub(x[way[0]])
	round := make([][]int, len(x))
	for i, t := range c.patch.Triangles {
		for _, v := range t {
			round[v] = append(round[v], i)
		}
	}
	was, points := slices.Clone(x), slices.Clone(c.patch.Points)
	for _, v := range way[1 : len(way)-1] {
		to := foot.Add(along.Mul(x[v].Sub(foot).Dot(along) / along.Dot(along)))
		if c.room(x, round[v], v, to) {
			points[v] = c.lift(was, round[v], to)
			x[v] = to
		}
	}
	copy(c.patch.Points, points)
}

// room reports whether vertex v can move to a place and leave every triangle round it a quarter of its area.
func (c cut) room(x []plane.Point, round []int, v int, to plane.Point) bool {
	for _, i := range round {
		a, b := opposite(c.patch.Triangles[i], v)
		if x[a].Sub(to).Cross(x[b].Sub(to)) < x[a].Sub(x[v]).Cross(x[b].Sub(x[v]))/4 {
			return false
		}
	}
	return true
}

// lift returns the place on the surface of a place in the laid patch, in that one of the triangles in which it lies deepest.
func (c cut) lift(x []plane.Point, tris []int, at plane.Point) space.Point {
	var best space.Point
	most := math.Inf(-1)
	for _, i := range tris {
		t := c.patch.Triangles[i]
		u, v, w := barycentric(x[t[0]], x[t[1]], x[t[2]], at)
		if d := min(u, v, w); d > most {
			p := c.patch.Points
			most, best = d, p[t[0]].Mul(u).Add(p[t[1]].Mul(v)).Add(p[t[2]].Mul(w))
		}
	}
	return best
}

// barycentric returns the coordinates of p in the triangle abc.
func barycentric(a, b, c, p plane.Point) (u, v, w float64) {
	a, b, c = a.Sub(p), b.Sub(p), c.Sub(p)
	u, v, w = b.Cross(c), c.Cross(a), a.Cross(b)
	s := u + v + w
	return u / s, v / s, w / s
}
