package flatten

import (
	"cmp"
	"math"
	"slices"

	"understructure/geometry/plane"
)

// thinner takes vertices out of a laid patch by collapsing each into a neighbour, shortest edges first
// (Hoppe, DeRose, Duchamp, McDonald and Stuetzle, "Mesh optimization", SIGGRAPH 1993, for when a collapse keeps the topology).
type thinner struct {
	points []plane.Point
	tris   [][3]int
	holds  [][]int // the triangles of the fine patch, by their centroids, that lie in each triangle
	centre []plane.Point
	round  [][]int // triangles round each vertex
	rim    []bool
	fixed  []bool
	gone   []removal
}

// thinned takes out vertices until about goal are left; the ends of darts and of kept runs stay.
func thinned(sh sheet, x []plane.Point, goal int) *thinner {
	th := newThinner(sh.elements, x)
	for _, d := range sh.darts {
		th.fixed[d.Apex], th.fixed[d.Left[0]], th.fixed[d.Right[0]] = true, true, true
	}
	for _, k := range sh.kept {
		th.fixed[k.more[0]], th.fixed[k.more[len(k.more)-1]] = true, true
	}
	out := make([]bool, len(x))
	for left := len(x); left > goal; {
		n := th.pass(out, left-goal)
		if n == 0 {
			break
		}
		left -= n
	}
	return th
}

func newThinner(fine []element, x []plane.Point) *thinner {
	th := &thinner{
		points: x, tris: make([][3]int, len(fine)), holds: make([][]int, len(fine)),
		centre: make([]plane.Point, len(fine)), round: make([][]int, len(x)), rim: make([]bool, len(x)), fixed: make([]bool, len(x)),
	}
	for i := range fine {
		th.tris[i] = fine[i].v
		for _, v := range fine[i].v {
			th.round[v] = append(th.round[v], i)
			th.centre[i] = th.centre[i].Add(x[v].Mul(1. / 3))
		}
		th.holds[i] = []int{i}
	}
	for v := range x {
		_, th.rim[v] = th.fan(v)
	}
	return th
}

// fan returns the vertices round v, counter-clockwise, and whether v lies on the boundary; there the
// fan begins at the boundary.
func (th *thinner) fan(v int) ([]int, bool) {
	next := make([][2]int, 0, 8)
	for _, i := range th.round[v] {
		a, b := opposite(th.tris[i], v)
		next = append(next, [2]int{a, b})
	}
	start, rim := next[0][0], false
	for _, e := range next {
		if !slices.ContainsFunc(next, func(f [2]int) bool { return f[1] == e[0] }) {
			start, rim = e[0], true
		}
	}
	fan := []int{start}
	for range next {
		last := fan[len(fan)-1]
		k := slices.IndexFunc(next, func(f [2]int) bool { return f[0] == last })
		fan = append(fan, next[k][1])
	}
	if !rim {
		fan = fan[:len(fan)-1]
	}
	return fan, rim
}

// opposite returns the two corners of t after v.
func opposite(t [3]int, v int) (int, int) {
	switch v {
	case t[0]:
		return t[1], t[2]
	case t[1]:
		return t[2], t[0]
	}
	return t[0], t[1]
}

// pass removes at most limit vertices, no two of them neighbours, and returns how many.
func (th *thinner) pass(out []bool, limit int) int {
	type candidate struct {
		vertex, to int
		length     float64
	}
	var list []candidate
	for v := range th.points {
		if out[v] || th.fixed[v] {
			continue
		}
		if to, l := th.nearest(v); to >= 0 {
			list = append(list, candidate{v, to, l})
		}
	}
	slices.SortFunc(list, func(a, b candidate) int {
		return cmp.Or(cmp.Compare(a.length, b.length), a.vertex-b.vertex)
	})
	limit = min(limit, 1+len(list)/3)
	locked := make([]bool, len(th.points))
	n := 0
	for _, c := range list {
		if n == limit {
			break
		}
		if locked[c.vertex] {
			continue
		}
		fan, _ := th.fan(c.vertex)
		if !th.collapse(c.vertex, c.to, fan) {
			continue
		}
		for _, w := range fan {
			locked[w] = true
		}
		out[c.vertex] = true
		n++
	}
	return n
}

// nearest returns the nearest neighbour that v may collapse into: along the boundary when v lies on it.
func (th *thinner) nearest(v int) (to int, length float64) {
	to, length = -1, math.Inf(1)
	fan, rim := th.fan(v)
	for i, w := range fan {
		if rim && i != 0 && i != len(fan)-1 {
			continue
		}
		if d := th.points[v].Dist(th.points[w]); d < length {
			to, length = w, d
		}
	}
	return to, length
}

// collapse moves v onto its neighbour to, unless that would fold the surface, make a sliver, cut
// off a corner of the outline or change the topology.
func (th *thinner) collapse(v, to int, fan []int) bool {
	rim := th.rim[v]
	if rim && (len(fan) < 3 || th.corner(v, fan)) {
		return false
	}
	shared := 0
	target, _ := th.fan(to)
	for _, w := range fan {
		if slices.Contains(target, w) {
			shared++
		}
	}
	if rim && shared != 1 || !rim && shared != 2 {
		return false
	}
	for _, i := range th.round[v] {
		if a, b := opposite(th.tris[i], v); a != to && b != to && !th.sound(v, to, a, b) {
			return false
		}
	}
	th.gone = append(th.gone, th.record(v, fan))
	var held, kept []int
	for _, i := range th.round[v] {
		held = append(held, th.holds[i]...)
		a, b := opposite(th.tris[i], v)
		if a == to || b == to {
			th.tris[i] = [3]int{-1, -1, -1}
			for _, w := range []int{a, b} {
				th.round[w] = slices.DeleteFunc(th.round[w], func(k int) bool { return k == i })
			}
			continue
		}
		th.tris[i] = [3]int{to, a, b}
		th.round[to] = append(th.round[to], i)
		kept = append(kept, i)
	}
	th.round[v] = nil
	th.share(held, kept)
	return true
}

// share hands the fine triangles held to those of the kept triangles in which they lie; a triangle that
// gets none takes the one nearest to lying in it.
func (th *thinner) share(held, kept []int) {
	nearest := make([]int, len(kept))
	depth := make([]float64, len(kept))
	for k, i := range kept {
		th.holds[i] = nil
		depth[k] = math.Inf(-1)
	}
	for _, h := range held {
		best, most := 0, math.Inf(-1)
		for k, i := range kept {
			d := th.depth(i, th.centre[h])
			if d > most {
				best, most = k, d
			}
			if d > depth[k] {
				nearest[k], depth[k] = h, d
			}
		}
		th.holds[kept[best]] = append(th.holds[kept[best]], h)
	}
	for k, i := range kept {
		if len(th.holds[i]) == 0 {
			th.holds[i] = []int{nearest[k]}
		}
	}
}

// depth is the least barycentric coordinate of p in a triangle, negative outside.
func (th *thinner) depth(i int, p plane.Point) float64 {
	t := th.tris[i]
	a, b, c := th.points[t[0]].Sub(p), th.points[t[1]].Sub(p), th.points[t[2]].Sub(p)
	u, v, w := b.Cross(c), c.Cross(a), a.Cross(b)
	return min(u, v, w) / (u + v + w)
}

// corner reports whether the outline turns by more than 30° at v.
func (th *thinner) corner(v int, fan []int) bool {
	p := th.points[v]
	a, b := p.Sub(th.points[fan[len(fan)-1]]), th.points[fan[0]].Sub(p)
	return a.Dot(b) < math.Cos(math.Pi/6)*a.Norm()*b.Norm()
}

// sound reports whether triangle (to, a, b) faces as (v, a, b) did and is no sliver.
func (th *thinner) sound(v, to, a, b int) bool {
	p, q, r, s := th.points[v], th.points[to], th.points[a], th.points[b]
	old, now := r.Sub(p).Cross(s.Sub(p)), r.Sub(q).Cross(s.Sub(q))
	long := max(q.Dist(r), r.Dist(s), s.Dist(q))
	return now > 0.2*long*long || now > 0 && now*p.Dist(q) > old*long
}

// record notes the ring round v.
func (th *thinner) record(v int, fan []int) removal {
	r := removal{vertex: v, ring: fan, rim: th.rim[v]}
	for _, w := range fan {
		r.round = append(r.round, th.points[w].Sub(th.points[v]))
	}
	return r
}
