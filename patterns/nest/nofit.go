package nest

import (
	"math"

	"understructure/geometry/plane"
)

// nofit is the no-fit polygon of two shapes: the places of the second, measured from the first, in which
// they overlap (R. C. Art, "An approach to the two dimensional irregular cutting stock problem", 1966;
// J. A. Bennell, J. F. Oliveira, "The geometry of nesting problems: a tutorial", 2008). It is the
// union of the Minkowski sums of the parts of the one with the mirrored parts of the other, and is kept as that:
// convex parts need no union to be found, which is where such polygons go wrong.
type nofit struct {
	lo, hi plane.Point
	parts  []part
	n      int
	cells  []cell      // n rows of n columns over the box
	scale  plane.Point // cells in a millimetre
	runs   []int32     // where in sides each part of each cell ends
	sides  []side
}

// part is one convex part of a no-fit polygon and the box round it.
type part struct {
	lo, hi plane.Point
	sides  []side
}

// side is the half-plane x·p.X + y·p.Y < c; x, y is the outward normal, of length 1.
type side struct{ x, y, c float64 }

// scan is the depth, looked up in all parts.
func (f *nofit) scan(p plane.Point) float64 {
	deepest := hair / 10
parts:
	for i := range f.parts {
		q := &f.parts[i]
		if p.X <= q.lo.X || p.X >= q.hi.X || p.Y <= q.lo.Y || p.Y >= q.hi.Y {
			continue
		}
		d := math.Inf(1)
		for _, s := range q.sides {
			in := s.c - s.x*p.X - s.y*p.Y
			if in <= deepest {
				continue parts
			}
			d = min(d, in)
		}
		deepest = d
	}
	if deepest == hair/10 {
		return 0
	}
	return deepest
}

// hair is kept between pieces beyond the gap, so that rounding cannot make them overlap, mm; a tenth of it counts as no overlap.
const hair = 1e-6

// depth is how far the place p lies inside the deepest part: 0 where the shapes do not overlap.
// For convex shapes it is the shortest way apart, for others a lower bound of it.
func (f *nofit) depth(p plane.Point) float64 {
	x, y := p.X-f.lo.X, p.Y-f.lo.Y
	i, j := int(x*f.scale.X), int(y*f.scale.Y)
	if x <= 0 || y <= 0 || i >= f.n || j >= f.n {
		return 0
	}
	q := f.cells[j*f.n+i]
	if q.from == 0 {
		if q.to++; q.to < worthFilling {
			f.cells[j*f.n+i] = q
			return f.scan(p)
		}
		q = f.fill(i, j)
	}
	deepest, k := hair/10, q.first
parts:
	for _, end := range f.runs[q.from:q.to] {
		d := math.Inf(1)
		for _, s := range f.sides[k:end] {
			in := s.c - s.x*p.X - s.y*p.Y
			if in <= deepest {
				k = end
				continue parts
			}
			if in < d {
				d = in
			}
		}
		deepest, k = d, end
	}
	if deepest == hair/10 {
		return 0
	}
	return deepest
}

// mostCells is the number of rows and columns of cells that a many-sided no-fit polygon is divided into.
const mostCells = 32

// newNofit makes the no-fit polygon of b round a, both given by their convex parts, with a gap between them.
func newNofit(a, b []plane.Ring, gap float64) *nofit {
	var sums []plane.Ring
	for _, p := range a {
		for _, q := range b {
			sums = append(sums, minkowski(p, q.Map(func(t plane.Point) plane.Point { return plane.Point{X: -t.X, Y: -t.Y} })))
		}
	}
	sums = outermost(sums)
	f := &nofit{lo: plane.Point{X: math.Inf(1), Y: math.Inf(1)}, hi: plane.Point{X: math.Inf(-1), Y: math.Inf(-1)}}
	total := 0
	for _, s := range sums {
		p := part{sides: sidesOf(s, gap)}
		p.lo, p.hi = s.Bounds()
		p.lo, p.hi = plane.Point{X: p.lo.X - gap, Y: p.lo.Y - gap}, plane.Point{X: p.hi.X + gap, Y: p.hi.Y + gap}
		f.lo = plane.Point{X: min(f.lo.X, p.lo.X), Y: min(f.lo.Y, p.lo.Y)}
		f.hi = plane.Point{X: max(f.hi.X, p.hi.X), Y: max(f.hi.Y, p.hi.Y)}
		f.parts = append(f.parts, p)
		total += len(p.sides)
	}
	f.n = min(mostCells, 1+int(math.Sqrt(float64(total))))
	f.runs = make([]int32, 1) // no cell begins at 0
	f.cells = make([]cell, f.n*f.n)
	f.scale = plane.Point{X: float64(f.n) / (f.hi.X - f.lo.X), Y: float64(f.n) / (f.hi.Y - f.lo.Y)}
	return f
}
