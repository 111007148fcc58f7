package section

import (
	"math"
	"slices"

	"understructure/geometry/plane"
)

// Around is the length of a taut tape round points that follow one another once round the
// axis, as those of a slice do; at most Directions of them, at least one.
func Around(p []plane.Point) float64 {
	var hull [Directions + 1]plane.Point
	n := scan(p, &hull)
	l := 0.0
	for i := 1; i < n; i++ {
		dx, dy := hull[i].X-hull[i-1].X, hull[i].Y-hull[i-1].Y
		l += math.Sqrt(dx*dx + dy*dy)
	}
	return l
}

// hullAround is the tape itself: the corners it touches, the first repeated at the end.
func hullAround(p *[Directions]plane.Point) plane.Ring {
	var hull [Directions + 1]plane.Point
	n := scan(p[:], &hull)
	return slices.Clone(plane.Ring(hull[:n]))
}

// scan walks the points once, as in Graham's scan (R. L. Graham, "An efficient algorithm for
// determining the convex hull of a finite planar set", 1972), from the farthest, which is a
// corner of the hull. It returns how many corners it found, the first counted twice.
func scan(p []plane.Point, hull *[Directions + 1]plane.Point) int {
	start, far := 0, -1.0
	for j, q := range p {
		if d := q.X*q.X + q.Y*q.Y; d > far {
			start, far = j, d
		}
	}
	n, k := 0, start
	for range len(p) + 1 {
		q := p[k]
		if k++; k == len(p) {
			k = 0
		}
		for n >= 2 && (hull[n-1].X-hull[n-2].X)*(q.Y-hull[n-1].Y) <= (hull[n-1].Y-hull[n-2].Y)*(q.X-hull[n-1].X) {
			n--
		}
		hull[n] = q
		n++
	}
	return n
}

// Tape is the length of a taut tape round the slice.
func (s *Section) Tape() float64 {
	var p [Directions]plane.Point
	for j, d := range s {
		p[j] = plane.Point{X: d * cosine[j], Y: d * sine[j]}
	}
	return Around(p[:])
}

// Reading is what tape and callipers say of the slice, with the side seams at y = seam: girth
// and arcs along the taut tape, breadth and depth of what it encloses.
func (s *Section) Reading(seam float64) Readings {
	var p [Directions]plane.Point
	lo, hi := plane.Point{}, plane.Point{}
	for j, d := range s {
		q := plane.Point{X: d * cosine[j], Y: d * sine[j]}
		lo = plane.Point{X: math.Min(lo.X, q.X), Y: math.Min(lo.Y, q.Y)}
		hi = plane.Point{X: math.Max(hi.X, q.X), Y: math.Max(hi.Y, q.Y)}
		p[j] = q
	}
	girth, front, left := arcs(&p, seam)
	return Readings{Girth: girth, Breadth: hi.X - lo.X, Depth: hi.Y - lo.Y, FrontArc: front, LeftArc: left}
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
