package nest

import (
	"math"
	"slices"

	"understructure/geometry/plane"
)

// nofit is the no-fit polygon of two shapes: the places of the second, measured from the first, in which
// they overlap (R. C. Art, "An approach to the two dimensional irregular cutting stock problem", 1966;
// J. A. Bennell, J. F. Oliveira, "The geometry of nesting problems: a tutorial", 2008). It is the
// union of the Minkowski sums of the parts of the one with the mirrored parts of the other, and is kept as that:
// convex parts need no union to be found, which is where such polygons go wrong.
type nofit struct {
	lo, hi plane.Point
	parts  [][]side
	n      int
	cells  []cell      // n rows of n columns over the box
	scale  plane.Point // cells in a millimetre
	runs   []int32     // where in sides each part of each cell ends
	sides  []side
}

// side is the half-plane x·p.X + y·p.Y < c; x, y is the outward normal, of length 1.
type side struct{ x, y, c float64 }

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
		lo, hi := s.Bounds()
		f.parts = append(f.parts, sidesOf(s, gap))
		total += len(f.parts[len(f.parts)-1])
		f.lo = plane.Point{X: math.Min(f.lo.X, lo.X-gap), Y: math.Min(f.lo.Y, lo.Y-gap)}
		f.hi = plane.Point{X: math.Max(f.hi.X, hi.X+gap), Y: math.Max(f.hi.Y, hi.Y+gap)}
	}
	f.n = min(mostCells, 1+int(math.Sqrt(float64(total))))
	f.runs = make([]int32, 1) // no cell begins at 0
	f.cells = make([]cell, f.n*f.n)
	f.scale = plane.Point{X: float64(f.n) / (f.hi.X - f.lo.X), Y: float64(f.n) / (f.hi.Y - f.lo.Y)}
	return f
}

// minkowski adds two convex, counter-clockwise rings: their sides, put in the order of their directions.
func minkowski(p, q plane.Ring) plane.Ring {
	p, q = lowestFirst(p), lowestFirst(q)
	out := make(plane.Ring, 0, len(p)+len(q))
	for i, j := 0, 0; i < len(p) || j < len(q); {
		out = append(out, p[i%len(p)].Add(q[j%len(q)]))
		u := p[(i+1)%len(p)].Sub(p[i%len(p)])
		v := q[(j+1)%len(q)].Sub(q[j%len(q)])
		switch turn := u.Cross(v); {
		case i == len(p):
			j++
		case j == len(q):
			i++
		case turn > 0:
			i++
		case turn < 0:
			j++
		default:
			i, j = i+1, j+1
		}
	}
	return out
}

// lowestFirst begins a ring at its lowest corner, the leftmost of those.
func lowestFirst(r plane.Ring) plane.Ring {
	k := 0
	for i, p := range r {
		if p.Y < r[k].Y || p.Y == r[k].Y && p.X < r[k].X {
			k = i
		}
	}
	return append(slices.Clone(r[k:]), r[:k]...)
}

// outermost leaves out convex rings that lie within another, the largest first.
func outermost(rings []plane.Ring) []plane.Ring {
	slices.SortStableFunc(rings, func(a, b plane.Ring) int {
		switch x, y := a.Area(), b.Area(); {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
	var out []plane.Ring
	for _, r := range rings {
		if !slices.ContainsFunc(out, func(o plane.Ring) bool { return holds(o, r) }) {
			out = append(out, r)
		}
	}
	return out
}

// holds reports whether a convex ring holds all corners of another.
func holds(convex, r plane.Ring) bool {
	for i, a := range convex {
		u := convex[(i+1)%len(convex)].Sub(a)
		for _, p := range r {
			if u.Cross(p.Sub(a)) < 0 {
				return false
			}
		}
	}
	return true
}

// sidesOf are the half-planes of a convex ring moved outward by the gap. Where the ring turns by more than
// an eighth of a turn the corner is cut by more sides, so that it lies at most 8 % of the gap too far out.
func sidesOf(r plane.Ring, gap float64) []side {
	const sharp = math.Pi / 4
	var out []side
	n := len(r)
	for i, p := range r {
		u, v := p.Sub(r[(i+n-1)%n]), r[(i+1)%n].Sub(p)
		if v.Norm() == 0 {
			continue
		}
		if gap > 0 {
			turn := math.Atan2(u.Cross(v), u.Dot(v))
			more := int(math.Ceil(turn/sharp)) - 1
			from := math.Atan2(-u.X, u.Y) // of the outward normal (u.Y, -u.X)
			for k := range more {
				s, c := math.Sincos(from + turn*float64(k+1)/float64(more+1))
				out = append(out, side{c, s, c*p.X + s*p.Y + gap})
			}
		}
		l := v.Norm()
		x, y := v.Y/l, -v.X/l
		out = append(out, side{x, y, x*p.X + y*p.Y + gap})
	}
	return out
}
