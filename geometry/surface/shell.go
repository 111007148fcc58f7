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

// Outer cuts the shell level at height z and keeps, in every column, the crossing
// farthest from the axis: what a tape at that height would meet. It is false where a
// column does not reach the height.
func (sh Shell) Outer(z float64) (plane.Ring, bool) {
	return sh.cut(z, func(far, d float64) bool { return d > far }, -1)
}

// Inner keeps the crossing nearest to the axis: what surely lies inside.
func (sh Shell) Inner(z float64) (plane.Ring, bool) {
	return sh.cut(z, func(near, d float64) bool { return d < near }, math.Inf(1))
}

func (sh Shell) cut(z float64, better func(best, d float64) bool, none float64) (plane.Ring, bool) {
	ring := make(plane.Ring, section.Directions)
	for j := range ring {
		best := none
		for i := 1; i < len(sh); i++ {
			a, b := &sh[i-1][j], &sh[i][j]
			if (a.Z > z) == (b.Z > z) && a.Z != z && b.Z != z {
				continue
			}
			p := *a
			if a.Z != b.Z {
				p = a.Lerp(*b, (z-a.Z)/(b.Z-a.Z))
			}
			if d := math.Hypot(p.X, p.Y); better(best, d) {
				best = d
				ring[j] = plane.Point{X: p.X, Y: p.Y}
			}
		}
		if best == none {
			return nil, false
		}
	}
	return ring, true
}

// Surface cuts the shell at each height and returns the skin through the outer crossings.
// Heights that a column does not reach take the nearest height that every column does.
func (sh Shell) Surface(heights []float64, inner bool) Surface {
	s := Surface{Z: heights, R: make([]section.Section, len(heights))}
	cut := sh.Outer
	if inner {
		cut = sh.Inner
	}
	known := make([]bool, len(heights))
	for i, z := range heights {
		if ring, ok := cut(z); ok {
			s.R[i], known[i] = section.Of(ring), true
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
