package skirt

import (
	"math"

	"understructure/geometry/plane"
)

// Frustum is the side of a right circular cone between two level girths, in millimetres: a
// tube where they are equal. It lies flat exactly, as a piece of a ring or a rectangle
// (I. N. Bronshtein, K. A. Semendyayev, Handbook of Mathematics, "Cone, truncated cone").
type Frustum struct {
	Top, Bottom float64 // girths, ≥ 0; Bottom > 0
	Slant       float64 // along the side, > 0
}

// Angle is the angle of the ring laid flat, in radians: 2π(R−r)/s, negative where it is
// narrower below, 0 for a tube. A whole cone has the angle 2πr/s.
func (f Frustum) Angle() float64 { return (f.Bottom - f.Top) / f.Slant }

// Height is the distance between the two girths, or 0 where the slant cannot bridge them.
func (f Frustum) Height() float64 {
	out := f.Angle() * f.Slant / (2 * math.Pi)
	return math.Sqrt(math.Max(0, f.Slant*f.Slant-out*out))
}

// Area is that of the side: s·(C + c)/2, with the girths C and c, which is π·s·(R + r).
func (f Frustum) Area() float64 { return f.Slant * (f.Top + f.Bottom) / 2 }

// WaistRadius is the radius to which the waist of a circle skirt is cut: girth over the angle,
// with the part of a whole circle that the skirt is, such as 1 or 0.5.
func WaistRadius(girth, part float64) float64 { return girth / (2 * math.Pi * part) }

// chord is how far a straight side of a flat piece may lie off its curve, mm: a fifth of the line that is printed.
const chord = 0.05

// Panel is one of n like pieces of the side laid flat: its lower edge below, its upper edge
// above, upright in the middle. Corners are lower left, lower right, upper right, upper left,
// and the numbers of the first corner of each edge are returned.
func (f Frustum) Panel(n int) (outline plane.Ring, edges [4]int) {
	angle := f.Angle() / float64(n)
	if math.Abs(angle) < 1e-9 {
		w := f.Bottom / float64(n) / 2
		return plane.Ring{{X: -w}, {X: w}, {X: w, Y: f.Slant}, {X: -w, Y: f.Slant}}, [4]int{0, 1, 2, 3}
	}
	apex := f.Bottom / f.Angle() // from the point where the sides meet to the lower edge, upward
	arc := func(y0, radius float64, from, to float64) {
		steps := int(math.Ceil(math.Abs(to-from) / (2 * math.Acos(1-math.Min(1, chord/math.Max(math.Abs(radius), 1))))))
		steps = max(1, steps)
		for i := range steps + 1 {
			s, c := math.Sincos(from + (to-from)*float64(i)/float64(steps))
			outline = append(outline, plane.Point{X: radius * s, Y: y0 - radius*c})
		}
	}
	arc(apex, apex, -angle/2, angle/2)
	upper := len(outline)
	arc(apex, apex-f.Slant, angle/2, -angle/2)
	return outline, [4]int{0, upper - 1, upper, len(outline) - 1}
}
