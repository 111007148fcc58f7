package nest

import (
	"math"
	"slices"

	"understructure/geometry/plane"
)

// minkowski adds two convex, counter-clockwise rings: their sides, put in the order of their directions.
func minkowski(p, q plane.Ring) plane.Ring {
	p, q = lowestFirst(p), lowestFirst(q)
	out := make(plane.Ring, 0, len(p)+len(q))
	for i, j := 0, 0; i < len(p) || j < len(q); {
		out = append(out, p[i%len(p)].Add(q[j%len(q)]))
		u := p[(i+1)%len(p)].Sub(p[i%len(p)])
		v := q[(j+1)%len(q)].Sub(q[j%len(q)])
		switch turn := u.Cross(v); {
		case i == len(p):
			j++
		case j == len(q):
			i++
		case turn > 0:
			i++
		case turn < 0:
			j++
		default:
			i, j = i+1, j+1
		}
	}
	return out
}

// lowestFirst begins a ring at its lowest corner, the leftmost of those.
func lowestFirst(r plane.Ring) plane.Ring {
	k := 0
	for i, p := range r {
		if p.Y < r[k].Y || p.Y == r[k].Y && p.X < r[k].X {
			k = i
		}
	}
	return append(slices.Clone(r[k:]), r[:k]...)
}

// outermost leaves out convex rings that lie within another, the largest first.
func outermost(rings []plane.Ring) []plane.Ring {
	slices.SortStableFunc(rings, func(a, b plane.Ring) int {
		switch x, y := a.Area(), b.Area(); {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
	var out []plane.Ring
	var boxes [][2]plane.Point
	for _, r := range rings {
		lo, hi := r.Bounds()
		held := false
		for k, o := range out {
			if b := boxes[k]; b[0].X <= lo.X && b[0].Y <= lo.Y && b[1].X >= hi.X && b[1].Y >= hi.Y && holds(o, r) {
				held = true
				break
			}
		}
		if !held {
			out, boxes = append(out, r), append(boxes, [2]plane.Point{lo, hi})
		}
	}
	return out
}

// holds reports whether a convex ring holds all corners of another.
func holds(convex, r plane.Ring) bool {
	for i, a := range convex {
		u := convex[(i+1)%len(convex)].Sub(a)
		for _, p := range r {
			if u.Cross(p.Sub(a)) < 0 {
				return false
			}
		}
	}
	return true
}

// sidesOf are the half-planes of a convex ring moved outward by the gap. Where the ring turns by more than
// an eighth of a turn the corner is cut by more sides, so that it lies at most 8 % of the gap too far out.
func sidesOf(r plane.Ring, gap float64) []side {
	const sharp = math.Pi / 4
	var out []side
	n := len(r)
	for i, p := range r {
		u, v := p.Sub(r[(i+n-1)%n]), r[(i+1)%n].Sub(p)
		if v.Norm() == 0 {
			continue
		}
		if gap > 0 {
			turn := math.Atan2(u.Cross(v), u.Dot(v))
			more := int(math.Ceil(turn/sharp)) - 1
			from := math.Atan2(-u.X, u.Y) // of the outward normal (u.Y, -u.X)
			for k := range more {
				s, c := math.Sincos(from + turn*float64(k+1)/float64(more+1))
				out = append(out, side{c, s, c*p.X + s*p.Y + gap})
			}
		}
		l := v.Norm()
		x, y := v.Y/l, -v.X/l
		out = append(out, side{x, y, x*p.X + y*p.Y + gap})
	}
	return out
}
