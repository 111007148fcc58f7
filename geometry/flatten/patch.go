package flatten

import (
	"math"

	"understructure/geometry/space"
)

// Patch is a triangulated piece of surface with the topology of a disk. Triangles run
// counter-clockwise seen from outside; lengths are millimetres.
type Patch struct {
	Points    []space.Point
	Triangles [][3]int
}

// Area is the area of the surface in square millimetres.
func (p Patch) Area() float64 {
	a := 0.0
	for _, t := range p.Triangles {
		a += p.cross(t).Norm() / 2
	}
	return a
}

// length is that of a path of vertices on the surface.
func (p Patch) length(path []int) float64 {
	sum := 0.0
	for i := 1; i < len(path); i++ {
		sum += p.Points[path[i]].Dist(p.Points[path[i-1]])
	}
	return sum
}

func (p Patch) cross(t [3]int) space.Point {
	a := p.Points[t[0]]
	return p.Points[t[1]].Sub(a).Cross(p.Points[t[2]].Sub(a))
}

// TotalCurvature is the Gaussian curvature summed over the patch: the angle missing from a full turn
// round each inner vertex, in radians. It is positive over a bust, zero on a cone away from its tip,
// and negative round a waist. A patch that is no disk has the curvature of its inner vertices all the same.
func (p Patch) TotalCurvature() float64 {
	sum := 0.0
	for _, k := range p.curvature() {
		sum += k
	}
	return sum
}

// Saddle reports whether the curvature is negative on the whole. A slit where it is negative would make the
// flat piece overlap itself, so Lay opens no dart there; a full seam that divides the patch takes strain away.
func (p Patch) Saddle() bool { return p.TotalCurvature() < 0 }

// curvature gives each vertex its angle defect; vertices on the boundary have none.
func (p Patch) curvature() []float64 {
	k := make([]float64, len(p.Points))
	used := make([]bool, len(p.Points))
	for _, t := range p.Triangles {
		for j, v := range t {
			u, w := p.Points[t[(j+1)%3]].Sub(p.Points[v]), p.Points[t[(j+2)%3]].Sub(p.Points[v])
			k[v] -= math.Atan2(u.Cross(w).Norm(), u.Dot(w))
			used[v] = true
		}
	}
	for v := range k {
		if used[v] {
			k[v] += 2 * math.Pi
		}
	}
	for _, e := range p.rim() {
		k[e[0]], k[e[1]] = 0, 0
	}
	return k
}
