package leaf

import (
	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
)

// Field is a label before a line to write on, with what is known already.
func Field(c drawing.Canvas, label, known string, from, to, y float64) {
	w := Word(label, Small, from, y+0.8)
	w.Colour = drawing.Grey
	c.Word(w)
	start := from + w.Width() + 1.5
	Rule(c, start, to, y)
	if known != "" {
		c.Word(Word(known, Text+0.3, start+1, y+0.9).Fit(to - start - 2))
	}
}

// Ticks is a question with boxes to tick, the answer that is known ticked; it returns where the next may begin.
func Ticks(c drawing.Canvas, question string, answers []string, known string, x, y float64) float64 {
	const side = 3.2
	q := Word(question, Small, x, y)
	q.Colour = drawing.Grey
	c.Word(q)
	if question != "" {
		x += q.Width() + 3
	}
	for _, a := range answers {
		b := drawing.Box{Lo: plane.Point{X: x, Y: y - 0.75}, Hi: plane.Point{X: x + side, Y: y - 0.75 + side}}
		c.Line(b.Corners(), true, Fine)
		if a == known && known != "" {
			k := b.Grow(-0.6).Corners()
			c.Line([]plane.Point{k[0], k[2]}, false, Firm)
			c.Line([]plane.Point{k[1], k[3]}, false, Firm)
		}
		w := Word(a, Small, b.Hi.X+1.2, y)
		c.Word(w)
		x = w.At.X + w.Width() + 4
	}
	return x + 3
}

// Column is one column of a table. Numbers stand flush right.
type Column struct {
	Head   string
	Width  float64
	Number bool
}

// Table rules a table from y down: heads of one line or two, then rows of one height, each with its cells or empty to be
// filled in, and the row that counts in bold, -1 for none. It returns where it ends.
func Table(c drawing.Canvas, columns []Column, rows [][]string, pitch float64, bold int, x, y float64) float64 {
	lines, tall := make([][]string, len(columns)), 1
	to := x
	for i, k := range columns {
		lines[i] = fonts.Regular.Wrap(k.Head, Small, k.Width-2)
		tall, to = max(tall, len(lines[i])), to+k.Width
	}
	head := float64(tall)*Small*1.2 + 1.6
	at := x
	for i, k := range columns {
		for n, line := range lines[i] {
			w := Word(line, Small, at, y-float64(n+1)*Small*1.2)
			w.Colour = drawing.Grey
			c.Word(k.set(w))
		}
		at += k.Width
	}
	y -= head
	c.Line([]plane.Point{{X: x, Y: y}, {X: to, Y: y}}, false, Fine)
	for i, row := range rows {
		at = x
		for k, cell := range row {
			if cell != "" {
				w := Word(cell, Text, at, y-(pitch+fonts.CapHeight*Text)/2)
				w.Bold = i == bold
				c.Word(columns[k].set(w.Fit(columns[k].Width - 2)))
			}
			at += columns[k].Width
		}
		y -= pitch
		Rule(c, x, to, y)
	}
	return y
}

// set moves a word to its place in the column.
func (k Column) set(w drawing.Word) drawing.Word {
	if k.Number {
		w.At.X += k.Width - 2
		return w.Back(1)
	}
	return w
}

// Cells rules the upright lines between the columns of a table that is filled in by hand.
func Cells(c drawing.Canvas, columns []Column, x, top, foot float64) {
	const before = 1.5 // a column's words
	for _, k := range columns[:len(columns)-1] {
		x += k.Width
		c.Line([]plane.Point{{X: x - before, Y: top}, {X: x - before, Y: foot}}, false, Hair)
	}
}

// Notes rules lines to write on from y down to the foot of the page, where there is room for more than one.
func Notes(c drawing.Canvas, y float64) {
	const pitch = 8.0
	if y-Head-3-2*pitch < Foot {
		return
	}
	for y = Section(c, "Notes", Left, Right, y) - pitch; y >= Foot; y -= pitch {
		Rule(c, Left, Right, y)
	}
}
