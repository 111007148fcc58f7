package sheet

import (
	"fmt"
	"math"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// Overlap is the strip that two neighbouring tiles both show: wide enough for adhesive tape
// of 12 or 19 mm along the seam, and to see both lines while the crosses are brought together.
const Overlap = 15.0

// cuts says how a piece is divided into tiles of equal size.
type cuts struct {
	turned        bool
	box           drawing.Box // round the piece as it lies
	rows, columns int
}

func (c cuts) count() int { return c.rows * c.columns }

// division finds how many tiles a piece needs, and whether fewer when it is turned by a quarter.
func division(pc piece.Piece, f drawing.Box) cuts {
	upright, lying := divided(pc, false, f), divided(pc, true, f)
	if lying.count() < upright.count() {
		return lying
	}
	return upright
}

func divided(pc piece.Piece, quarter bool, f drawing.Box) cuts {
	b := footprint(Item{Piece: pc, Turned: quarter})
	return cuts{quarter, b, needed(b.Height(), f.Height()), needed(b.Width(), f.Width())}
}

// needed is the number of overlapping stretches of paper that cover a length.
func needed(length, paper float64) int {
	if length <= paper {
		return 1
	}
	return int(math.Ceil((length - Overlap) / (paper - Overlap)))
}

func fits(pc piece.Piece, f drawing.Box) bool       { return divided(pc, false, f).count() == 1 }
func fitsTurned(pc piece.Piece, f drawing.Box) bool { return divided(pc, true, f).count() == 1 }

// core is the part of the piece that only one tile shows: from seam to seam.
func (c cuts) core(row, column int) drawing.Box {
	w, h := c.box.Width()/float64(c.columns), c.box.Height()/float64(c.rows)
	lo := plane.Point{X: c.box.Lo.X + w*float64(column), Y: c.box.Hi.Y - h*float64(row+1)}
	return drawing.Box{Lo: lo, Hi: lo.Add(plane.Point{X: w, Y: h})}
}

// shown is the core with half an overlap beyond every seam.
func (c cuts) shown(row, column int) drawing.Box {
	b := c.core(row, column)
	if column > 0 {
		b.Lo.X -= Overlap / 2
	}
	if column < c.columns-1 {
		b.Hi.X += Overlap / 2
	}
	if row < c.rows-1 {
		b.Lo.Y -= Overlap / 2
	}
	if row > 0 {
		b.Hi.Y += Overlap / 2
	}
	return b
}

// tiles makes the pages of one large piece; a tile that the piece does not reach is left out.
func tiles(p plan.Plan, number int, c cuts) []laid {
	pc := p.Pieces[number]
	printed := make([][]bool, c.rows)
	for r := range printed {
		printed[r] = make([]bool, c.columns)
		for k := range printed[r] {
			printed[r][k] = reaches(pc, c.turned, c.core(r, k))
		}
	}
	var pages []laid
	for r := range c.rows {
		for k := range c.columns {
			if printed[r][k] {
				pages = append(pages, laid{number, tilePage(p, number, c, Tile{Row: r, Column: k, Rows: c.rows, Columns: c.columns, Printed: printed})})
			}
		}
	}
	return pages
}

func tilePage(p plan.Plan, number int, c cuts, t Tile) Page {
	pc, shown := p.Pieces[number], c.shown(t.Row, t.Column)
	pg := Page{Width: p.Paper.Width, Height: pageHeight(p.Paper, shown.Height())}
	f := field(pg.Width, pg.Height)
	offset := f.Lo.Sub(shown.Lo)
	t.Core = c.core(t.Row, t.Column).Move(offset)
	pg.Tile = &t
	pg.Items = []Item{{
		Piece:  pc,
		Label:  labelWithin(pc, unturned(c.core(t.Row, t.Column).Grow(-crossArm), c.turned), c.turned),
		Turned: c.turned,
		Offset: offset,
		Clip:   shown.Move(offset),
	}}
	pg.Title = Title{
		Piece:    fmt.Sprintf("%s – tile %s of %d", named(pc, number, len(p.Pieces)), TileName(t.Row, t.Column), t.count()),
		Material: material(pc),
	}
	return pg
}

// count is the number of tiles that are printed.
func (t Tile) count() int {
	n := 0
	for _, row := range t.Printed {
		for _, p := range row {
			if p {
				n++
			}
		}
	}
	return n
}

// unturned is the box in the piece's own coordinates.
func unturned(b drawing.Box, quarter bool) drawing.Box {
	if !quarter {
		return b
	}
	return drawing.Empty().Round(plane.Point{X: b.Lo.Y, Y: -b.Lo.X}, plane.Point{X: b.Hi.Y, Y: -b.Hi.X})
}

// reaches reports whether any of the piece lies in a box of the paper.
func reaches(pc piece.Piece, quarter bool, box drawing.Box) bool {
	own := unturned(box, quarter)
	lines := []plane.Ring{pc.Outline}
	lines = append(lines, pc.Holes...)
	for _, l := range lines {
		if len(own.Cut(l, true)) > 0 {
			return true
		}
	}
	for _, m := range pc.Marks {
		if len(own.Cut(m.Points, m.Kind.Closed())) > 0 {
			return true
		}
	}
	return inside(pc, own.Centre())
}

// inside reports whether a point lies on the cloth: within the outline and in no hole.
func inside(pc piece.Piece, p plane.Point) bool {
	if !pc.Outline.Contains(p) {
		return false
	}
	for _, h := range pc.Holes {
		if h.Contains(p) {
			return false
		}
	}
	return true
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
