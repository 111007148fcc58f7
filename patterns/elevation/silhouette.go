package elevation

import (
	"math"

	"understructure/geometry/plane"
)

// silhouettes are the closed outlines of a body seen from one side, one for each run of heights at which
// it has a section. The direction of length 1 on the figure points to the right.
func silhouettes(heights []float64, rings []plane.Ring, right plane.Point) [][]plane.Point {
	var all [][]plane.Point
	var up, down []plane.Point
	end := func() {
		if len(up) > 1 {
			for i := len(down) - 1; i >= 0; i-- {
				up = append(up, down[i])
			}
			all = append(all, up)
		}
		up, down = nil, nil
	}
	for i, z := range heights {
		if i >= len(rings) || len(rings[i]) == 0 {
			end()
			continue
		}
		lo, hi := reach(rings[i], right)
		up, down = append(up, plane.Point{X: hi, Y: z}), append(down, plane.Point{X: lo, Y: z})
	}
	end()
	return all
}

// reach is how far an outline goes to the left and to the right.
func reach(r plane.Ring, right plane.Point) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, p := range r {
		x := p.Dot(right)
		lo, hi = math.Min(lo, x), math.Max(hi, x)
	}
	return lo, hi
}
