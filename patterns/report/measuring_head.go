package report

import (
	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/leaf"
)

// sheetHead sets the fields for the object and for who measured.
func (s *setter) sheetHead(a Asked) {
	b := s.room(9)
	s.draw(func(c drawing.Canvas) {
		c.Word(drawing.Word{Text: "Measuring sheet", Size: titleSize, Bold: true, At: b.Lo.Add(plane.Point{Y: 3})})
		if !a.Form {
			leaf.Ticks(c, "", []string{"garment", "bare form"}, "", b.Hi.X-42, b.Lo.Y+3.4)
		}
	})
	s.fields(entry{"object number", a.Number}, entry{"title", a.Title})
	s.fields(entry{"measured by", ""}, entry{"date", ""})
	s.ticks(func(c drawing.Canvas, at plane.Point) {
		x := leaf.Ticks(c, "worn by", []string{"woman", "man", "child"}, string(a.Wearer), at.X, at.Y)
		leaf.Field(c, "year", "", x, marginX+measure, at.Y-0.3)
	})
	s.ticks(func(c drawing.Canvas, at plane.Point) {
		x := leaf.Ticks(c, "unit", []string{"mm", "cm", "in"}, a.Unit, at.X, at.Y)
		x = leaf.Ticks(c, "side of the cloth", []string{"inside", "outside"}, "", x, at.Y)
		leaf.Ticks(c, "strength", []string{"sound", "fair", "weak"}, "", x, at.Y)
	})
	s.gap(1)
}

// formHead sets what is to be known of a form.
func (s *setter) formHead() {
	s.fields(entry{"form", ""}, entry{"measured by, date", ""})
}

// fields sets two fields beside each other.
func (s *setter) fields(left, right entry) {
	b := s.room(9.5)
	s.draw(func(c drawing.Canvas) {
		middle := b.Lo.X + measure*0.4
		leaf.Field(c, left.label, left.known, b.Lo.X, middle-4, b.Lo.Y+1.5)
		leaf.Field(c, right.label, right.known, middle, b.Hi.X, b.Lo.Y+1.5)
	})
}

// ticks makes room for a row of questions.
func (s *setter) ticks(row func(c drawing.Canvas, at plane.Point)) {
	b := s.room(8.5)
	s.draw(func(c drawing.Canvas) { row(c, b.Lo.Add(plane.Point{Y: 1.8})) })
}

// entry is what a field is for, and what is already known.
type entry struct{ label, known string }

// How to measure, and what to beware of (common practice, no published source, but for the two
// readings: Museum of New Zealand Te Papa Tongarewa, how-to guide on measuring costume).
var manners = [2]struct{ name, text string }{
	{"Measuring", "Measure the inside, with the garment lying flat and supported, to the fastening points and not to the edges. " +
		"Use a narrow tape that does not stretch. Take every measurement twice, putting the tape down in between, and keep the smaller (of a form, the larger); never pull a seam to reach a number. " +
		"Leave empty what cannot be reached without harm: bust girth, waist girth and back waist length are enough to begin with."},
	{"Handling", "Old garments may carry pesticides, arsenic or mould: ask before touching, wear gloves and, where it is dusty, a mask; wash hands. " +
		"Pencil, no pen; no rings, watches or name badges. Two people lift what is heavy or long. " +
		"Callipers and set squares touch and do not press. Stop where the cloth splits or sheds, and write down where."},
}

func (s *setter) manners() {
	const size, width = 2.5, (measure - cellGap) / 2
	wrapped := [2][]string{}
	tall := 0
	for i, m := range manners {
		wrapped[i] = fonts.Regular.Wrap(m.text, size, width)
		tall = max(tall, len(wrapped[i]))
	}
	b := s.room(float64(tall+1)*size*leading + 1)
	s.draw(func(c drawing.Canvas) {
		for i, m := range manners {
			at := plane.Point{X: b.Lo.X + float64(i)*(width+cellGap), Y: b.Hi.Y - size}
			c.Word(drawing.Word{Text: m.name, Size: size, Bold: true, At: at})
			for _, line := range wrapped[i] {
				at.Y -= size * leading
				c.Word(drawing.Word{Text: line, Size: size, At: at})
			}
		}
	})
	s.gap(1)
}
