package nest

import (
	"cmp"
	"math"
	"slices"

	"understructure/geometry/plane"
)

// cell is a small box of a no-fit polygon and what can matter in it: the sides of the parts that
// reach into it, less those that lie behind others everywhere in it. It is filled when it has been entered often enough
// for that to pay.
type cell struct {
	from, to int32 // its parts in nofit.runs; before it is filled, 0 and how often it was entered
	first    int32 // its first side in nofit.sides
}

// worthFilling is after how many entries a cell is filled, which takes as long as some dozens of scans.
const worthFilling = 32

// run is one part as seen from a cell: its sides that matter, and bounds of its depth in the cell.
type run struct {
	sides     []side
	low, high float64
}

// fill looks up what can matter in a cell.
func (f *nofit) fill(i, j int) cell {
	// A little wider than the cell, so that rounding cannot put a place outside its own.
	const more = 1e-9
	x0, x1 := f.lo.X+(float64(i)-more)/f.scale.X, f.lo.X+(float64(i+1)+more)/f.scale.X
	y0, y1 := f.lo.Y+(float64(j)-more)/f.scale.Y, f.lo.Y+(float64(j+1)+more)/f.scale.Y
	var runs []run
	var lows []float64
	floor := hair / 10
	for i := range f.parts {
		p := &f.parts[i]
		if x1 <= p.lo.X || x0 >= p.hi.X || y1 <= p.lo.Y || y0 >= p.hi.Y {
			continue
		}
		r := run{low: math.Inf(1), high: math.Inf(1)}
		lows = lows[:0]
		for _, s := range p.sides {
			low, high := s.bounds(x0, x1, y0, y1)
			lows = append(lows, low)
			r.low, r.high = min(r.low, low), min(r.high, high)
		}
		if r.high <= floor {
			continue
		}
		floor = max(floor, r.low)
		for k, s := range p.sides {
			if lows[k] <= r.high {
				r.sides = append(r.sides, s)
			}
		}
		runs = append(runs, r)
	}
	slices.SortStableFunc(runs, func(a, b run) int { return cmp.Compare(b.low+b.high, a.low+a.high) })
	if floor > hair/10 {
		if s, ok := f.flat(x0, x1, y0, y1); ok {
			runs = append(runs[:0], run{sides: []side{s}, low: floor, high: floor})
		}
	}
	q := cell{from: int32(len(f.runs)), first: int32(len(f.sides))}
	for _, r := range runs {
		if r.high <= floor && r.low < floor {
			continue
		}
		f.sides = append(f.sides, r.sides...)
		f.runs = append(f.runs, int32(len(f.sides)))
	}
	q.to = int32(len(f.runs))
	f.cells[j*f.n+i] = q
	return q
}

// bounds are the least and the greatest distance inside the half-plane over a box.
func (s side) bounds(x0, x1, y0, y1 float64) (low, high float64) {
	low, high = s.c, s.c
	if s.x > 0 {
		low, high = low-s.x*x1, high-s.x*x0
	} else {
		low, high = low-s.x*x0, high-s.x*x1
	}
	if s.y > 0 {
		return low - s.y*y1, high - s.y*y0
	}
	return low - s.y*y0, high - s.y*y1
}

// flatness is how far a plane may be off in a cell, as a part of the least depth there. Deep down only the way
// out matters, not the exact depth; where shapes just touch, and overlap is told from none, sides are kept.
const flatness = 0.2

// flat fits a plane to the depth in a cell that lies all inside.
func (f *nofit) flat(x0, x1, y0, y1 float64) (side, bool) {
	a, b, c, d := f.scan(plane.Point{X: x0, Y: y0}), f.scan(plane.Point{X: x1, Y: y0}), f.scan(plane.Point{X: x0, Y: y1}), f.scan(plane.Point{X: x1, Y: y1})
	gx, gy := (b+d-a-c)/(2*(x1-x0)), (c+d-a-b)/(2*(y1-y0))
	mid := (a + b + c + d) / 4
	x, y := (x0+x1)/2, (y0+y1)/2
	off := math.Abs(mid-f.scan(plane.Point{X: x, Y: y})) + math.Abs(a+d-b-c)/4
	return side{-gx, -gy, mid - gx*x - gy*y}, off < flatness*min(a, b, c, d)
}
