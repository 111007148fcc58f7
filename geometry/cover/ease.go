package cover

import (
	"math"

	"understructure/geometry/section"
	"understructure/geometry/surface"
)

// bridged is how far, mm, taut cloth bridges the edge of a feathered layer: about twice a sheet of 6 mm. From memory.
const bridged = 12.0

// eased rounds off what a cloth does not follow: edges of layers that will be feathered. At
// every point it takes the straight line that fits best what lies within bridged of it, first round the slice, then up and
// down, nearer points weighing more (W. S. Cleveland, "Robust locally weighted regression and smoothing
// scatterplots", J. Amer. Statist. Assoc. 74, 1979); upright cylinders and cones stay as they are.
func eased(s surface.Surface) surface.Surface {
	out := surface.Surface{Z: s.Z, R: make([]section.Section, len(s.R))}
	const n = section.Directions
	const over = n / 8 // columns beyond both ends, so that the ends fit
	var value, at [n + 2*over]float64
	for i := range s.R {
		way := 0.0
		for k := range value {
			r := s.R[i][(k+n-over)%n]
			value[k], at[k] = r, way
			way += r * 2 * math.Pi / n
		}
		for j := range n {
			out.R[i][j] = fitted(value[:], at[:], j+over)
		}
	}
	column, up := make([]float64, len(s.Z)), make([]float64, len(s.Z))
	for j := range n {
		for i := range s.Z {
			column[i] = out.R[i][j]
			if i > 0 {
				up[i] = up[i-1] + math.Hypot(s.Z[i]-s.Z[i-1], s.R[i][j]-s.R[i-1][j])
			}
		}
		for i := range s.Z {
			out.R[i][j] = fitted(column, up, i)
		}
	}
	return out
}

// fitted is the value at place i of the line that best fits the values within bridged of it.
func fitted(value, at []float64, i int) float64 {
	var w, wx, wxx, wy, wxy float64
	take := func(k int) bool {
		x := at[k] - at[i]
		q := 1 - math.Abs(x)/bridged
		if q <= 0 {
			return false
		}
		w, wx, wxx = w+q, wx+q*x, wxx+q*x*x
		wy, wxy = wy+q*value[k], wxy+q*x*value[k]
		return true
	}
	for k := i; k >= 0 && take(k); k-- {
	}
	for k := i + 1; k < len(at) && take(k); k++ {
	}
	det := w*wxx - wx*wx
	if det < 1e-9*w*w {
		return value[i] // nothing else is near
	}
	return (wxx*wy - wx*wxy) / det
}
