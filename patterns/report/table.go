package report

import (
	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
)

// column is one column of a table. Numbers stand flush right.
type column struct {
	head   string
	width  float64 // a part of the table's width
	number bool
}

// cell is what stands in one column of a row.
type cell struct {
	text string
	bold bool
}

// The distance of lines in a cell and the room above and below them, and between two columns, in millimetres.
const (
	tableLine = tableSize * 1.22
	rowRoom   = 0.8
	columnGap = 2.0
)

// mostLines is how many lines one cell may have: no more than fit on a page with its head.
const mostLines = 60

// table sets rows under a head that is repeated in every column of the page. A text that is too long for its column
// goes on in further lines.
func (g *galley) table(columns []column, rows [][]cell) {
	columns = g.fitted(columns)
	head := make([]cell, len(columns))
	for i, c := range columns {
		head[i] = cell{text: c.head}
	}
	top := g.row(columns, head, drawing.Grey, drawing.Pen{Width: 0.25})
	top.keep = true
	g.strips = append(g.strips, top)
	for i, r := range rows {
		row := g.row(columns, r, drawing.Black, hair)
		row.head = []strip{top}
		row.keep = i == 0 && len(rows) > 1 || i == len(rows)-2
		g.strips = append(g.strips, row)
	}
	g.gap(1.4)
}

// fitted are the columns, together as wide as the galley.
func (g *galley) fitted(columns []column) []column {
	sum := 0.0
	for _, c := range columns {
		sum += c.width
	}
	out := append([]column{}, columns...)
	for i := range out {
		out[i].width *= (g.width + columnGap) / sum // the last needs no room after it
	}
	return out
}

func (g *galley) row(columns []column, row []cell, ink drawing.Colour, under drawing.Pen) strip {
	lines := broken(columns, row)
	most := 1
	for _, l := range lines {
		most = max(most, len(l))
	}
	return strip{height: float64(most)*tableLine + rowRoom, draw: func(c drawing.Canvas, b drawing.Box) {
		set(c, columns, row, lines, b, ink)
		c.Line([]plane.Point{b.Lo, {X: b.Hi.X, Y: b.Lo.Y}}, false, under)
	}}
}

func broken(columns []column, row []cell) [][]string {
	lines := make([][]string, len(row))
	for i, k := range row {
		face, width := fonts.Of(k.bold), columns[i].width-columnGap
		lines[i] = face.Wrap(fonts.Readable(k.text), tableSize, width)
		if n := len(lines[i]); n > mostLines {
			last := face.Shorten(lines[i][mostLines-1]+" …", tableSize, width)
			lines[i] = append(lines[i][:mostLines-1], last)
		}
	}
	return lines
}

func set(c drawing.Canvas, columns []column, row []cell, lines [][]string, b drawing.Box, ink drawing.Colour) {
	x := b.Lo.X
	for i, k := range columns {
		for n, text := range lines[i] {
			w := drawing.Word{Text: text, Size: tableSize, Bold: row[i].bold, Colour: ink,
				At: plane.Point{X: x, Y: b.Hi.Y - 0.65 - fonts.CapHeight*tableSize - float64(n)*tableLine}}
			if k.number {
				w.At.X += k.width - columnGap
				w = w.Back(1)
			}
			c.Word(w)
		}
		x += k.width
	}
}
