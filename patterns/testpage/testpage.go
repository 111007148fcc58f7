// Package testpage draws the page that shows whether a printer prints true to size: rules across and up, a square with
// its diagonals, the lines and greys of templates, and what to measure and where to write it.
// It does not correct a printer, and it is never itself corrected: what it measures is the printer.
package testpage

import (
	"fmt"
	"io"
	"math"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/plan"
	"understructure/patterns/sheet"
	"understructure/patterns/vector"
)

// Where things lie, in millimetres: desktop printers leave up to 6.4 mm blank (common practice, no published source).
const (
	margin = 10.0
	corner = 18.0 // where both rules begin, from the left and from below
	inner  = 26.0 // where words begin, from the left
	square = 100.0
	widest = 190.0 // no line of words is longer, nor begins higher than on a small page
	top    = 287.0
	beside = 58.0  // the room that samples take
	roll   = 550.0 // a page of this length from a roll has a rule of 500 mm
)

// Write writes the page for a paper as PDF.
func Write(w io.Writer, p plan.Paper) error {
	if err := sheet.Check(p); err != nil {
		return err
	}
	if p.Roll {
		p.Height = math.Min(p.Height, roll)
	}
	b := vector.NewBook(vector.Meta{Title: "Test page for printers", Subject: "Does this printer print true to size?"})
	b.TrueSize()
	b.Page(p.Width, p.Height)
	draw(b, p)
	return b.Write(w)
}

// draw sets the words from the top down, and what is measured from the bottom up.
func draw(c drawing.Canvas, p plan.Paper) {
	longest(c, p.Width, plane.Point{X: 1})
	longest(c, p.Height, plane.Point{Y: 1})
	free := words(c, p)
	lo := plane.Point{X: inner, Y: free - margin - square}
	if lo.Y < inner {
		return // the rules are enough on a page so low
	}
	diagonals(c, lo)
	if left := lo.X + square + margin; left+beside <= p.Width-margin {
		samples(c, plane.Point{X: left, Y: lo.Y + square})
	}
}

// longest draws the longest rule in steps of 50 mm that the paper holds in a direction.
func longest(c drawing.Canvas, paper float64, along plane.Point) {
	length := 50 * math.Floor((paper-corner-margin)/50)
	from := plane.Point{X: corner, Y: corner}
	c.Line([]plane.Point{from, from.Add(along.Mul(length))}, false, fine)
	out, turn := plane.Point{Y: -1}, 0.0
	if along.Y > 0 {
		out, turn = plane.Point{X: -1}, math.Pi/2
	}
	for mm := 0.0; mm <= length; mm += 10 {
		at, deep := from.Add(along.Mul(mm)), 1.5
		if labelled := mm > 0 && (math.Mod(mm, sheet.Rule) == 0 || mm == length); labelled {
			deep = 5
			w := drawing.Word{Text: fmt.Sprintf("%g mm", mm), Size: 2.6, Turn: turn, Bold: mm == sheet.Rule}
			w.At = at.Add(out.Mul(2.4 + fonts.CapHeight*w.Size*(1-along.Y))).Sub(along.Mul(1))
			c.Word(w.Back(1))
		} else if mm == 0 || math.Mod(mm, 50) == 0 {
			deep = 3
		}
		c.Line([]plane.Point{at, at.Add(out.Mul(deep))}, false, fine)
	}
}

var fine = drawing.Pen{Width: 0.18}

// diagonals draws the square from its lower left corner.
func diagonals(c drawing.Canvas, lo plane.Point) {
	k := drawing.Box{Lo: lo, Hi: lo.Add(plane.Point{X: square, Y: square})}.Corners()
	c.Line(k, true, fine)
	c.Line([]plane.Point{k[0], k[2]}, false, fine)
	c.Line([]plane.Point{k[1], k[3]}, false, fine)
	for _, turn := range []float64{math.Pi / 4, -math.Pi / 4} {
		w := drawing.Word{Text: fmt.Sprintf("%.1f mm", square*math.Sqrt2), Size: 2.6, Turn: turn}
		w.At = k[0].Lerp(k[2], 0.5).Add(w.Along().Mul(-square / 3)).Add(plane.Point{X: -math.Sin(turn), Y: math.Cos(turn)}.Mul(1.2))
		c.Word(w.Back(0.5))
	}
}

// samples draws every line of the templates, and their greys, down from a corner.
func samples(c drawing.Canvas, at plane.Point) {
	for _, s := range sheet.Samples() {
		at.Y -= 8
		c.Line([]plane.Point{at, at.Add(plane.Point{X: beside})}, false, s.Pen)
		c.Word(drawing.Word{Text: fmt.Sprintf("%s, %g mm", s.Name, s.Pen.Width), Size: 2.4, At: at.Add(plane.Point{Y: 1.3})})
	}
	at.Y -= 12
	greys := []drawing.Colour{drawing.Black, drawing.Grey, drawing.Pale, drawing.Mist}
	wide := beside / float64(len(greys))
	for i, g := range greys {
		lo := at.Add(plane.Point{X: wide * float64(i)})
		c.Fill(drawing.Box{Lo: lo, Hi: lo.Add(plane.Point{X: wide, Y: 8})}.Corners(), g)
	}
	for _, line := range fonts.Regular.Wrap("Every line is seen without gaps, and every field is told from the next; if not, the toner is low or “draft” is on.", 2.4, beside) {
		at.Y -= 3.6
		c.Word(drawing.Word{Text: line, Size: 2.4, At: at})
	}
}
