package report

import (
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
)

// strip is a piece of a column that is not broken: a line of text, a row of a table, a drawing.
type strip struct {
	height float64
	draw   func(drawing.Canvas, drawing.Box) // nil for room alone
	keep   bool                              // stays in one column with the next strip
	head   []strip                           // is set again where this strip begins a column
}

// columnGutter is the room between two columns.
const columnGutter = 7.0

// flow sets strips in columns side by side, equally tall where they end, and goes on over the page where they are
// too many. It begins below all that is set already.
func (s *setter) flow(strips []strip, columns int) {
	if s.y < s.frame.Hi.Y {
		s.gap(tall(strips) - tall(trimmed(strips)))
	}
	for strips = trimmed(strips); len(strips) > 0; {
		free, whole := s.y-s.frame.Lo.Y, s.y == s.frame.Hi.Y
		set, rest := split(strips, columns, free, whole)
		if len(rest) > 0 && columns > 1 && free < scant {
			s.turn()
			continue
		}
		if len(rest) == 0 {
			set = levelled(strips, columns, free, whole)
		}
		s.place(set, columns)
		if strips = rest; len(rest) > 0 {
			s.turn()
		}
	}
}

// section names a section over the whole width, and keeps it with the next h millimetres.
func (s *setter) section(name string, h float64) {
	g := newGalley(1)
	g.heading(name)
	s.keep(tall(g.strips) + h)
	s.flow(g.strips, 1)
}

// scant is too little of a page to begin columns on that go on over it, in millimetres.
const scant = 15.0

// levelled are the columns as short as they can be.
func levelled(strips []strip, columns int, free float64, whole bool) [][]strip {
	best, _ := split(strips, columns, free, whole)
	for lo, hi := 0.0, free; hi-lo > 0.1; {
		h := (lo + hi) / 2
		if set, rest := split(strips, columns, h, false); len(rest) == 0 {
			best, hi = set, h
		} else {
			lo = h
		}
	}
	return best
}

// split fills columns of a height. On a whole page the first strips are set even where they are too tall.
func split(strips []strip, columns int, height float64, whole bool) (set [][]strip, rest []strip) {
	rest = strips
	for range columns {
		var column []strip
		column, rest = fill(trimmed(rest), height, whole)
		set = append(set, column)
	}
	return set, trimmed(rest)
}

func fill(strips []strip, height float64, whole bool) (column, rest []strip) {
	used := 0.0
	if len(strips) > 0 {
		column = append(column, strips[0].head...)
		used = tall(column)
	}
	heads := len(column)
	for len(strips) > 0 {
		n := glued(strips)
		h := tall(strips[:n])
		if used+h > height+1e-9 && strips[0].draw != nil {
			if !whole || len(column) > heads {
				break
			}
			n = 1
		}
		column, strips, used = append(column, strips[:n]...), strips[n:], used+h
	}
	if len(column) == heads {
		column = nil
	}
	return column, strips
}

// glued is how many strips from the first on stay in one column.
func glued(strips []strip) int {
	n := 1
	for n < len(strips) && strips[n-1].keep {
		n++
	}
	return n
}

func tall(strips []strip) float64 {
	h := 0.0
	for _, s := range strips {
		h += s.height
	}
	return h
}

// trimmed leaves away the room before the first strip: none is needed at the head of a column.
func trimmed(strips []strip) []strip {
	for len(strips) > 0 && strips[0].draw == nil {
		strips = strips[1:]
	}
	return strips
}

// place draws columns from where the page is free on.
func (s *setter) place(set [][]strip, columns int) {
	width := columnWidth(s.frame.Width(), columns)
	lowest := s.y
	for i, column := range set {
		x, y := s.frame.Lo.X+float64(i)*(width+columnGutter), s.y
		for _, each := range column {
			y -= each.height
			if each.draw != nil {
				b := drawing.Box{Lo: plane.Point{X: x, Y: y}, Hi: plane.Point{X: x + width, Y: y + each.height}}
				s.draw(func(c drawing.Canvas) { each.draw(c, b) })
			}
		}
		lowest = min(lowest, y)
	}
	s.y = lowest
}

func columnWidth(width float64, columns int) float64 {
	return (width - float64(columns-1)*columnGutter) / float64(columns)
}
