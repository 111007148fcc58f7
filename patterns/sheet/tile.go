package sheet

import (
	"fmt"
	"math"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/piece"
)

// Overlap is the strip that two neighbouring tiles both show: wide enough for adhesive tape
// of 12 or 19 mm along the seam, and to see both lines while the crosses are brought together.
const Overlap = 15.0

// cuts says how a piece is divided into tiles: at these places across and up, the outer edges among them.
type cuts struct {
	as    lying
	x, y  []float64 // rising
	reach [][]bool  // by row, from the top, and column: whether the tile has anything on it
}

// lying is a piece as it lies on paper, turned or not.
type lying struct {
	piece  piece.Piece
	turned bool
	box    drawing.Box // round it and its marks
	cloth  plane.Ring  // the cut line
	lines  []stroke    // all that is drawn of it
}

type stroke struct {
	points []plane.Point
	closed bool
}

func laidDown(pc piece.Piece, quarter bool) lying {
	lie := func(r []plane.Point) []plane.Point {
		return plane.Ring(r).Map(func(p plane.Point) plane.Point { return turned(p, quarter) })
	}
	l := lying{piece: pc, turned: quarter, cloth: lie(pc.CutLine())}
	l.lines = append(l.lines, stroke{l.cloth, true})
	for _, h := range pc.Holes {
		l.lines = append(l.lines, stroke{lie(h), true})
	}
	for _, m := range pc.Marks {
		if m.Kind != piece.Allowance {
			l.lines = append(l.lines, stroke{lie(m.Points), m.Kind.Closed()})
		}
	}
	l.box = footprint(Item{Piece: pc, Turned: quarter})
	return l
}

// within are the corners of what a box shows of a piece: of its lines, and of the cloth between them.
func (l lying) within(box drawing.Box) []plane.Point {
	var all []plane.Point
	for _, s := range l.lines {
		for _, run := range box.Cut(s.points, s.closed) {
			all = append(all, run...)
		}
	}
	for _, q := range append(box.Corners(), box.Centre()) {
		if l.covers(q) {
			all = append(all, q)
		}
	}
	return all
}

// covers reports whether a place lies on the cloth: within the cut line and in no hole.
func (l lying) covers(p plane.Point) bool { return inside(l.piece, unturnedPoint(p, l.turned)) }

// inside reports whether a point lies on the cloth: within the cut line and in no hole.
func inside(pc piece.Piece, p plane.Point) bool {
	if !pc.CutLine().Contains(p) {
		return false
	}
	for _, h := range pc.Holes {
		if h.Contains(p) {
			return false
		}
	}
	return true
}

// unturnedPoint undoes turned.
func unturnedPoint(p plane.Point, quarter bool) plane.Point {
	if quarter {
		return plane.Point{X: p.Y, Y: -p.X}
	}
	return p
}

// unturned is the box in the piece's own coordinates.
func unturned(b drawing.Box, quarter bool) drawing.Box {
	return drawing.Empty().Round(unturnedPoint(b.Lo, quarter), unturnedPoint(b.Hi, quarter))
}

// divided is how many rows and columns of tiles hold a piece.
func divided(pc piece.Piece, quarter bool, f drawing.Box) (rows, columns int) {
	b := footprint(Item{Piece: pc, Turned: quarter})
	return needed(b.Height(), f.Height()), needed(b.Width(), f.Width())
}

// needed is the number of overlapping stretches of paper that cover a length.
func needed(length, paper float64) int {
	if length <= paper {
		return 1
	}
	return int(math.Ceil((length - Overlap) / (paper - Overlap)))
}

func fits(pc piece.Piece, quarter bool, f drawing.Box) bool {
	rows, columns := divided(pc, quarter, f)
	return rows*columns == 1
}

// The least that a tile should show of a piece, and what it had better show for it not to be mostly overlap, mm.
const sliver, narrow = 2.0, 20.0

// cut divides a piece so that as few tiles as can be have anything on them, and as few of these a sliver; upright
// where it is no worse.
func cut(pc piece.Piece, f drawing.Box) cuts {
	var best cuts
	worst := math.MaxInt
	for _, quarter := range []bool{false, true} {
		as := laidDown(pc, quarter)
		rows, columns := divided(pc, quarter, f)
		for _, x := range places(as.box.Lo.X, as.box.Hi.X, f.Width(), columns) {
			for _, y := range places(as.box.Lo.Y, as.box.Hi.Y, f.Height(), rows) {
				c := cuts{as: as, x: x, y: y}
				if bad := c.count(); bad < worst {
					best, worst = c, bad
				}
			}
		}
	}
	return best
}

// places are the ways to cut a length into n stretches that fit on paper with their overlaps: full ones from its beginning and what
// is left over at its end, where it shares a page with something else; the other way round; and some between.
func places(lo, hi, paper float64, n int) [][]float64 {
	room := func(k int) float64 { // for the core of stretch k
		r := paper
		if k > 0 {
			r -= Overlap / 2
		}
		if k < n-1 {
			r -= Overlap / 2
		}
		return r
	}
	total := 0.0
	for k := range n {
		total += room(k)
	}
	if n == 1 {
		return [][]float64{{lo, hi}}
	}
	var all [][]float64
	for _, back := range []float64{0, 1, 0.5, 0.25, 0.75} {
		cuts, at := []float64{lo}, lo-back*(total-(hi-lo))
		for k := range n - 1 {
			at += room(k)
			cuts = append(cuts, at)
		}
		all = append(all, append(cuts, hi))
	}
	return all
}

func (c *cuts) rows() int    { return len(c.y) - 1 }
func (c *cuts) columns() int { return len(c.x) - 1 }

// count finds the tiles that have anything on them, and returns how bad that is: by their number, of those by the number of
// slivers, and then of the narrow ones.
func (c *cuts) count() (bad int) {
	c.reach = make([][]bool, c.rows())
	for r := range c.reach {
		c.reach[r] = make([]bool, c.columns())
		for k := range c.reach[r] {
			shown := c.as.within(c.core(r, k))
			if len(shown) == 0 {
				continue
			}
			c.reach[r][k] = true
			bad += 1_000_000
			b := drawing.Empty().Round(shown...)
			switch least := math.Min(b.Width(), b.Height()); {
			case least < sliver:
				bad += 1000
			case least < narrow:
				bad++
			}
		}
	}
	return bad
}

// core is the part of the piece that only one tile shows: from seam to seam.
func (c *cuts) core(row, column int) drawing.Box {
	up := c.rows() - 1 - row
	return drawing.Box{Lo: plane.Point{X: c.x[column], Y: c.y[up]}, Hi: plane.Point{X: c.x[column+1], Y: c.y[up+1]}}
}

// shown is the core with half an overlap beyond every seam.
func (c *cuts) shown(row, column int) drawing.Box {
	b := c.core(row, column)
	if column > 0 {
		b.Lo.X -= Overlap / 2
	}
	if column < c.columns()-1 {
		b.Hi.X += Overlap / 2
	}
	if row < c.rows()-1 {
		b.Lo.Y -= Overlap / 2
	}
	if row > 0 {
		b.Hi.Y += Overlap / 2
	}
	return b
}

// TileName is a letter for the row, from the top, and a number for the column, from the left: "A1".
// After Z come AA, AB and so on.
func TileName(row, column int) string {
	letters := ""
	for n := row + 1; n > 0; n = (n - 1) / 26 {
		letters = string(rune('A'+(n-1)%26)) + letters
	}
	return fmt.Sprintf("%s%d", letters, column+1)
}
