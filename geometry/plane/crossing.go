package plane

import (
	"math"
	"slices"
)

// firstCrossing sweeps the edges from left to right and compares only those whose
// x-ranges overlap.
func firstCrossing(r Ring) (Point, bool) {
	n := len(r)
	if n < 4 {
		return Point{}, false
	}
	type edge struct {
		lo, hi float64
		i      int
	}
	edges := make([]edge, n)
	for i, p := range r {
		q := r[(i+1)%n]
		edges[i] = edge{math.Min(p.X, q.X), math.Max(p.X, q.X), i}
	}
	slices.SortFunc(edges, func(a, b edge) int {
		switch {
		case a.lo < b.lo:
			return -1
		case a.lo > b.lo:
			return 1
		}
		return a.i - b.i
	})
	var live []edge
	for _, e := range edges {
		keep := live[:0]
		for _, f := range live {
			if f.hi < e.lo {
				continue
			}
			keep = append(keep, f)
			if d := (e.i - f.i + n) % n; d == 1 || d == n-1 {
				continue
			}
			if p, ok := meet(r[e.i], r[(e.i+1)%n], r[f.i], r[(f.i+1)%n]); ok {
				return p, true
			}
		}
		live = append(keep, e)
	}
	return Point{}, false
}

// meet returns where the closed segments ab and cd cross or touch; parallel segments never do.
func meet(a, b, c, d Point) (Point, bool) {
	u, v := b.Sub(a), d.Sub(c)
	den := u.Cross(v)
	if den == 0 {
		return Point{}, false
	}
	w := c.Sub(a)
	s, t := w.Cross(v)/den, w.Cross(u)/den
	if s < 0 || s > 1 || t < 0 || t > 1 {
		return Point{}, false
	}
	return a.Add(u.Mul(s)), true
}
