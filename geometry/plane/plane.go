// Package plane holds points and closed rings in the plane, in millimetres.
//
// A Ring is a closed polygon given by its corners; the last joins the first, and the first
// is not repeated. Rings run counter-clockwise unless they bound a hole.
// It does not know heights, bodies or paper.
package plane

import (
	"math"
	"slices"
)

// Point is a place in the plane, or a displacement between two places.
type Point struct{ X, Y float64 }

// Add returns p + q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns the displacement from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Mul returns p scaled by s.
func (p Point) Mul(s float64) Point { return Point{p.X * s, p.Y * s} }

// Dot returns the scalar product.
func (p Point) Dot(q Point) float64 { return p.X*q.X + p.Y*q.Y }

// Cross returns the signed area of the parallelogram on p and q, positive when q lies to the left.
func (p Point) Cross(q Point) float64 { return p.X*q.Y - p.Y*q.X }

// Norm returns the length of p.
func (p Point) Norm() float64 { return math.Hypot(p.X, p.Y) }

// Dist returns the distance between p and q.
func (p Point) Dist(q Point) float64 { return p.Sub(q).Norm() }

// Lerp returns the point a fraction t of the way from p to q.
func (p Point) Lerp(q Point, t float64) Point { return p.Add(q.Sub(p).Mul(t)) }

// Nearest returns the point of the segment ab nearest to p.
func Nearest(p, a, b Point) Point {
	d := b.Sub(a)
	l := d.Dot(d)
	if l == 0 {
		return a
	}
	return a.Lerp(b, math.Max(0, math.Min(1, p.Sub(a).Dot(d)/l)))
}

// MarshalJSON writes the point as [x,y] rounded to a ten-thousandth of a millimetre.
func (p Point) MarshalJSON() ([]byte, error) { return marshalPair(p.X, p.Y), nil }

// UnmarshalJSON reads [x,y].
func (p *Point) UnmarshalJSON(b []byte) error { return unmarshalPair(b, &p.X, &p.Y) }

// Ring is a closed polygon. The nil Ring is empty.
type Ring []Point

// Area is positive for a counter-clockwise ring and negative for a clockwise one.
func (r Ring) Area() float64 {
	a := 0.0
	for i, p := range r {
		a += p.Cross(r[(i+1)%len(r)])
	}
	return a / 2
}

// Perimeter is the length along the outline itself, in and out of every hollow.
func (r Ring) Perimeter() float64 {
	l := 0.0
	for i, p := range r {
		l += p.Dist(r[(i+1)%len(r)])
	}
	return l
}

// Tape is the length of a taut tape round the ring: the perimeter of its convex hull.
func (r Ring) Tape() float64 { return r.Hull().Perimeter() }

// Hull returns the convex hull, counter-clockwise, without collinear corners
// (A. M. Andrew, "Another efficient algorithm for convex hulls in two dimensions", 1979).
func (r Ring) Hull() Ring {
	if len(r) < 3 {
		return slices.Clone(r)
	}
	pts := slices.Clone(r)
	slices.SortFunc(pts, func(a, b Point) int {
		switch {
		case a.X < b.X || a.X == b.X && a.Y < b.Y:
			return -1
		case a == b:
			return 0
		}
		return 1
	})
	half := func(h Ring, p Point, floor int) Ring {
		for len(h) >= floor+2 && h[len(h)-1].Sub(h[len(h)-2]).Cross(p.Sub(h[len(h)-1])) <= 0 {
			h = h[:len(h)-1]
		}
		return append(h, p)
	}
	hull := make(Ring, 0, len(pts)+1)
	for _, p := range pts {
		hull = half(hull, p, 0)
	}
	floor := len(hull) - 1
	for i := len(pts) - 2; i >= 0; i-- {
		hull = half(hull, pts[i], floor)
	}
	return hull[:len(hull)-1]
}

// Centroid returns the centre of the enclosed area.
func (r Ring) Centroid() Point {
	var c Point
	for i, p := range r {
		q := r[(i+1)%len(r)]
		c = c.Add(p.Add(q).Mul(p.Cross(q)))
	}
	return c.Mul(1 / (6 * r.Area()))
}

// Bounds returns the corners of the smallest upright box round the ring.
func (r Ring) Bounds() (lo, hi Point) {
	lo, hi = Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, p := range r {
		lo = Point{math.Min(lo.X, p.X), math.Min(lo.Y, p.Y)}
		hi = Point{math.Max(hi.X, p.X), math.Max(hi.Y, p.Y)}
	}
	return lo, hi
}

// Contains reports whether p lies inside, by counting crossings; on the outline either answer may come.
func (r Ring) Contains(p Point) bool {
	in := false
	for i, a := range r {
		b := r[(i+1)%len(r)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)*(b.X-a.X)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}

// Reverse returns the ring run the other way round.
func (r Ring) Reverse() Ring {
	q := slices.Clone(r)
	slices.Reverse(q)
	return q
}

// Map returns the ring with f applied to every corner.
func (r Ring) Map(f func(Point) Point) Ring {
	q := make(Ring, len(r))
	for i, p := range r {
		q[i] = f(p)
	}
	return q
}

// Move returns the ring displaced by d.
func (r Ring) Move(d Point) Ring { return r.Map(func(p Point) Point { return p.Add(d) }) }

// Crossing returns the first place where two edges that are not neighbours meet, and whether there is one.
// A ring with such a place is not simple and cannot be cut.
func (r Ring) Crossing() (Point, bool) {
	return firstCrossing(r)
}
