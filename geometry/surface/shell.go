package surface

import (
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/space"
)

// Shell is a sheet of points, row by row and column by column, that need not lie on level
// slices: what becomes of a Surface when every point moves along its normal.
type Shell [][section.Directions]space.Point

// Normals returns the outward unit normal at every point, from the slopes to the
// neighbouring rows and columns.
func (s Surface) Normals() Shell {
	n := make(Shell, len(s.Z))
	dθ := 2 * math.Pi / section.Directions
	for i := range s.Z {
		lo, hi := max(i-1, 0), min(i+1, len(s.Z)-1)
		dz := s.Z[hi] - s.Z[lo]
		r := &s.R[i]
		for j := range section.Directions {
			next, prev := (j+1)&(section.Directions-1), (j-1)&(section.Directions-1)
			rθ := (r[next] - r[prev]) / (2 * dθ)
			rz := (s.R[hi][j] - s.R[lo][j]) / dz
			d := section.Direction(j)
			x, y, z := r[j]*d.X+rθ*d.Y, r[j]*d.Y-rθ*d.X, -r[j]*rz
			l := 1 / math.Sqrt(x*x+y*y+z*z)
			n[i][j] = space.Point{X: x * l, Y: y * l, Z: z * l}
		}
	}
	return n
}

// Displaced returns the skin with every point moved along its normal by d (row, column).
func (s Surface) Displaced(normals Shell, d func(i, j int) float64) Shell {
	out := make(Shell, len(s.Z))
	for i := range out {
		for j := range section.Directions {
			out[i][j] = s.Point(i, j).Add(normals[i][j].Mul(d(i, j)))
		}
	}
	return out
}

// Outer cuts the shell level at rising heights and keeps, in every column, the crossing
// farthest from the axis: what a tape at that height would meet. A slice is nil where a
// column does not reach its height.
func (sh Shell) Outer(heights []float64) []*[section.Directions]plane.Point {
	return sh.cut(heights, 1)
}

// Inner keeps the crossing nearest to the axis: what surely lies inside.
func (sh Shell) Inner(heights []float64) []*[section.Directions]plane.Point {
	return sh.cut(heights, -1)
}

// cut goes up row by row, every column with a height of its own at hand, and notes each crossing. It keeps
// the one that is farthest in the sense given: 1 for the farthest, -1 for the nearest.
func (sh Shell) cut(heights []float64, sense float64) []*[section.Directions]plane.Point {
	n := len(heights)
	rings := make([][section.Directions]plane.Point, n)
	best := make([][section.Directions]float64, n)
	for k := range best {
		for j := range best[k] {
			best[k][j] = math.Inf(-1)
		}
	}
	met := make([]int, n)
	var at [section.Directions]int // the first height not below the edge last looked at
	for i := 1; i < len(sh); i++ {
		for j := range section.Directions {
			a, b := &sh[i-1][j], &sh[i][j]
			lo, hi := min(a.Z, b.Z), max(a.Z, b.Z)
			k := at[j]
			for k > 0 && heights[k-1] >= lo {
				k--
			}
			for k < n && heights[k] < lo {
				k++
			}
			at[j] = k
			for ; k < n && heights[k] <= hi; k++ {
				t := 0.0
				if b.Z != a.Z {
					t = (heights[k] - a.Z) / (b.Z - a.Z)
				}
				x, y := a.X+(b.X-a.X)*t, a.Y+(b.Y-a.Y)*t
				d := sense * (x*x + y*y)
				if d <= best[k][j] {
					continue
				}
				if math.IsInf(best[k][j], -1) {
					met[k]++
				}
				best[k][j], rings[k][j] = d, plane.Point{X: x, Y: y}
			}
		}
	}
	out := make([]*[section.Directions]plane.Point, n)
	for k := range out {
		if met[k] == section.Directions {
			out[k] = &rings[k]
		}
	}
	return out
}

// Surface cuts the shell at each height and returns the skin through the outer crossings, or the inner.
// Heights that a column does not reach take the nearest height that every column does.
func (sh Shell) Surface(heights []float64, inner bool) Surface {
	s := Surface{Z: heights, R: make([]section.Section, len(heights))}
	rings := sh.Outer(heights)
	if inner {
		rings = sh.Inner(heights)
	}
	known := make([]bool, len(heights))
	for i, ring := range rings {
		if ring != nil {
			s.R[i], known[i] = section.Of(ring[:]), true
		}
	}
	spread(s.R, known)
	return s
}

// spread fills the rows that are not known from the nearest that is.
func spread(rows []section.Section, known []bool) {
	last := -1
	for i := range rows {
		if known[i] {
			last = i
		} else if last >= 0 {
			rows[i] = rows[last]
		}
	}
	next := -1
	for i := len(rows) - 1; i >= 0; i-- {
		if known[i] {
			next = i
		} else if next >= 0 && rows[i] == (section.Section{}) {
			rows[i] = rows[next]
		}
	}
}
