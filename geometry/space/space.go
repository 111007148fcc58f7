// Package space holds points and vectors in three dimensions, in millimetres:
// x to the figure's right, y to its front, z up from the floor.
// It does not know surfaces.
package space

import "math"

// Point is a place, or a displacement between two places.
type Point struct{ X, Y, Z float64 }

// Add returns p + q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y, p.Z + q.Z} }

// Sub returns the displacement from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y, p.Z - q.Z} }

// Mul returns p scaled by s.
func (p Point) Mul(s float64) Point { return Point{p.X * s, p.Y * s, p.Z * s} }

// Dot returns the scalar product.
func (p Point) Dot(q Point) float64 { return p.X*q.X + p.Y*q.Y + p.Z*q.Z }

// Cross returns the vector product, right-handed.
func (p Point) Cross(q Point) Point {
	return Point{p.Y*q.Z - p.Z*q.Y, p.Z*q.X - p.X*q.Z, p.X*q.Y - p.Y*q.X}
}

// Norm returns the length of p.
func (p Point) Norm() float64 { return math.Sqrt(p.Dot(p)) }

// Dist returns the distance between p and q.
func (p Point) Dist(q Point) float64 { return p.Sub(q).Norm() }

// Unit returns p at length one; the zero Point stays zero.
func (p Point) Unit() Point {
	if n := p.Norm(); n > 0 {
		return p.Mul(1 / n)
	}
	return p
}

// Lerp returns the point a fraction t of the way from p to q.
func (p Point) Lerp(q Point, t float64) Point { return p.Add(q.Sub(p).Mul(t)) }
