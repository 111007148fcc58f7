package drawing

import (
	"math"

	"understructure/geometry/plane"
)

// Box is an upright rectangle from its lower left to its upper right corner.
type Box struct{ Lo, Hi plane.Point }

// Empty is the box round nothing; Round grows it.
func Empty() Box {
	inf := math.Inf(1)
	return Box{plane.Point{X: inf, Y: inf}, plane.Point{X: -inf, Y: -inf}}
}

// Round returns the smallest box that holds b and the points.
func (b Box) Round(points ...plane.Point) Box {
	for _, p := range points {
		b.Lo = plane.Point{X: math.Min(b.Lo.X, p.X), Y: math.Min(b.Lo.Y, p.Y)}
		b.Hi = plane.Point{X: math.Max(b.Hi.X, p.X), Y: math.Max(b.Hi.Y, p.Y)}
	}
	return b
}

// Width is the length from left to right.
func (b Box) Width() float64 { return b.Hi.X - b.Lo.X }

// Height is the length from bottom to top.
func (b Box) Height() float64 { return b.Hi.Y - b.Lo.Y }

// Centre is the middle of the box.
func (b Box) Centre() plane.Point { return b.Lo.Lerp(b.Hi, 0.5) }

// Grow returns the box with every side moved outward by d; inward where d is negative.
func (b Box) Grow(d float64) Box {
	by := plane.Point{X: d, Y: d}
	return Box{b.Lo.Sub(by), b.Hi.Add(by)}
}

// Move returns the box displaced by d.
func (b Box) Move(d plane.Point) Box { return Box{b.Lo.Add(d), b.Hi.Add(d)} }

// Contains reports whether p lies inside or on the edge.
func (b Box) Contains(p plane.Point) bool {
	return p.X >= b.Lo.X && p.X <= b.Hi.X && p.Y >= b.Lo.Y && p.Y <= b.Hi.Y
}

// Corners are the four corners, counter-clockwise from the lower left.
func (b Box) Corners() []plane.Point {
	return []plane.Point{b.Lo, {X: b.Hi.X, Y: b.Lo.Y}, b.Hi, {X: b.Lo.X, Y: b.Hi.Y}}
}

// Cut returns the stretches of a line that lie inside the box. A closed line wholly inside
// comes back as one stretch that ends where it began.
func (b Box) Cut(points []plane.Point, closed bool) [][]plane.Point {
	if closed && len(points) > 0 {
		points = append(points[:len(points):len(points)], points[0])
	}
	var runs [][]plane.Point
	open := false // whether the last run goes on at the next corner
	for i := 1; i < len(points); i++ {
		p, q, ok := b.chord(points[i-1], points[i])
		if !ok {
			open = false
			continue
		}
		if !open {
			runs = append(runs, []plane.Point{p})
		}
		last := len(runs) - 1
		runs[last] = append(runs[last], q)
		open = q == points[i]
	}
	return runs
}

// chord is the part of the segment pq inside the box
// (Liang and Barsky, "A new concept and method for line clipping", 1984).
func (b Box) chord(p, q plane.Point) (plane.Point, plane.Point, bool) {
	from, to := 0.0, 1.0
	d := q.Sub(p)
	for _, side := range [4]struct{ rate, room float64 }{
		{-d.X, p.X - b.Lo.X}, {d.X, b.Hi.X - p.X}, {-d.Y, p.Y - b.Lo.Y}, {d.Y, b.Hi.Y - p.Y},
	} {
		switch {
		case side.rate == 0 && side.room < 0:
			return p, q, false
		case side.rate < 0:
			from = math.Max(from, side.room/side.rate)
		case side.rate > 0:
			to = math.Min(to, side.room/side.rate)
		}
	}
	if from > to {
		return p, q, false
	}
	start, end := p, q
	if from > 0 {
		start = p.Lerp(q, from)
	}
	if to < 1 {
		end = p.Lerp(q, to)
	}
	return start, end, true
}
