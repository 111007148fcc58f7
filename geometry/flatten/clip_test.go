package flatten

import "understructure/geometry/space"

// clipped cuts away what lies below the plane q·n = d, as a contour line cuts a patch, and so makes
// slivers wherever the plane passes close to a vertex.
func clipped(p Patch, n space.Point, d float64) Patch {
	var out Patch
	name := map[[2]int]int{}
	vertex := func(a, b int) int {
		key := [2]int{min(a, b), max(a, b)}
		if v, ok := name[key]; ok {
			return v
		}
		u, v := p.Points[a].Dot(n)-d, p.Points[b].Dot(n)-d
		q := p.Points[a]
		if a != b {
			q = q.Lerp(p.Points[b], u/(u-v))
		}
		name[key] = len(out.Points)
		out.Points = append(out.Points, q)
		return name[key]
	}
	for _, t := range p.Triangles {
		var ring []int
		for j, a := range t {
			b := t[(j+1)%3]
			above, next := p.Points[a].Dot(n) > d, p.Points[b].Dot(n) > d
			if above {
				ring = append(ring, vertex(a, a))
			}
			if above != next {
				ring = append(ring, vertex(a, b))
			}
		}
		for j := 2; j < len(ring); j++ {
			out.Triangles = append(out.Triangles, [3]int{ring[0], ring[j-1], ring[j]})
		}
	}
	return out
}
