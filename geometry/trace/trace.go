// Package trace reads breadths and depths off a silhouette that somebody drew over a photograph.
// It does not correct perspective: a photograph must be taken from far away, and level.
package trace

import (
	"math"

	"understructure/geometry/plane"
)

// half is over how much height a traced line is smoothed, mm to either side: a hand draws no truer.
const half = 6.0

// Extent returns how far a silhouette reaches to the left and to the right at a height, in millimetres; false
// where it does not cross that height at least twice. A silhouette whose ends lie apart is closed straight.
func Extent(silhouette []plane.Point, height float64) (left, right float64, ok bool) {
	const steps = 5
	n := 0.0
	for k := -steps; k <= steps; k++ {
		l, r, met := crossed(silhouette, height+half*float64(k)/steps)
		if met {
			left, right, n = left+l, right+r, n+1
		}
		ok = ok || met && k == 0
	}
	if !ok {
		return 0, 0, false
	}
	return left / n, right / n, true
}

// crossed is where the line first and last crosses a height.
func crossed(line []plane.Point, z float64) (left, right float64, ok bool) {
	left, right = math.Inf(1), math.Inf(-1)
	for i, a := range line {
		b := line[(i+1)%len(line)]
		if (a.Y < z) == (b.Y < z) {
			continue
		}
		x := a.X + (b.X-a.X)*(z-a.Y)/(b.Y-a.Y)
		left, right = min(left, x), max(right, x)
	}
	return left, right, right > left
}
