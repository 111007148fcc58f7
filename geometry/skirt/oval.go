package skirt

import (
	"math"

	"gonum.org/v1/gonum/mathext"

	"understructure/geometry/plane"
	"understructure/geometry/section"
)

// Oval is a level outline of four quarters of ellipses that meet square to the axes, given by
// its distances from the mount's axis in millimetres, all > 0. It is convex. A circle has all
// four alike; a hoop that is set back has Back > Front.
type Oval struct{ Right, Left, Front, Back float64 }

// Round returns the circle with the given girth.
func Round(girth float64) Oval {
	r := girth / (2 * math.Pi)
	return Oval{r, r, r, r}
}

// EllipseGirth is the perimeter of the ellipse with the semi-axes a and b, both > 0:
// 4·a·E(1−b²/a²), with E the complete elliptic integral of the second kind (I. N. Bronshtein,
// K. A. Semendyayev, Handbook of Mathematics, "Ellipse"). It is exact.
func EllipseGirth(a, b float64) float64 {
	if a < b {
		a, b = b, a
	}
	m := b / a
	return 4 * a * mathext.CompleteE((1-m)*(1+m))
}

// Girth is the length of the outline, exactly.
func (o Oval) Girth() float64 {
	return (EllipseGirth(o.Right, o.Front) + EllipseGirth(o.Left, o.Front) +
		EllipseGirth(o.Left, o.Back) + EllipseGirth(o.Right, o.Back)) / 4
}

// Scale returns the outline grown about the axis.
func (o Oval) Scale(f float64) Oval {
	return Oval{o.Right * f, o.Left * f, o.Front * f, o.Back * f}
}

// blend is the outline a part t of the way to p.
func (o Oval) blend(p Oval, t float64) Oval {
	mix := func(a, b float64) float64 { return a + (b-a)*t }
	return Oval{mix(o.Right, p.Right), mix(o.Left, p.Left), mix(o.Front, p.Front), mix(o.Back, p.Back)}
}

// Grown returns the outline scaled so that its girth is the one wanted.
func (o Oval) Grown(girth float64) Oval { return o.Scale(girth / o.Girth()) }

// axes are the semi-axes, signed, of the quarter that a direction lies in.
func (o Oval) axes(d plane.Point) (x, y float64) {
	x, y = o.Right, o.Front
	if d.X < 0 {
		x = o.Left
	}
	if d.Y < 0 {
		y = o.Back
	}
	return x, y
}

// Reach is the distance from the axis in the direction of the unit vector d.
func (o Oval) Reach(d plane.Point) float64 {
	x, y := o.axes(d)
	return 1 / math.Hypot(d.X/x, d.Y/y)
}

// Facing is the point of the outline whose outward normal is the unit vector d.
func (o Oval) Facing(d plane.Point) plane.Point {
	x, y := o.axes(d)
	l := math.Hypot(x*d.X, y*d.Y)
	return plane.Point{X: x * x * d.X / l, Y: y * y * d.Y / l}
}

// Section returns the outline as a slice.
func (o Oval) Section() section.Section {
	var s section.Section
	for j := range s {
		s[j] = o.Reach(section.Direction(j))
	}
	return s
}

// Through returns the outline that agrees with a slice at the sides, in front and behind.
func Through(s section.Section) Oval {
	return Oval{s[section.Right], s[section.Left], s[section.Front], s[section.Back]}
}

// within scales the outline down until it nowhere leaves the slice.
func (o Oval) within(s section.Section) Oval {
	least := 1.0
	for j, r := range s {
		least = math.Min(least, r/o.Reach(section.Direction(j)))
	}
	return o.Scale(least)
}

// roundest is the greatest radius of curvature of the outline.
func (o Oval) roundest() float64 {
	most := 0.0
	for _, x := range []float64{o.Right, o.Left} {
		for _, y := range []float64{o.Front, o.Back} {
			most = math.Max(most, math.Max(x*x/y, y*y/x))
		}
	}
	return most
}
