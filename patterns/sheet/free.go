package sheet

import (
	"cmp"
	"math"
	"slices"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/piece"
)

// free is a grid over a piece that knows where words may stand.
type free struct {
	box           drawing.Box
	cell          float64
	columns, rows int
	taken         []use
	base          float64 // the turn of the piece on its page, so that words are set to be read there
}

// use is what a cell holds; words stand on empty cells only.
type use byte

const (
	empty   use = iota
	covered     // by a mark or by another word
	outside     // not on the cloth, or on its edge
)

// The grid is 1 mm fine, coarser on pieces longer than 400 mm; letters are 2 mm high and more.
const (
	finest    = 1.0
	mostCells = 400
)

func newFree(pc piece.Piece, within drawing.Box, base float64) *free {
	b := extent(pc)
	b = drawing.Box{
		Lo: plane.Point{X: math.Max(b.Lo.X, within.Lo.X), Y: math.Max(b.Lo.Y, within.Lo.Y)},
		Hi: plane.Point{X: math.Min(b.Hi.X, within.Hi.X), Y: math.Min(b.Hi.Y, within.Hi.Y)},
	}
	f := &free{box: b, base: base, cell: math.Max(finest, math.Max(b.Width(), b.Height())/mostCells)}
	f.columns, f.rows = int(math.Ceil(b.Width()/f.cell)), int(math.Ceil(b.Height()/f.cell))
	f.columns, f.rows = max(f.columns, 1), max(f.rows, 1)
	f.taken = make([]use, f.columns*f.rows)
	edges := append([]plane.Ring{pc.Outline}, pc.Holes...)
	for row := range f.rows {
		f.sweep(row, edges)
	}
	for _, m := range pc.Marks {
		f.markUp(pc, m)
	}
	for _, e := range edges {
		f.trace(e, true, outside)
	}
	return f
}

// markUp keeps words off what is drawn for a mark.
func (f *free) markUp(pc piece.Piece, m piece.Mark) {
	switch m.Kind {
	case piece.Pin:
		for _, p := range m.Points {
			f.take(p, 3*pinRadius, 3*pinRadius, 0)
		}
	case piece.Feather:
		for _, w := range waves(pc, m.Points) {
			f.trace(w, false, covered)
		}
	case piece.Up:
		for i := 1; i < len(m.Points); i++ {
			tail, tip := m.Points[i-1], m.Points[i]
			d := tip.Sub(tail)
			f.take(tail.Lerp(tip, 0.5), d.Norm(), 2*arrowHalf+1.5, math.Atan2(d.Y, d.X))
		}
	default:
		f.trace(m.Points, m.Kind.Closed(), covered)
	}
}

// sweep finds the cells of one row that are not on the cloth, by counting the edges to their left.
func (f *free) sweep(row int, edges []plane.Ring) {
	y := f.box.Lo.Y + (float64(row)+0.5)*f.cell
	var xs []float64
	for _, r := range edges {
		for i, a := range r {
			if b := r[(i+1)%len(r)]; (a.Y > y) != (b.Y > y) {
				xs = append(xs, a.X+(y-a.Y)*(b.X-a.X)/(b.Y-a.Y))
			}
		}
	}
	slices.Sort(xs)
	k := 0
	for c := range f.columns {
		x := f.box.Lo.X + (float64(c)+0.5)*f.cell
		for k < len(xs) && xs[k] <= x {
			k++
		}
		if k%2 == 0 {
			f.taken[row*f.columns+c] = outside
		}
	}
}

// trace marks every cell that a line passes.
func (f *free) trace(line []plane.Point, closed bool, as use) {
	for _, run := range f.box.Cut(line, closed) {
		for i := 1; i < len(run); i++ {
			steps := int(math.Ceil(run[i].Dist(run[i-1])/f.cell*2)) + 1
			for s := range steps + 1 {
				f.mark(run[i-1].Lerp(run[i], float64(s)/float64(steps)), as)
			}
		}
	}
}

func (f *free) mark(p plane.Point, as use) {
	if i, ok := f.at(p); ok && f.taken[i] < as {
		f.taken[i] = as
	}
}

func (f *free) at(p plane.Point) (int, bool) {
	c, r := int(math.Floor((p.X-f.box.Lo.X)/f.cell)), int(math.Floor((p.Y-f.box.Lo.Y)/f.cell))
	return r*f.columns + c, c >= 0 && c < f.columns && r >= 0 && r < f.rows
}

// each calls do for places less than a cell apart all over a turned rectangle, until do says no.
func (f *free) each(centre plane.Point, w, h, turn float64, do func(plane.Point) bool) bool {
	a := plane.Point{X: math.Cos(turn), Y: math.Sin(turn)}
	b := plane.Point{X: -a.Y, Y: a.X}
	n, m := int(math.Ceil(w/f.cell))+1, int(math.Ceil(h/f.cell))+1
	for i := range n + 1 {
		for j := range m + 1 {
			s, t := float64(i)/float64(n)-0.5, float64(j)/float64(m)-0.5
			if !do(centre.Add(a.Mul(s * w)).Add(b.Mul(t * h))) {
				return false
			}
		}
	}
	return true
}

// holds reports whether a turned rectangle covers empty cells only.
func (f *free) holds(centre plane.Point, w, h, turn float64) bool {
	return f.each(centre, w, h, turn, func(p plane.Point) bool {
		i, ok := f.at(p)
		return ok && f.taken[i] == empty
	})
}

// take keeps later words off a turned rectangle.
func (f *free) take(centre plane.Point, w, h, turn float64) {
	f.each(centre, w, h, turn, func(p plane.Point) bool {
		f.mark(p, covered)
		return true
	})
}

// places are the middles of some two thousand empty cells, the nearest to p first.
func (f *free) places(p plane.Point) []plane.Point {
	stride := max(1, int(math.Sqrt(float64(f.columns*f.rows)/2000)))
	type place struct {
		at  plane.Point
		far float64
	}
	var all []place
	for r := stride / 2; r < f.rows; r += stride {
		for c := stride / 2; c < f.columns; c += stride {
			if f.taken[r*f.columns+c] == empty {
				at := f.box.Lo.Add(plane.Point{X: (float64(c) + 0.5) * f.cell, Y: (float64(r) + 0.5) * f.cell})
				all = append(all, place{at, at.Dist(p)})
			}
		}
	}
	slices.SortStableFunc(all, func(a, b place) int { return cmp.Compare(a.far, b.far) })
	out := make([]plane.Point, len(all))
	for i, q := range all {
		out[i] = q.at
	}
	return out
}
