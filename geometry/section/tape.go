package section

import (
	"math"

	"understructure/geometry/plane"
)

// hullPerimeter walks the directions once round, as in Graham's scan (R. L. Graham, "An
// efficient algorithm for determining the convex hull of a finite planar set", 1972): the
// points are already in order of angle about a point inside.
func hullPerimeter(s *Section) float64 {
	var hull [Directions + 1]plane.Point
	start := farthest(s)
	n := 0
	for i := 0; i <= Directions; i++ {
		j := (start + i) & (Directions - 1)
		p := plane.Point{X: s[j] * cosine[j], Y: s[j] * sine[j]}
		for n >= 2 && (hull[n-1].X-hull[n-2].X)*(p.Y-hull[n-1].Y) <= (hull[n-1].Y-hull[n-2].Y)*(p.X-hull[n-1].X) {
			n--
		}
		hull[n] = p
		n++
	}
	l := 0.0
	for i := 1; i < n; i++ {
		dx, dy := hull[i].X-hull[i-1].X, hull[i].Y-hull[i-1].Y
		l += math.Sqrt(dx*dx + dy*dy)
	}
	return l
}

// farthest is the direction of the point farthest from the axis, which the hull cannot miss.
func farthest(s *Section) int {
	best := 0
	for j, d := range s {
		if d > s[best] {
			best = j
		}
	}
	return best
}

// Grown returns the slice scaled about the axis so that its tape is the one wanted.
func (s Section) Grown(tape float64) Section { return s.Scale(tape / s.Tape()) }

// Parallel returns the slice at distance d outside (inside for negative d) of its tape
// outline: a taut tape round it is 2πd longer (Steiner's formula for convex outlines).
func (s *Section) Parallel(d float64) Section {
	hull := s.Ring().Hull()
	n := len(hull)
	out := make(plane.Ring, 0, 3*n)
	for i, p := range hull {
		a := p.Sub(hull[(i+n-1)%n])
		b := hull[(i+1)%n].Sub(p)
		na := plane.Point{X: a.Y, Y: -a.X}.Mul(1 / a.Norm())
		nb := plane.Point{X: b.Y, Y: -b.X}.Mul(1 / b.Norm())
		if d > 0 {
			out = append(out, p.Add(na.Mul(d)), p.Add(nb.Mul(d)))
			continue
		}
		out = append(out, p.Add(na.Add(nb).Mul(d/(1+na.Dot(nb)))))
	}
	return Of(out)
}
