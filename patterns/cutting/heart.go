package cutting

import (
	"math"

	"understructure/geometry/plane"
)

// heart is about where in an outline there is most room, and how far it is to the edge from there: the best point of a grid, then
// of a finer one round it.
func heart(outline plane.Ring) (at plane.Point, free float64) {
	const steps = 12
	lo, hi := outline.Bounds()
	at = outline.Centroid()
	for range 3 {
		step := hi.Sub(lo).Mul(1. / steps)
		for i := range steps + 1 {
			for k := range steps + 1 {
				p := lo.Add(plane.Point{X: step.X * float64(i), Y: step.Y * float64(k)})
				if d := toEdge(outline, p); d > free && outline.Contains(p) {
					at, free = p, d
				}
			}
		}
		lo, hi = at.Sub(step), at.Add(step)
	}
	return at, free
}

func toEdge(r plane.Ring, p plane.Point) float64 {
	d := math.Inf(1)
	for i, a := range r {
		d = min(d, p.Dist(plane.Nearest(p, a, r[(i+1)%len(r)])))
	}
	return d
}
