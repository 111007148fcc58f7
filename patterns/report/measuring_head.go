package report

import (
	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
)

// sheetHead sets the fields for the object and for who measured.
func (s *setter) sheetHead(a Asked) {
	b := s.room(9)
	s.draw(func(c drawing.Canvas) {
		c.Word(drawing.Word{Text: "Measuring sheet", Size: titleSize, Bold: true, At: b.Lo.Add(plane.Point{Y: 3})})
		if !a.Form {
			tickBoxes(c, "", []string{"garment", "bare form"}, "", plane.Point{X: b.Hi.X - 42, Y: b.Lo.Y + 3.4})
		}
	})
	s.fields(entry{"object number", a.Number}, entry{"title", a.Title})
	s.fields(entry{"measured by", ""}, entry{"date", ""})
	s.ticks(func(c drawing.Canvas, at plane.Point) {
		at.X = tickBoxes(c, "worn by", []string{"woman", "man", "child"}, string(a.Wearer), at)
		field(c, entry{"year", ""}, at.X, marginX+measure, at.Y-0.3)
	})
	s.ticks(func(c drawing.Canvas, at plane.Point) {
		at.X = tickBoxes(c, "unit", []string{"mm", "cm", "in"}, a.Unit, at)
		at.X = tickBoxes(c, "side of the cloth", []string{"inside", "outside"}, "", at)
		tickBoxes(c, "strength", []string{"sound", "fair", "weak"}, "", at)
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
		field(c, left, b.Lo.X, middle-4, b.Lo.Y+1.5)
		field(c, right, middle, b.Hi.X, b.Lo.Y+1.5)
	})
}

// ticks makes room for a row of questions.
func (s *setter) ticks(row func(c drawing.Canvas, at plane.Point)) {
	b := s.room(8.5)
	s.draw(func(c drawing.Canvas) { row(c, b.Lo.Add(plane.Point{Y: 1.8})) })
}

// entry is what a field is for, and what is already known.
type entry struct{ label, known string }

// field is a label over a line to write on.
func field(c drawing.Canvas, e entry, from, to, y float64) {
	w := drawing.Word{Text: e.label, Size: smallSize, Colour: drawing.Grey, At: plane.Point{X: from, Y: y + 0.8}}
	c.Word(w)
	start := from + w.Width() + 2
	rule(c, start, to, y)
	if e.known != "" {
		c.Word(drawing.Word{Text: e.known, Size: textSize + 0.2, At: plane.Point{X: start + 1, Y: y + 0.9}}.Fit(to - start - 2))
	}
}

// tickBoxes sets a question and boxes to tick from a place on, the known answer ticked, and returns where
// the next may begin.
func tickBoxes(c drawing.Canvas, question string, answers []string, known string, at plane.Point) float64 {
	q := drawing.Word{Text: question, Size: smallSize, Colour: drawing.Grey, At: at}
	c.Word(q)
	x := at.X + q.Width()
	for _, a := range answers {
		box := drawing.Box{Lo: plane.Point{X: x + 3, Y: at.Y - 0.7}, Hi: plane.Point{X: x + 6.2, Y: at.Y + 2.5}}
		c.Line(box.Corners(), true, boxPen)
		if a == known {
			k := box.Grow(-0.6).Corners()
			c.Line([]plane.Point{k[0], k[2]}, false, tickPen)
			c.Line([]plane.Point{k[1], k[3]}, false, tickPen)
		}
		w := drawing.Word{Text: a, Size: smallSize + 0.2, At: plane.Point{X: box.Hi.X + 1.2, Y: at.Y}}
		c.Word(w)
		x = w.At.X + w.Width()
	}
	return x + 9
}

var tickPen = drawing.Pen{Width: 0.45}

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
