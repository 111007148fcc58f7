// Package shapetest makes triangulated shapes whose flat development, area or curvature is known
// exactly, for tests.
//
// Every function returns points and triangles, counter-clockwise seen from outside, in millimetres and
// radians, on a grid of nu × nv cells of two triangles each. Areas and curvatures are those
// of the smooth shape; the mesh's own lie below them by terms of the square of the cell.
// It does not test anything itself.
package shapetest

import (
	"math"

	"understructure/geometry/space"
)

// Grid makes a surface from at(u, v), u and v from 0 to 1. Seen from outside, u runs to the right and v up.
func Grid(nu, nv int, at func(u, v float64) space.Point) ([]space.Point, [][3]int) {
	var pts []space.Point
	var tris [][3]int
	for j := range nv + 1 {
		for i := range nu + 1 {
			pts = append(pts, at(float64(i)/float64(nu), float64(j)/float64(nv)))
			if i < nu && j < nv {
				a := j*(nu+1) + i
				b := a + nu + 1
				tris = append(tris, [3]int{a, a + 1, b + 1}, [3]int{a, b + 1, b})
			}
		}
	}
	return pts, tris
}

// around is the point at radius r, angle θ from x towards y, and height z.
func around(r, θ, z float64) space.Point {
	return space.Point{X: r * math.Cos(θ), Y: r * math.Sin(θ), Z: z}
}

// Cylinder is the upright cylinder of radius r and height h over the angle turn < 2π. It develops to a
// rectangle h high; its mesh, a prism, is 2·nu·r·sin(turn/2nu) wide, the smooth one turn·r.
func Cylinder(r, h, turn float64, nu, nv int) ([]space.Point, [][3]int) {
	return Grid(nu, nv, func(u, v float64) space.Point { return around(r, turn*u, h*v) })
}

// Cone is the upright cone frustum with radius r at the bottom, its tip at height h, up to
// the fraction top < 1 of h, over the angle turn. With slant s = √(r²+h²) it develops to a ring
// sector of angle turn·r/s (a full cone: 2πr/s) between the radii s and s·(1−top).
// Its mesh is a pyramid frustum, exactly developable too.
func Cone(r, h, top, turn float64, nu, nv int) ([]space.Point, [][3]int) {
	return Grid(nu, nv, func(u, v float64) space.Point { return around(r*(1-top*v), turn*u, h*top*v) })
}

// Torus is the part of a torus round the z-axis, of radii R > r, from angle u0 to u1 round
// the axis and v0 to v1 round the tube, v = 0 outermost. Its area is
// (u1−u0)·r·(R·(v1−v0) + r·(sin v1 − sin v0)), 4π²Rr for the whole, and its total
// curvature (u1−u0)·(sin v1 − sin v0), zero for the whole (Gauss–Bonnet).
func Torus(R, r, u0, u1, v0, v1 float64, nu, nv int) ([]space.Point, [][3]int) {
	return Grid(nu, nv, func(u, v float64) space.Point {
		φ := v0 + (v1-v0)*v
		return around(R+r*math.Cos(φ), u0+(u1-u0)*u, r*math.Sin(φ))
	})
}

// Sphere is the part of a sphere of radius r between the longitudes u0 and u1 and the latitudes v0 and v1 away
// from the poles. Its area is r²·(u1−u0)·(sin v1 − sin v0) and its total curvature that over r².
// No part of it lies flat without strain (Gauss).
func Sphere(r, u0, u1, v0, v1 float64, nu, nv int) ([]space.Point, [][3]int) {
	return Grid(nu, nv, func(u, v float64) space.Point {
		φ := v0 + (v1-v0)*v
		return around(r*math.Cos(φ), u0+(u1-u0)*u, r*math.Sin(φ))
	})
}

// SphericalCap is the cap of angular radius a round the point of a sphere of radius r on the x-axis, in rings of
// six, twelve, … triangles' corners. Its area is 2πr²(1 − cos a), its total curvature 2π(1 − cos a).
//
// The map of least distortion is azimuthal equidistant, and its greatest and least scale
// differ by the factor a/sin a (Milnor, "A problem in cartography", Amer. Math. Monthly 76,
// 1969: the distance from the centre is kept, and a circle at distance ρ is stretched by ρ/sin ρ, which grows to
// the edge). Scaled to divide that evenly, the greatest strain is CapStrain(a).
func SphericalCap(r, a float64, rings int) ([]space.Point, [][3]int) {
	at := func(ring, k int) space.Point {
		ρ, φ := a*float64(ring)/float64(rings), 2*math.Pi*float64(k)/float64(max(1, 6*ring))
		return space.Point{X: r * math.Cos(ρ), Y: r * math.Sin(ρ) * math.Cos(φ), Z: r * math.Sin(ρ) * math.Sin(φ)}
	}
	pts := []space.Point{at(0, 0)}
	var tris [][3]int
	for ring := 1; ring <= rings; ring++ {
		in, out := 3*(ring-1)*(ring-2)+1, 3*ring*(ring-1)+1
		n, m := max(1, 6*(ring-1)), 6*ring
		if ring == 1 {
			in = 0
		}
		for k := range m {
			pts = append(pts, at(ring, k))
			sector, step := k/ring, k%ring
			i := sector*(ring-1) + step
			tris = append(tris, [3]int{out + k, out + (k+1)%m, in + i%n})
			if step < ring-1 {
				tris = append(tris, [3]int{in + i%n, out + (k+1)%m, in + (i+1)%n})
			}
		}
	}
	return pts, tris
}

// CapStrain is the least possible greatest strain of a spherical cap of angular radius a laid flat: with
// scales from 1−ε to 1+ε and (1+ε)/(1−ε) = a/sin a. It is 1.34 % for a = 0.4.
func CapStrain(a float64) float64 {
	q := a / math.Sin(a)
	return (q - 1) / (q + 1)
}

// Corseted is the quarter of an invented corseted torso from the centre front (u = 0) to the side, of
// height 560: round hips below, a waist of girth about 610 in a saddle, a full bust above. Its sections are
// plain ellipses, fine for a surface although not for a body; no real person has them. Its
// curvature is negative round the waist and positive at the bust.
func Corseted(nu, nv int) ([]space.Point, [][3]int) {
	return Grid(nu, nv, func(u, v float64) space.Point {
		z := 560 * v
		bump := func(at, width float64) float64 { return math.Exp(-math.Pow((z-at)/width, 2)) }
		breadth := 112 + 55*bump(20, 130) + 28*bump(420, 110) - 10*bump(215, 60)
		depth := 88 + 38*bump(10, 140) + 42*bump(400, 85) - 5*bump(215, 60)
		θ := math.Pi / 2 * (1 - u)
		return space.Point{X: -breadth * math.Cos(θ), Y: depth * math.Sin(θ), Z: z}
	})
}
