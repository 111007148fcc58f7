package report

import (
	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
)

// The mount record's text area, and its letters in millimetres: 7.6 points for text, 6.6 for tables. Its left margin
// leaves room for a file's holes.
var recordFrame = drawing.Box{Lo: plane.Point{X: 20, Y: 17}, Hi: plane.Point{X: 197, Y: 286}}

const (
	bodySize  = 2.7
	tableSize = 2.35
	nameSize  = 3.3  // of a section
	spacing   = 1.28 // of lines, as a part of the letters
	bodyLine  = bodySize * spacing
)

// galley is a column of text and tables before it is set in pages.
type galley struct {
	width  float64
	strips []strip
}

// newGalley is as wide as one of so many columns of the record.
func newGalley(columns int) *galley { return &galley{width: columnWidth(recordFrame.Width(), columns)} }

// add appends what is drawn into a box of a height.
func (g *galley) add(height float64, draw func(drawing.Canvas, drawing.Box)) *strip {
	g.strips = append(g.strips, strip{height: height, draw: draw})
	return &g.strips[len(g.strips)-1]
}

// gap leaves room that is not needed at the head of a column.
func (g *galley) gap(height float64) { g.strips = append(g.strips, strip{height: height}) }

// heading names a section over a line as wide as the column, and stays with what follows.
func (g *galley) heading(name string) {
	g.gap(2.8)
	g.add(5.9, func(c drawing.Canvas, b drawing.Box) {
		c.Word(drawing.Word{Text: name, Size: nameSize, Bold: true, At: b.Lo.Add(plane.Point{Y: 2.2})}.Fit(b.Width()))
		c.Line([]plane.Point{{X: b.Lo.X, Y: b.Lo.Y + 1}, {X: b.Hi.X, Y: b.Lo.Y + 1}}, false, drawing.Pen{Width: 0.25})
	}).keep = true
}

// text sets a paragraph; a mark such as a number or a dash hangs before its first line, unless it is "".
func (g *galley) text(mark, text string) { g.lines(mark, text, bodySize) }

// note sets small print.
func (g *galley) note(mark, text string) { g.lines(mark, text, tableSize) }

func (g *galley) lines(mark, text string, size float64) {
	indent := 0.0
	if mark != "" {
		indent = 1.9 * size
	}
	all := fonts.Regular.Wrap(fonts.Readable(text), size, g.width-indent)
	for i, line := range all {
		g.add(size*spacing, func(c drawing.Canvas, b drawing.Box) {
			at := plane.Point{X: b.Lo.X + indent, Y: b.Lo.Y + fonts.Descent*size*1.2}
			if i == 0 && mark != "" {
				c.Word(drawing.Word{Text: mark, Size: size, Bold: mark != dash, At: plane.Point{X: b.Lo.X, Y: at.Y}})
			}
			c.Word(drawing.Word{Text: line, Size: size, At: at})
		}).keep = i == 0 && len(all) > 1 || i == len(all)-2 // no line of a paragraph stands alone
	}
	g.gap(0.7)
}

const dash = "–"
