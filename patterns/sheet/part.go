package sheet

import (
	"cmp"
	"slices"

	"understructure/geometry/plane"
	"understructure/geometry/unit"
	"understructure/patterns/drawing"
	"understructure/patterns/nest"
	"understructure/patterns/piece"
)

// part is what is laid on paper as one: a whole piece, a tile of one or a panel of maps, not yet in its place.
type part struct {
	item  Item
	panel *Panel     // nil for a piece
	keeps nest.Piece // what it keeps free on the page
	lying Label      // of the item turned by a quarter, where it may be
}

const quarter = 90 * unit.Degree

// wholePart is a piece that fits on the field.
func wholePart(pc piece.Piece, twin string, f drawing.Box) part {
	it := Item{Piece: pc, Twin: twin, Turned: !fits(pc, false, f)}
	label, inside := it.written(extent(pc))
	p := part{item: it, keeps: nest.Piece{ID: pc.ID, Count: 1, Outline: closeTo(pc), Turns: []unit.Angle{turn(it.Turned)}}}
	for _, m := range pc.Marks {
		if sticksOut(m, pc) {
			p.keeps.Beside = append(p.keeps.Beside, drawing.Empty().Round(m.Points...).Grow(edge).Corners())
		}
	}
	if !inside {
		p.wordsBeside(f)
		return p
	}
	p.item.Label = label
	if !it.Turned && fits(pc, true, f) {
		it.Turned = true
		if label, inside := it.written(extent(pc)); inside {
			p.keeps.Turns, p.lying = append(p.keeps.Turns, quarter), label
		}
	}
	return p
}

// wordsBeside sets a piece's words below it, where there is room for them on the page.
func (p *part) wordsBeside(f drawing.Box) {
	it := &p.item
	it.Label = it.beside()
	if b := footprint(*it); b.Width() > f.Width() || b.Height() > f.Height() {
		it.Label = it.within(extent(it.Piece))
		return
	}
	for _, w := range it.Label.Words {
		p.keeps.Beside = append(p.keeps.Beside, w.Corners())
	}
}

// turn is the nest's word for a piece that is turned or not.
func turn(turned bool) unit.Angle {
	if turned {
		return quarter
	}
	return 0
}

// nearlyConvex is how much larger the hull of an outline may be for it to stand for the outline: convex shapes are laid
// many times faster, and little is lost.
const nearlyConvex = 1.1

// closeTo is the outline that a piece keeps free, simple even where the piece's own is not.
func closeTo(pc piece.Piece) plane.Ring {
	r := pc.CutLine()
	hull := r.Hull()
	if len(hull) < 3 || hull.Area() < 1 {
		return extent(pc).Corners()
	}
	if _, crosses := r.Crossing(); crosses || hull.Area() < nearlyConvex*r.Area() {
		return hull
	}
	return r
}

// sticksOut reports whether a mark reaches beyond the box round its piece.
func sticksOut(m piece.Mark, pc piece.Piece) bool {
	b := drawing.Empty().Round(pc.CutLine()...).Grow(edge / 2)
	return slices.ContainsFunc(m.Points, func(q plane.Point) bool { return !b.Contains(q) })
}

// tileParts are the tiles of a piece that does not fit; those with nothing on them are left out.
func tileParts(pc piece.Piece, twin string, f drawing.Box) []part {
	c := cut(pc, f)
	grid := &Grid{Rows: c.rows(), Columns: c.columns(), Pages: make([][]int, c.rows()), across: c.x, up: c.y}
	var all []part
	for r := range c.rows() {
		grid.Pages[r] = make([]int, c.columns())
		for k := range c.columns() {
			if c.reach[r][k] {
				all = append(all, c.part(twin, r, k, grid, f))
			}
		}
	}
	return all
}

// part is one tile, with what lies in it and beside it.
func (c *cuts) part(twin string, r, k int, grid *Grid, f drawing.Box) part {
	pc, shown, core := c.as.piece, c.shown(r, k), c.core(r, k)
	t := &Tile{Row: r, Column: k, Core: core, Seams: c.seams(r, k), Grid: grid}
	it := Item{Piece: pc, Twin: twin, Turned: c.as.turned, Clip: shown, Tile: t}
	it.Label = it.within(unturned(core.Grow(-crossArm), it.Turned))
	keep := c.as.within(shown)
	for _, s := range t.Seams {
		for _, q := range s.keeps() {
			if shown.Contains(q) {
				keep = append(keep, q)
			}
		}
	}
	it.nameBeside(drawing.Empty().Round(keep...), f)
	for _, w := range it.Label.Words {
		for _, q := range w.Corners() {
			keep = append(keep, turned(q, it.Turned))
		}
	}
	hull, box := plane.Ring(keep).Hull(), drawing.Empty().Round(keep...)
	if len(hull) < 3 || hull.Area() < 1 {
		box = box.Grow(edge / 2)
		hull = box.Corners()
	}
	if box.Width() > f.Width()-2*nest.MostSlack || box.Height() > f.Height()-2*nest.MostSlack {
		hull = box.Corners() // a simpler outline would reach over the field; this one stays as it is
	}
	return part{item: it, keeps: nest.Piece{ID: it.Name(), Count: 1, Outline: hull}}
}

// nameBeside says which tile it is below or beside what the tile shows, where the name found no room inside.
func (it *Item) nameBeside(shown drawing.Box, f drawing.Box) {
	name := it.Name()
	if slices.ContainsFunc(it.Label.Words, func(w drawing.Word) bool { return w.Text == name && w.Bold }) {
		return
	}
	w := drawing.Word{Text: name, Size: besideSize, Bold: true}
	const off = 2.5
	switch {
	case shown.Height()+off+w.Size <= f.Height() && w.Width() <= f.Width():
		w.At = plane.Point{X: shown.Lo.X, Y: shown.Lo.Y - off - w.Size/2}
	case shown.Width()+off+w.Size <= f.Width() && w.Width() <= f.Height():
		w.At, w.Turn = plane.Point{X: shown.Hi.X + off + w.Size/2, Y: shown.Lo.Y}, turnOf(true)
	default:
		return // the title block names it
	}
	w.At, w.Turn = unturnedPoint(w.At, it.Turned), w.Turn-turnOf(it.Turned)
	it.Label.Words = append(it.Label.Words, w)
}

// placed is the part on its page.
func (p part) placed(at nest.Placement, f drawing.Box) Item {
	it := p.item
	it.Offset = at.Move
	if it.Tile != nil {
		t := *it.Tile
		t.Core = t.Core.Move(it.Offset)
		t.Seams = slices.Clone(t.Seams)
		for i := range t.Seams {
			t.Seams[i] = t.Seams[i].moved(it.Offset)
		}
		it.Tile, it.Clip = &t, it.Clip.Move(it.Offset)
		return it
	}
	it.Clip = f.Grow(edge) // whole lines, also of a piece that lies along the edge
	if at.Turn != 0 && !it.Turned {
		it.Turned, it.Label = true, p.lying
	}
	return it
}

// inOrder sorts items by piece, and tiles from the top.
func inOrder(numbers map[string]int) func(a, b Item) int {
	return func(a, b Item) int {
		if c := cmp.Compare(numbers[a.Piece.ID], numbers[b.Piece.ID]); c != 0 || a.Tile == nil || b.Tile == nil {
			return c
		}
		return cmp.Or(a.Tile.Row-b.Tile.Row, a.Tile.Column-b.Tile.Column)
	}
}
