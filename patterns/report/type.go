// Package report writes the papers that go with the templates: the mount record, the shopping
// list and the blank measuring sheet.
// It does not compute anything, and it does not draw pieces.
package report

import (
	"fmt"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/vector"
)

// The page is A4 (ISO 216:2007) with margins for a file's holes, in millimetres.
const (
	pageWidth  = 210.0
	pageHeight = 297.0
	marginX    = 20.0
	marginTop  = 18.0
	marginFoot = 20.0
	measure    = pageWidth - 2*marginX // the width of the text
	footDrop   = 8.5                   // from the text down to the foot line
)

// Letter sizes in millimetres, and the distance of lines as a part of them.
const (
	titleSize   = 6.4
	headingSize = 3.6
	textSize    = 3.0
	smallSize   = 2.5
	leading     = 1.38
)

var hair = drawing.Pen{Width: 0.15, Colour: drawing.Grey}

// The measuring sheet's text area.
var frame = drawing.Box{Lo: plane.Point{X: marginX, Y: marginFoot}, Hi: plane.Point{X: pageWidth - marginX, Y: pageHeight - marginTop}}

// setter fills pages from the top down. Pages are kept until all are known, so that each can
// say how many there are.
type setter struct {
	frame drawing.Box // where text may stand on a page
	pages [][]func(drawing.Canvas)
	y     float64 // the upper edge of what is still free, above the foot of the page
}

func newSetter() *setter { return newSetterIn(frame) }

func newSetterIn(frame drawing.Box) *setter {
	s := &setter{frame: frame}
	s.turn()
	return s
}

// turn begins a new page.
func (s *setter) turn() {
	s.pages = append(s.pages, nil)
	s.y = s.frame.Hi.Y
}

// room returns a box as wide as the text and h high, on a new page where this one is full.
func (s *setter) room(h float64) drawing.Box {
	s.keep(h)
	s.y -= h
	return drawing.Box{Lo: plane.Point{X: s.frame.Lo.X, Y: s.y}, Hi: plane.Point{X: s.frame.Hi.X, Y: s.y + h}}
}

// keep turns the page where less than h is free on it.
func (s *setter) keep(h float64) {
	if s.y-h < s.frame.Lo.Y && s.y < s.frame.Hi.Y {
		s.turn()
	}
}

// draw adds to the page in hand.
func (s *setter) draw(f func(drawing.Canvas)) {
	last := len(s.pages) - 1
	s.pages[last] = append(s.pages[last], f)
}

// heading sets a section's name over a fine line, and keeps it with the next h millimetres.
func (s *setter) heading(text string, h float64) {
	s.keep(h + 12)
	b := s.room(11)
	s.draw(func(c drawing.Canvas) {
		c.Word(drawing.Word{Text: text, Size: headingSize, Bold: true, At: plane.Point{X: b.Lo.X, Y: b.Lo.Y + 3.6}}.Fit(measure))
		rule(c, b.Lo.X, b.Hi.X, b.Lo.Y+2)
	})
}

func (s *setter) gap(h float64) { s.y -= h }

func rule(c drawing.Canvas, from, to, y float64) {
	c.Line([]plane.Point{{X: from, Y: y}, {X: to, Y: y}}, false, hair)
}

// book makes the PDF, with a foot line on every page.
func (s *setter) book(m vector.Meta, foot string) *vector.Book {
	b := vector.NewBook(m)
	for i, page := range s.pages {
		b.Page(pageWidth, pageHeight)
		for _, f := range page {
			f(b)
		}
		n := drawing.Word{Text: fmt.Sprintf("page %d of %d", i+1, len(s.pages)), Size: smallSize, Colour: drawing.Grey,
			At: plane.Point{X: s.frame.Hi.X, Y: s.frame.Lo.Y - footDrop}}.Back(1)
		b.Word(n)
		b.Word(drawing.Word{Text: foot, Size: smallSize, Colour: drawing.Grey, At: plane.Point{X: s.frame.Lo.X, Y: n.At.Y}}.Fit(n.At.X - s.frame.Lo.X - 4))
	}
	return b
}
