package report

import (
	"io"

	"understructure/assets/fonts"
	geo "understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/tapes"
	"understructure/patterns/vector"
)

// Asked is what a measuring sheet asks for beside the bodice, and what is known beforehand.
type Asked struct {
	Skirt, Sleeve, Form bool
	Wearer              geo.Wearer // whom the drawings are of; "" leaves the choice, and draws a woman
	Number, Title       string     // of the object; "" leaves a line to write on
	Unit                string     // "mm", "cm" or "in"; "" leaves the choice
}

// Everything asks for a garment with skirt and sleeve, by whomever it was worn. Its bodice serves for a bare form as well.
var Everything = Asked{Skirt: true, Sleeve: true}

// MeasuringSheet writes the blank sheet that is taken to the store room: every measurement that a
// record can hold, with a drawing of where the tape goes and two boxes to write in.
func MeasuringSheet(w io.Writer) error { return MeasuringSheetFor(w, Everything) }

// MeasuringSheetFor writes the measuring sheet with what is asked for only.
func MeasuringSheetFor(w io.Writer, a Asked) error {
	return setMeasuringSheet(a).book(vector.Meta{Title: "Measuring sheet", Subject: "Blank sheet for the measurements of a garment or of a form"},
		"Measuring sheet – write one measurement twice; where two differ, the smaller of a garment is kept, the larger of a form").Write(w)
}

func setMeasuringSheet(a Asked) *setter {
	s := newSetter()
	s.sheetHead(a)
	s.manners()
	name := "Bodice"
	if !a.Form {
		name = "Bodice, or bare form"
	}
	s.part(name, tapes.Bodice, geo.Keys, a)
	if a.Skirt {
		s.part("Skirt", tapes.Skirt, geo.Skirt, a)
	}
	if a.Sleeve {
		s.part("Sleeve", tapes.Sleeve, geo.Sleeve, a)
	}
	if a.Form {
		s.turn()
		s.formHead()
		s.part("Bare form", tapes.Form, ofForm(), a)
	}
	s.remarks()
	return s
}

// ofForm are the measurements that a bare form has: all of a bodice's but what ends at a hem.
func ofForm() []geo.Measure {
	var rows []geo.Measure
	for _, m := range geo.Keys {
		if m.Key != geo.NapeToHem {
			rows = append(rows, m)
		}
	}
	return rows
}

// The measures of a question, in millimetres: two boxes of that size fit a number written by hand.
const (
	cellGap             = 8.0
	cellWidth           = (measure - cellGap) / 2
	cellHeight          = 26.5
	picture             = 25.0
	boxWidth, boxHeight = (cellWidth - beside - boxGap) / 2, 9.5
	boxGap              = 2.0
	groupHeight         = 8.0
	whereSize           = 2.3
	beside              = picture + 2.5 // where its words begin
)

// part sets the measurements of one part in two columns, group by group, in the order one measures.
func (s *setter) part(name string, p tapes.Part, table []geo.Measure, a Asked) {
	for len(table) > 0 {
		n := 1
		for n < len(table) && table[n].Group == table[0].Group {
			n++
		}
		s.group(name+": "+table[0].Group, cellHeight)
		for ; n > 0; n -= 2 {
			s.pair(p, table[:min(n, 2)], a)
			table = table[min(n, 2):]
		}
	}
}

// group sets a group's name, and keeps it with the next h millimetres.
func (s *setter) group(name string, h float64) {
	s.keep(groupHeight + h)
	b := s.room(groupHeight)
	s.draw(func(c drawing.Canvas) {
		c.Word(drawing.Word{Text: name, Size: textSize + 0.2, Bold: true, At: b.Lo.Add(plane.Point{Y: 2.6})})
		rule(c, b.Lo.X, b.Hi.X, b.Lo.Y+1.2)
	})
}

// pair sets one or two measurements beside each other.
func (s *setter) pair(p tapes.Part, pair []geo.Measure, a Asked) {
	b := s.room(cellHeight)
	s.draw(func(c drawing.Canvas) {
		for i, m := range pair {
			lo := b.Lo.Add(plane.Point{X: float64(i) * (cellWidth + cellGap)})
			question(c, p, m, a.Wearer, drawing.Box{Lo: lo, Hi: lo.Add(plane.Point{X: cellWidth, Y: cellHeight})})
		}
	})
}

// question is one measurement: its drawing, and beside it its name, where the tape goes, and the boxes.
func question(c drawing.Canvas, p tapes.Part, m geo.Measure, w geo.Wearer, b drawing.Box) {
	if d, ok := tapes.Of(p, m.Key, w); ok {
		lo := b.Lo.Add(plane.Point{Y: 1.5})
		d.Draw(c, drawing.Box{Lo: lo, Hi: lo.Add(plane.Point{X: picture, Y: picture})}, tapes.Print)
	}
	label := m.Label
	if m.Degrees {
		label += " (degrees)"
	}
	at := plane.Point{X: b.Lo.X + beside, Y: b.Hi.Y - 3.6}
	c.Word(drawing.Word{Text: label, Size: 3, Bold: true, At: at}.Fit(cellWidth - beside))
	for i, line := range fonts.Regular.Wrap(m.Where, whereSize, cellWidth-beside) {
		c.Word(drawing.Word{Text: line, Size: whereSize, At: at.Sub(plane.Point{Y: 3.5 + float64(i)*whereSize*1.2})})
	}
	for i, word := range []string{"first", "second"} {
		box(c, word, plane.Point{X: at.X + float64(i)*(boxWidth+boxGap), Y: b.Lo.Y + 1.8})
	}
}

// box is what a reading is written into; its word stands small in its corner.
func box(c drawing.Canvas, word string, lo plane.Point) {
	b := drawing.Box{Lo: lo, Hi: lo.Add(plane.Point{X: boxWidth, Y: boxHeight})}
	c.Line(b.Corners(), true, boxPen)
	c.Word(drawing.Word{Text: word, Size: 1.8, Colour: drawing.Grey, At: plane.Point{X: lo.X + 1, Y: b.Hi.Y - 2.2}})
}

var boxPen = drawing.Pen{Width: 0.2}

// remarks rules lines for notes down to the foot of the page.
func (s *setter) remarks() {
	const pitch = 8.0
	s.heading("Notes", 3*pitch)
	for s.y-pitch >= marginFoot {
		b := s.room(pitch)
		s.draw(func(c drawing.Canvas) { rule(c, b.Lo.X, b.Hi.X, b.Lo.Y) })
	}
}
