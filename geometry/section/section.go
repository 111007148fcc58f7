// Package section holds one closed horizontal slice of a figure, and draws one from tape
// readings.
//
// A slice is described by its distance from the mount's upright axis in fixed directions,
// so that slices of a form, a figure and the layers between them can be compared
// direction by direction. Direction 0 is the figure's right, a quarter of the way round
// its front, and so on counter-clockwise seen from above.
// It does not know the names of levels nor what is usual for a body.
package section

import (
	"math"

	"understructure/geometry/plane"
)

// Directions is how many directions a slice is known in: enough that the chord of a
// 300 mm wide torso lies within 0.02 mm of its curve, and a multiple of 8, so that
// centre front, centre back and both sides are directions of their own.
const Directions = 256

// Unit vectors of the directions.
var cosine, sine [Directions]float64

func init() {
	for j := range Directions {
		sine[j], cosine[j] = math.Sincos(2 * math.Pi * float64(j) / Directions)
	}
	for q := range 4 { // exact on the axes, so that a symmetric figure stays symmetric
		j := q * Directions / 4
		cosine[j], sine[j] = math.Round(cosine[j]), math.Round(sine[j])
	}
}

// Direction returns the unit vector of direction j in [0, Directions).
func Direction(j int) plane.Point { return plane.Point{X: cosine[j], Y: sine[j]} }

// Indices of the four balance lines.
const (
	Right = 0
	Front = Directions / 4
	Left  = Directions / 2
	Back  = 3 * Directions / 4
)

// Section is a slice: its distance from the axis, in millimetres, in each direction.
type Section [Directions]float64

// Ring returns the outline, counter-clockwise from the right side.
func (s *Section) Ring() plane.Ring {
	r := make(plane.Ring, Directions)
	for j, d := range s {
		r[j] = plane.Point{X: d * cosine[j], Y: d * sine[j]}
	}
	return r
}

// Scale returns the slice grown about the axis.
func (s Section) Scale(f float64) Section {
	for j := range s {
		s[j] *= f
	}
	return s
}

// Of returns the slice of a ring that can be seen whole from the axis at the origin: in
// each direction the farthest crossing. Where the ring misses a direction the slice is 0.
func Of(r plane.Ring) Section {
	var s Section
	n := len(r)
	if n == 0 {
		return s
	}
	first := turn(r[0])
	a := first
	for i, p := range r[:n-1] {
		b := turn(r[i+1])
		s.reach(p, r[i+1], a, b)
		a = b
	}
	s.reach(r[n-1], r[0], a, first)
	return s
}

// reach draws the slice out to an edge from p, in direction a, to q in direction b.
func (s *Section) reach(p, q plane.Point, a, b float64) {
	if d := b - a; d > Directions/2 {
		b -= Directions
	} else if d < -Directions/2 {
		b += Directions
	}
	if a > b {
		a, b = b, a
	}
	e := q.Sub(p)
	for j := int(math.Ceil(a - 1e-9)); float64(j) <= b+1e-9; j++ {
		k := (j%Directions + Directions) % Directions
		u := Direction(k)
		den := u.Cross(e)
		if den == 0 {
			continue
		}
		if d := p.Cross(e) / den; d > s[k] {
			s[k] = d
		}
	}
}

// turn is the direction of p, in steps of a direction, in [-Directions/2, Directions/2].
func turn(p plane.Point) float64 { return math.Atan2(p.Y, p.X) * Directions / (2 * math.Pi) }

// Area is the area inside the outline, in square millimetres.
func (s *Section) Area() float64 {
	a := 0.0
	for j, d := range s {
		a += d * s[(j+1)&(Directions-1)]
	}
	return a / 2 * sine[1]
}

// Blend returns the slice round both a and b, rounded where they meet: the farther of the
// two in each direction, and a little more where they differ by less than k millimetres
// (k/4 where they are equal), so that it bends smoothly from one to the other.
func Blend(a, b Section, k float64) Section {
	for j := range a {
		a[j] = Farther(a[j], b[j], k)
	}
	return a
}

// Farther is the smooth maximum that Blend uses. It equals the larger number exactly when
// they differ by k or more.
func Farther(a, b, k float64) float64 {
	m := math.Max(a, b)
	if h := k - math.Abs(a-b); h > 0 {
		m += h * h / (4 * k)
	}
	return m
}
