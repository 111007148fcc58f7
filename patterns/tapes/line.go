package tapes

import (
	"math"
	"slices"

	"understructure/geometry/curve"
	"understructure/geometry/plane"
)

// line is drawn through its points.
type line []plane.Point

func at(x, y float64) plane.Point { return plane.Point{X: x, Y: y} }

// through makes a line of pairs of x and y.
func through(xy ...float64) line {
	l := make(line, len(xy)/2)
	for i := range l {
		l[i] = at(xy[2*i], xy[2*i+1])
	}
	return l
}

// fine is the number of stretches in a curve: at 35 mm each is shorter than a millimetre.
const fine = 32

// bend is the curve from a to b that is drawn toward c (a quadratic Bézier curve).
func bend(a, c, b plane.Point) line {
	l := make(line, fine+1)
	for i := range l {
		t := float64(i) / fine
		l[i] = a.Lerp(c, t).Lerp(c.Lerp(b, t), t)
	}
	return l
}

// half is the half of an ellipse from a to b that sags to the left of the way from a to b; negative
// sags to the right. A tape round a figure that is seen from a little above shows as two halves.
func half(a, b plane.Point, sag float64) line {
	centre, along := a.Lerp(b, 0.5), b.Sub(a).Mul(0.5)
	across := at(-along.Y, along.X).Mul(sag / along.Norm())
	l := make(line, fine+1)
	for i := range l {
		s, c := math.Sincos(math.Pi * float64(i) / fine)
		l[i] = centre.Sub(along.Mul(c)).Add(across.Mul(s))
	}
	return l
}

// oval is an upright ellipse.
func oval(centre plane.Point, rx, ry float64) line {
	l := make(line, 2*fine)
	for i := range l {
		s, c := math.Sincos(math.Pi * float64(i) / fine)
		l[i] = centre.Add(at(rx*c, ry*s))
	}
	return l
}

// edge is one edge of a figure, from the foot up: how far to the side it lies at each height.
type edge struct{ curve.Monotone }

func edgeThrough(heights, sides []float64) edge { return edge{curve.Through(heights, sides)} }

// at is the point of the edge at a height.
func (e edge) at(y float64) plane.Point { return at(e.At(y), y) }

// run is the edge from one height to another.
func (e edge) run(from, to float64) line {
	l := make(line, fine+1)
	for i := range l {
		l[i] = e.at(from + (to-from)*float64(i)/fine)
	}
	return l
}

// join puts lines behind one another.
func join(lines ...line) line { return slices.Concat(lines...) }

func (l line) mapped(f func(plane.Point) plane.Point) line { return line(plane.Ring(l).Map(f)) }

// reversed is the line run backwards.
func (l line) reversed() line { return line(plane.Ring(l).Reverse()) }

// mirrored is the line on the other side of the middle, run backwards.
func (l line) mirrored() line { return l.mapped(mirror).reversed() }

func mirror(p plane.Point) plane.Point { return at(-p.X, p.Y) }

// whole closes the right half of an outline, given from the top down, with its left half.
func (l line) whole() line { return join(l, l.mirrored()) }
