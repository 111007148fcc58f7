package report

import (
	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
)

// column is one column of a table. Numbers stand flush right.
type column struct {
	head   string
	width  float64 // millimetres
	number bool
}

// cell is what stands in one column of a row.
type cell struct {
	text string
	bold bool
}

// The pitch of a table's rows, and the room between two columns, in millimetres.
const (
	rowHeight = 5.0
	columnGap = 3.0
)

// table sets rows under a head that is repeated on every page. A text that is too long for
// its column goes on in a second line where it is not a number, and is shortened after the third.
func (s *setter) table(columns []column, rows [][]cell) {
	head := make([]cell, len(columns))
	for i, c := range columns {
		head[i] = cell{text: c.head}
	}
	s.keep(3 * rowHeight)
	s.head(columns, head)
	for _, r := range rows {
		lines := broken(columns, r, textSize-0.2)
		h := rowHeight + float64(tallest(lines)-1)*(textSize-0.2)*1.25
		page := len(s.pages)
		s.keep(h)
		if len(s.pages) != page {
			s.head(columns, head)
		}
		b := s.room(h)
		s.draw(func(c drawing.Canvas) {
			set(c, columns, r, lines, b, textSize-0.2, drawing.Black)
			rule(c, b.Lo.X, b.Hi.X, b.Lo.Y)
		})
	}
	s.gap(2)
}

func (s *setter) head(columns []column, head []cell) {
	lines := broken(columns, head, smallSize)
	b := s.room(float64(tallest(lines))*smallSize*1.25 + 1.8)
	s.draw(func(c drawing.Canvas) {
		set(c, columns, head, lines, b, smallSize, drawing.Grey)
		c.Line([]plane.Point{b.Lo, {X: b.Hi.X, Y: b.Lo.Y}}, false, drawing.Pen{Width: 0.3})
	})
}

// mostLines is how many lines one cell may have.
const mostLines = 3

func broken(columns []column, row []cell, size float64) [][]string {
	lines := make([][]string, len(row))
	for i, k := range row {
		face, width := fonts.Of(k.bold), columns[i].width-columnGap
		lines[i] = face.Wrap(fonts.Readable(k.text), size, width)
		if n := len(lines[i]); n > mostLines {
			last := face.Shorten(lines[i][mostLines-1]+" …", size, width)
			lines[i] = append(lines[i][:mostLines-1], last)
		}
	}
	return lines
}

func tallest(lines [][]string) int {
	n := 1
	for _, l := range lines {
		n = max(n, len(l))
	}
	return n
}

func set(c drawing.Canvas, columns []column, row []cell, lines [][]string, b drawing.Box, size float64, ink drawing.Colour) {
	x := b.Lo.X
	for i, k := range columns {
		for n, text := range lines[i] {
			w := drawing.Word{Text: text, Size: size, Bold: row[i].bold, Colour: ink,
				At: plane.Point{X: x, Y: b.Hi.Y - 1.2 - fonts.CapHeight*size - float64(n)*size*1.25}}
			if k.number {
				w.At.X += k.width - columnGap
				w = w.Back(1)
			}
			c.Word(w)
		}
		x += k.width
	}
}
