package nest

import (
	"slices"

	"understructure/geometry/plane"
)

// convexParts divides a simple, counter-clockwise ring into convex parts, at most four times as many
// as need be: triangles first, then every cut that is not needed is taken out again
// (S. Hertel, K. Mehlhorn, "Fast triangulation of simple polygons", 1983).
func convexParts(r plane.Ring) []plane.Ring {
	parts := triangles(r)
	for {
		joined := false
		for i := 0; i < len(parts); i++ {
			for j := len(parts) - 1; j > i; j-- {
				if one, ok := join(r, parts[i], parts[j]); ok {
					parts[i] = one
					parts = slices.Delete(parts, j, j+1)
					joined = true
				}
			}
		}
		if !joined {
			break
		}
	}
	out := make([]plane.Ring, len(parts))
	for i, p := range parts {
		for _, k := range p {
			out[i] = append(out[i], r[k])
		}
	}
	return out
}

// triangles cuts off ears, the shapeliest first, and returns the corners' numbers.
func triangles(r plane.Ring) [][]int {
	left := make([]int, len(r))
	for i := range left {
		left[i] = i
	}
	var out [][]int
	for len(left) > 3 {
		ear, best := -1, 0.0
		for k := range left {
			a, b, c := around(left, k)
			if q := shapeliness(r[a], r[b], r[c]); (ear < 0 || q > best) && q > 0 && isEar(r, left, a, b, c) {
				ear, best = k, q
			}
		}
		if ear < 0 { // only slivers are left, without area to lose
			break
		}
		a, b, c := around(left, ear)
		out = append(out, []int{a, b, c})
		left = slices.Delete(left, ear, ear+1)
	}
	if len(left) == 3 && shapeliness(r[left[0]], r[left[1]], r[left[2]]) > 0 {
		out = append(out, left)
	}
	return out
}

func around(left []int, k int) (a, b, c int) {
	n := len(left)
	return left[(k+n-1)%n], left[k], left[(k+1)%n]
}

// shapeliness is a triangle's area over the square of its longest side, negative at a hollow corner.
func shapeliness(a, b, c plane.Point) float64 {
	u, v, w := b.Sub(a), c.Sub(b), a.Sub(c)
	long := max(u.Dot(u), v.Dot(v), w.Dot(w))
	if long == 0 {
		return 0
	}
	return u.Cross(v) / long
}

// isEar reports whether no other corner lies in the triangle abc.
func isEar(r plane.Ring, left []int, a, b, c int) bool {
	for _, k := range left {
		if k == a || k == b || k == c {
			continue
		}
		p := r[k]
		if p == r[a] || p == r[b] || p == r[c] {
			continue
		}
		if r[b].Sub(r[a]).Cross(p.Sub(r[a])) >= 0 && r[c].Sub(r[b]).Cross(p.Sub(r[b])) >= 0 && r[a].Sub(r[c]).Cross(p.Sub(r[c])) >= 0 {
			return false
		}
	}
	return true
}

// join makes one convex part of two that share a side, if they allow it.
func join(r plane.Ring, p, q []int) ([]int, bool) {
	for i, a := range p {
		b := p[(i+1)%len(p)]
		j := slices.Index(q, b)
		if j < 0 || q[(j+1)%len(q)] != a {
			continue
		}
		one := make([]int, 0, len(p)+len(q)-2)
		for k := range len(p) { // from b round to a
			one = append(one, p[(i+1+k)%len(p)])
		}
		for k := range len(q) - 2 { // from behind a to before b
			one = append(one, q[(j+2+k)%len(q)])
		}
		return one, isConvex(r, one)
	}
	return nil, false
}

func isConvex(r plane.Ring, part []int) bool {
	for k := range part {
		a, b, c := around(part, k)
		if r[b].Sub(r[a]).Cross(r[c].Sub(r[b])) < 0 {
			return false
		}
	}
	return true
}
