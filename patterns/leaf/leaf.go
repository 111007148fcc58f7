// Package leaf holds what single pages are made of on which a person writes: head and foot, fields, boxes to tick, ruled
// tables and short texts, at fixed places of an A4 page.
// It does not turn pages: whoever draws one says where everything stands.
package leaf

import (
	"fmt"
	"io"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/vector"
)

// The page is A4 (ISO 216:2007) with room for a file's holes at the left, in millimetres.
const (
	Height = 297.0
	Left   = 20.0
	Right  = 195.0
	Top    = 284.0
	Foot   = 18.0
	width  = 210.0
)

// Letter sizes in millimetres.
const (
	Title = 6.0
	Head  = 3.3
	Text  = 2.75
	Small = 2.4
)

// The pens of a page: for rules, for what is written into, for what weighs.
var (
	Hair = drawing.Pen{Width: 0.15, Colour: drawing.Grey}
	Fine = drawing.Pen{Width: 0.2}
	Firm = drawing.Pen{Width: 0.4}
)

// Page is all that is drawn on one page.
type Page func(drawing.Canvas)

// Paper is the whole page.
var Paper = drawing.Box{Hi: plane.Point{X: width, Y: Height}}

// Write writes pages as a PDF, with a line at the foot of each.
func Write(w io.Writer, m vector.Meta, foot string, pages ...Page) error {
	b := vector.NewBook(m)
	for i, p := range pages {
		b.Page(width, Height)
		p(b)
		Footing(b, foot, i+1, len(pages))
	}
	return b.Write(w)
}

// Footing sets the line at the foot of a page.
func Footing(c drawing.Canvas, foot string, page, of int) {
	n := Word(fmt.Sprintf("page %d of %d", page, of), Small, Right, 10).Back(1)
	n.Colour = drawing.Grey
	c.Word(n)
	f := Word(foot, Small, Left, 10)
	f.Colour = drawing.Grey
	c.Word(f.Fit(n.At.X - Left - 4))
}

// Heading sets what a page is, the object's number, and its title in large letters, and returns where the page goes on.
func Heading(c drawing.Canvas, what, number, title string) float64 {
	w := Word(what, Text, Left, Top)
	w.Colour = drawing.Grey
	c.Word(w)
	n := Word(number, Text, Right, Top)
	n.Bold = true
	c.Word(n.Fit((Right - Left) / 2).Back(1))
	t := Word(title, Title, Left, Top-9)
	t.Bold = true
	c.Word(t.Fit(Right - Left))
	return Top - 14
}

// Word is one line of black text.
func Word(text string, size, x, y float64) drawing.Word {
	return drawing.Word{Text: text, Size: size, At: plane.Point{X: x, Y: y}}
}

// Section sets a name over a fine line from one place to another, and returns where what it names begins.
func Section(c drawing.Canvas, name string, from, to, y float64) float64 {
	w := Word(name, Head, from, y-Head)
	w.Bold = true
	c.Word(w.Fit(to - from))
	Rule(c, from, to, y-Head-1.8)
	return y - Head - 3
}

// Rule draws a fine line across.
func Rule(c drawing.Canvas, from, to, y float64) {
	c.Line([]plane.Point{{X: from, Y: y}, {X: to, Y: y}}, false, Hair)
}

// Lines sets text in lines between two places from y down, and returns where the next may begin.
func Lines(c drawing.Canvas, text string, size, from, to, y float64) float64 {
	for _, line := range fonts.Regular.Wrap(fonts.Readable(text), size, to-from) {
		c.Word(Word(line, size, from, y-size))
		y -= size * 1.32
	}
	return y - 0.35*size
}

// Items sets texts one below the other, each after a dash.
func Items(c drawing.Canvas, texts []string, size, from, to, y float64) float64 {
	for _, t := range texts {
		c.Word(Word("–", size, from, y-size))
		y = Lines(c, t, size, from+3, to, y)
	}
	return y
}
