// Package surface holds the skin of a torso, a form or a mount: slices about one upright
// axis, joined smoothly from bottom to top.
//
// Rows are slices at rising heights; columns are the directions of package section. Between
// rows and between directions the skin is taken as straight, so rows must stand close
// enough for what is asked of them: 4 mm keeps a profile of 100 mm radius to 0.02 mm.
// It does not know levels, layers or garments.
package surface

import (
	"math"
	"slices"

	"understructure/geometry/curve"
	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/space"
)

// Surface is a skin. Z holds the heights of the rows, strictly rising, in millimetres; R
// the slices, one a row. A Surface is not changed once made. The zero Surface is empty.
type Surface struct {
	Z []float64
	R []section.Section
}

// Through returns the skin through the slices at rising heights z, known at the rows
// wanted: smooth in both directions and with no bulge or hollow that the slices do not
// have (see curve.Through). Beyond the first and last slice it goes on upright.
func Through(z []float64, slices []section.Section, rows []float64) Surface {
	s := Surface{Z: rows, R: make([]section.Section, len(rows))}
	column := make([]float64, len(z))
	for j := range section.Directions {
		for k := range z {
			column[k] = slices[k][j]
		}
		curve.Through(z, column).Along(rows, func(i int, r float64) { s.R[i][j] = r })
	}
	return s
}

// Rows returns rising heights from lo to hi no more than gap apart, through every height
// in fixed that lies between them.
func Rows(lo, hi, gap float64, fixed ...float64) []float64 {
	knots := append([]float64{lo, hi}, fixed...)
	slices.Sort(knots)
	var rows []float64
	for i, z := range knots {
		if z < lo || z > hi {
			continue
		}
		if len(rows) == 0 {
			rows = append(rows, z)
			continue
		}
		last := rows[len(rows)-1]
		if z-last < 1e-6 {
			continue
		}
		n := int(math.Ceil((z - last) / gap))
		for k := 1; k < n; k++ {
			rows = append(rows, last+(z-last)*float64(k)/float64(n))
		}
		rows = append(rows, knots[i])
	}
	return rows
}

// Sound reports whether the skin goes round the axis at every row: every distance finite
// and at least least.
func (s Surface) Sound(least float64) bool {
	for i := range s.R {
		for _, d := range s.R[i] {
			if !(d >= least) || math.IsInf(d, 1) {
				return false
			}
		}
	}
	return true
}

// Empty reports whether there is no skin at all.
func (s Surface) Empty() bool { return len(s.Z) == 0 }

// Bottom and Top are the heights of the first and the last row.
func (s Surface) Bottom() float64 { return s.Z[0] }

// Top is the height of the last row.
func (s Surface) Top() float64 { return s.Z[len(s.Z)-1] }

// Row returns the row at or below z and the fraction of the way to the next; beyond the
// ends it is the end itself.
func (s Surface) Row(z float64) (i int, t float64) {
	n := len(s.Z)
	if z <= s.Z[0] {
		return 0, 0
	}
	if z >= s.Z[n-1] {
		return n - 2, 1
	}
	i, _ = slices.BinarySearch(s.Z, z)
	if s.Z[i] > z {
		i--
	}
	if i == n-1 {
		return n - 2, 1
	}
	return i, (z - s.Z[i]) / (s.Z[i+1] - s.Z[i])
}

// At returns the slice at height z; beyond the ends it is the end slice.
func (s Surface) At(z float64) section.Section {
	i, t := s.Row(z)
	a, b := &s.R[i], &s.R[i+1]
	var out section.Section
	for j := range out {
		out[j] = a[j] + (b[j]-a[j])*t
	}
	return out
}

// Resampled returns the skin known at other rows.
func (s Surface) Resampled(rows []float64) Surface {
	out := Surface{Z: rows, R: make([]section.Section, len(rows))}
	for i, z := range rows {
		out.R[i] = s.At(z)
	}
	return out
}

// Radius returns the distance from the axis in a direction given as a fraction of
// Directions steps, at height z.
func (s Surface) Radius(turn, z float64) float64 {
	i, t := s.Row(z)
	return s.between(i, t, turn)
}

// RadiusNear is Radius for many places near one another: it looks for z from row near on,
// and says which row it found.
func (s Surface) RadiusNear(near int, turn, z float64) (r float64, row int) {
	row, t := s.RowNear(near, z)
	return s.between(row, t, turn), row
}

// RowNear is Row, looking for z from row near on.
func (s Surface) RowNear(near int, z float64) (i int, t float64) {
	last := len(s.Z) - 2
	i = min(max(near, 0), last)
	for i > 0 && s.Z[i] > z {
		i--
	}
	for i < last && s.Z[i+1] <= z {
		i++
	}
	return i, max(0, min(1, (z-s.Z[i])/(s.Z[i+1]-s.Z[i])))
}

// between is the distance from the axis a part t of the way from row i to the next.
func (s Surface) between(i int, t, turn float64) float64 {
	f := math.Floor(turn)
	u := turn - f
	j := int(f) & (section.Directions - 1)
	k := (j + 1) & (section.Directions - 1)
	a, b := &s.R[i], &s.R[i+1]
	lo := a[j] + (a[k]-a[j])*u
	hi := b[j] + (b[k]-b[j])*u
	return lo + (hi-lo)*t
}

// Point returns the place of column j in row i.
func (s Surface) Point(i, j int) space.Point {
	d := section.Direction(j)
	r := s.R[i][j]
	return space.Point{X: r * d.X, Y: r * d.Y, Z: s.Z[i]}
}

// Profile returns the outline of one column from height lo to hi: X the height, Y the
// distance from the axis. Its left is outside.
func (s Surface) Profile(j int, lo, hi float64) []plane.Point {
	p := []plane.Point{{X: lo, Y: s.Radius(float64(j), lo)}}
	for i, z := range s.Z {
		if z > lo && z < hi {
			p = append(p, plane.Point{X: z, Y: s.R[i][j]})
		}
	}
	return append(p, plane.Point{X: hi, Y: s.Radius(float64(j), hi)})
}

// Volume is the space inside the skin between two heights, in cubic millimetres.
func (s Surface) Volume(lo, hi float64) float64 {
	v, z0 := 0.0, lo
	at := s.At(lo)
	a0 := at.Area()
	for i, z := range s.Z {
		if z <= lo || z >= hi {
			continue
		}
		a := s.R[i].Area()
		v += slab(a0, a, z-z0)
		z0, a0 = z, a
	}
	at = s.At(hi)
	return v + slab(a0, at.Area(), hi-z0)
}

// Area is the area of the skin between two heights, in square millimetres.
func (s Surface) Area(lo, hi float64) float64 {
	rows := []float64{lo}
	for _, z := range s.Z {
		if z > lo && z < hi {
			rows = append(rows, z)
		}
	}
	p := s.Resampled(append(rows, hi))
	a := 0.0
	for i := 1; i < len(p.Z); i++ {
		for j := range section.Directions {
			k := (j + 1) & (section.Directions - 1)
			across := p.Point(i, k).Sub(p.Point(i-1, j))
			other := p.Point(i, j).Sub(p.Point(i-1, k))
			a += across.Cross(other).Norm() / 2
		}
	}
	return a
}

// slab is the volume between two like slices h apart (frustum of a cone, Heron of Alexandria).
func slab(a, b, h float64) float64 { return h / 3 * (a + b + math.Sqrt(math.Max(a*b, 0))) }

// Lift returns the skin raised by dz and moved forward by dy. Moving it forward draws its
// slices again about the axis.
func (s Surface) Lift(dy, dz float64) Surface {
	out := Surface{Z: make([]float64, len(s.Z)), R: s.R}
	for i, z := range s.Z {
		out.Z[i] = z + dz
	}
	if dy != 0 {
		out.R = make([]section.Section, len(s.R))
		for i := range s.R {
			out.R[i] = section.Of(s.R[i].Ring().Move(plane.Point{Y: dy}))
		}
	}
	return out
}
