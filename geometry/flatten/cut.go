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
	rim    []int // its boundary
	darts  []Dart
	kept   []tie
	rough  bool
}

// whole is the patch as given, checked.
func whole(p Patch) (cut, error) {
	rim, err := p.Boundary()
	if err != nil {
		return cut{}, err
	}
	c := cut{patch: p, source: make([]int, len(p.Points)), rim: rim}
	for i := range c.source {
		c.source[i] = i
	}
	return c, nil
}

// path returns the vertices of a way along edges that follows the straight line from the boundary vertex foot to
// the inner vertex apex of a laid patch, and false when the line leaves the patch or runs along its
// boundary. Of the edges that the line crosses it takes ends that lie near the line and can be moved onto it.
func path(tris [][3]int, x []plane.Point, rim []bool, foot, apex int) ([]int, bool) {
	along := x[apex].Sub(x[foot])
	span := along.Norm()
	off := func(v int) float64 { return along.Cross(x[v].Sub(x[foot])) / span }
	at := func(v int) float64 { return along.Dot(x[v].Sub(x[foot])) / span }
	near, strip := map[int][]int{}, []int{foot, apex}
	for _, t := range tris {
		if !crosses(off(t[0]), off(t[1]), off(t[2])) {
			continue
		}
		for j, v := range t {
			near[v] = append(near[v], t[(j+1)%3], t[(j+2)%3])
			if !rim[v] && v != apex && at(v) > 0 && at(v) < span {
				strip = append(strip, v)
			}
		}
	}
	price := func(v int) float64 { return math.Abs(off(v)) / x[v].Dist(x[near[v][0]]) }
	return cheapest(strip, near, at, price)
}

// crosses reports whether a line at these distances from the corners of a triangle meets it.
func crosses(a, b, c float64) bool { return min(a, b, c) <= 0 && max(a, b, c) >= 0 }

// cheapest returns the way of least total price from the first of the vertices to the second by steps between neighbours
// that all lead onward.
func cheapest(strip []int, near map[int][]int, at, price func(int) float64) ([]int, bool) {
	foot, apex := strip[0], strip[1]
	slices.SortFunc(strip, func(v, w int) int { return cmp.Or(cmp.Compare(at(v), at(w)), v-w) })
	strip = slices.Compact(strip)
	cost, from := map[int]float64{foot: 0}, map[int]int{}
	in := map[int]bool{}
	for _, v := range strip {
		in[v] = true
	}
	for _, v := range strip {
		c, reached := cost[v]
		if !reached {
			continue
		}
		for _, w := range near[v] {
			if !in[w] || at(w) <= at(v) {
				continue
			}
			p := c + price(w) + 0.1
			if old, ok := cost[w]; !ok || p < old {
				cost[w], from[w] = p, v
			}
		}
	}
	if _, ok := cost[apex]; !ok {
		return nil, false
	}
	way := []int{apex}
	for v := apex; v != foot; {
		v = from[v]
		way = append(way, v)
	}
	slices.Reverse(way)
	return way, true
}

// roundOf lists the triangles round each of n vertices.
func roundOf(tris [][3]int, n int) [][]int {
	round := make([][]int, n)
	for i, t := range tris {
		for _, v := range t {
			round[v] = append(round[v], i)
		}
	}
	return round
}

// slit parts the triangles along a path from the boundary to an inner vertex. The vertices of the path but the last are doubled;
// those on its left keep their numbers and those on its right get the new ones, in order, from n on.
func slit(tris [][3]int, n int, way []int) [][3]int {
	beside := Patch{Triangles: tris}.sides()
	out := slices.Clone(tris)
	for i, v := range way[:len(way)-1] {
		keep := map[int]bool{}
		for w := way[i+1]; i == 0 || w != way[i-1]; {
			t, ok := beside.left(v, w)
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

// slit cuts the patch along a path, and reports whether it is still one disk.
func (c cut) slit(way []int) (cut, bool) {
	n := len(c.patch.Points)
	d := cut{
		patch:  Patch{Points: slices.Clone(c.patch.Points), Triangles: slit(c.patch.Triangles, n, way)},
		source: slices.Clone(c.source), darts: slices.Clone(c.darts),
	}
	for _, v := range way[:len(way)-1] {
		d.patch.Points = append(d.patch.Points, c.patch.Points[v])
		d.source = append(d.source, c.source[v])
	}
	d.darts = append(d.darts, newDart(way, n))
	var err error
	d.rim, err = d.patch.Boundary()
	return d, err == nil
}

// newDart is the dart that a slit along a path makes in a patch of n vertices.
func newDart(way []int, n int) Dart {
	last := len(way) - 1
	d := Dart{Left: slices.Clone(way[:last]), Apex: way[last]}
	for i := range last {
		d.Right = append(d.Right, n+i)
	}
	return d
}

// straighten moves the inner vertices of a path onto its straight line in the laid patch, spread
// along it, and along the surface by as much, as far as every triangle keeps a quarter of its area. It takes
// some rounds, since a vertex may have to wait for the next to make room.
func (c cut) straighten(x []plane.Point, way []int) {
	tris, n := c.patch.Triangles, len(way)-1
	foot, along := x[way[0]], x[way[n]].Sub(x[way[0]])
	round := roundOf(tris, len(x))
	was, points := slices.Clone(x), slices.Clone(c.patch.Points)
	for range 8 {
		for i, v := range way[1:n] {
			mid := x[way[i]].Add(x[way[i+2]]).Mul(0.25).Add(x[v].Mul(0.5)).Sub(foot)
			to := foot.Add(along.Mul(mid.Dot(along) / along.Dot(along)))
			for t := 1.0; t > 0.1; t /= 2 {
				if q := x[v].Lerp(to, t); room(tris, was, x, round[v], v, q) {
					x[v] = q
					break
				}
			}
		}
	}
	for _, v := range way[1:n] {
		points[v] = c.lift(was, round[v], x[v])
	}
	copy(c.patch.Points, points)
}

// room reports whether vertex v can move to a place and leave every triangle round it a quarter of the area it had.
func room(tris [][3]int, was, x []plane.Point, round []int, v int, to plane.Point) bool {
	for _, i := range round {
		a, b := opposite(tris[i], v)
		if x[a].Sub(to).Cross(x[b].Sub(to)) < was[a].Sub(was[v]).Cross(was[b].Sub(was[v]))/4 {
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
