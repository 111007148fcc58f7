package report

import (
	"fmt"
	"io"

	"understructure/assets/fonts"
	geo "understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/vector"
)

// MeasuringSheet writes the blank sheet that is taken to the store room: every measurement that a
// record can hold, with a number that also stands on the drawings, and two boxes to write in.
func MeasuringSheet(w io.Writer) error {
	return setMeasuringSheet().book(vector.Meta{Title: "Measuring sheet", Subject: "Blank sheet for the measurements of a garment or of a form"},
		"Measuring sheet – write one measurement twice; where two readings differ, the smaller is kept").Write(w)
}

func setMeasuringSheet() *setter {
	s := newSetter()
	s.sheetHead()
	s.handling()
	s.sketches()
	s.columns(rowsOf(geo.Keys, geo.Skirt, geo.Sleeve))
	s.remarks()
	return s
}

// sheetHead sets the fields for the object and for who measured.
func (s *setter) sheetHead() {
	b := s.room(9)
	s.draw(func(c drawing.Canvas) {
		c.Word(drawing.Word{Text: "Measuring sheet", Size: titleSize, Bold: true, At: b.Lo.Add(plane.Point{Y: 3})})
		tickBoxes(c, "", []string{"garment", "bare form"}, plane.Point{X: b.Hi.X - 42, Y: b.Lo.Y + 3.4})
	})
	for _, row := range [][]string{{"object number", "title"}, {"measured by", "date"}} {
		b := s.room(9.5)
		s.draw(func(c drawing.Canvas) {
			for k, label := range row {
				x := b.Lo.X + float64(k)*measure*0.4
				end := b.Lo.X + measure*0.4 - 4
				if k == 1 {
					end = b.Hi.X
				}
				field(c, label, x, end, b.Lo.Y+1.5)
			}
		})
	}
	t := s.room(8.5)
	s.draw(func(c drawing.Canvas) {
		at := t.Lo.Add(plane.Point{Y: 1.8})
		at.X = tickBoxes(c, "unit", []string{"mm", "cm", "in"}, at)
		at.X = tickBoxes(c, "side of the cloth", []string{"inside", "outside"}, at)
		tickBoxes(c, "strength", []string{"sound", "fair", "weak"}, at)
	})
	s.gap(1)
}

// field is a label over a line to write on.
func field(c drawing.Canvas, label string, from, to, y float64) {
	w := drawing.Word{Text: label, Size: smallSize, Colour: drawing.Grey, At: plane.Point{X: from, Y: y + 0.8}}
	c.Word(w)
	rule(c, from+w.Width()+2, to, y)
}

// tickBoxes sets a question and boxes to tick from a place on, and returns where the next may begin.
func tickBoxes(c drawing.Canvas, question string, answers []string, at plane.Point) float64 {
	q := drawing.Word{Text: question, Size: smallSize, Colour: drawing.Grey, At: at}
	c.Word(q)
	x := at.X + q.Width()
	for _, a := range answers {
		box := drawing.Box{Lo: plane.Point{X: x + 3, Y: at.Y - 0.7}, Hi: plane.Point{X: x + 6.2, Y: at.Y + 2.5}}
		c.Line(box.Corners(), true, boxPen)
		w := drawing.Word{Text: a, Size: smallSize + 0.2, At: plane.Point{X: box.Hi.X + 1.2, Y: at.Y}}
		c.Word(w)
		x = w.At.X + w.Width()
	}
	return x + 9
}

var boxPen = drawing.Pen{Width: 0.2}

// manners are the rules of measuring (common practice, no published source).
const manners = "Measure the inside, with the garment lying flat and supported, to the fastening points and not to the edges. " +
	"Use a narrow tape, clean hands or gloves, a pencil and no pen. Take every measurement twice and keep the smaller; never pull a seam to reach a number. " +
	"Leave empty what cannot be reached without harm. Bust girth, waist girth and back waist length are enough to begin with. " +
	"Old garments may carry pesticides or arsenic: ask before touching, and wash hands."

func (s *setter) handling() {
	const size = 2.7
	for _, line := range fonts.Regular.Wrap(manners, size, measure) {
		b := s.room(size * leading)
		s.draw(func(c drawing.Canvas) {
			c.Word(drawing.Word{Text: line, Size: size, At: b.Lo.Add(plane.Point{Y: 0.8})})
		})
	}
	s.gap(2)
}

// sketches draws the five small drawings in a row.
func (s *setter) sketches() {
	const scale, height = 0.46, 64.0
	b := s.room(height)
	bodices := counted(geo.Keys, 1)
	skirts := counted(geo.Skirt, 1+len(geo.Keys))
	sleeves := counted(geo.Sleeve, 1+len(geo.Keys)+len(geo.Skirt))
	s.draw(func(c drawing.Canvas) {
		for _, k := range []struct {
			sketch
			numbers
			x, y, scale float64
		}{
			{bodiceFront, bodices, 22, 10, scale}, {bodiceBack, bodices, 65, 10, scale},
			{bodiceSection, bodices, 103, 32, 0.42},
			{skirtSketch, skirts, 139, 20, 0.34}, {sleeveSketch, sleeves, 163, 20, 0.34},
		} {
			at := plane.Point{X: b.Lo.X + k.x, Y: b.Lo.Y + k.y}
			k.sketch.draw(c, k.numbers, at, k.scale)
			c.Word(drawing.Word{Text: k.name, Size: smallSize, Colour: drawing.Grey, At: plane.Point{X: at.X, Y: b.Lo.Y + 1}}.Back(0.5))
		}
	})
	s.gap(2)
}

// row is one line of the sheet: a group's name, or a measurement.
type row struct {
	group  string
	number int
	geo.Measure
}

// rowsOf puts the tables one after the other, with a heading wherever the group changes.
func rowsOf(tables ...[]geo.Measure) []row {
	var rows []row
	number := 0
	for i, table := range tables {
		group := ""
		for _, m := range table {
			if m.Group != group {
				group = m.Group
				rows = append(rows, row{group: [...]string{"Bodice", "Skirt", "Sleeve"}[i] + ": " + group})
			}
			number++
			rows = append(rows, row{number: number, Measure: m})
		}
	}
	return rows
}

// The measures of a row, in millimetres: two boxes of that size fit a number written by hand.
const (
	boxWidth, boxHeight = 17.0, 7.5
	groupHeight         = 9.0
	columnWidth         = (measure - 8) / 2
	whereSize           = 2.15
)

// columns sets the rows in two columns, on as many pages as they need; the last two are of one length.
func (s *setter) columns(rows []row) {
	for len(rows) > 0 {
		depth := s.y - marginFoot
		if _, right := split(rows, depth); len(right) == 0 || fit(right, depth) == len(right) {
			for d := depth; d > 0 && len(rows) > 0; d-- { // as short as both columns can be
				left, right := split(rows, d)
				if fit(left, d) < len(left) || fit(right, d) < len(right) {
					break
				}
				depth = d
			}
		}
		left, rest := split(rows, depth)
		n := fit(rest, depth)
		s.column(left, marginX)
		s.column(rest[:n], marginX+columnWidth+8)
		if rows = rest[n:]; len(rows) > 0 {
			s.turn()
		} else {
			s.gap(depth + 3)
		}
	}
}

// fit is how many rows go into a column; a group's name does not stand at its end.
func fit(rows []row, depth float64) int {
	n, y := 0, 0.0
	for n < len(rows) && y+rows[n].height() <= depth {
		y += rows[n].height()
		n++
	}
	if n > 0 && n < len(rows) && rows[n-1].group != "" {
		n--
	}
	return n
}

func split(rows []row, depth float64) (left, right []row) {
	n := fit(rows, depth)
	return rows[:n], rows[n:]
}

func (s *setter) column(rows []row, x float64) {
	y := s.y
	for _, r := range rows {
		at := plane.Point{X: x, Y: y}
		s.draw(func(c drawing.Canvas) { r.draw(c, at) })
		y -= r.height()
	}
}

// remarks rules lines for notes down to the foot of the page.
func (s *setter) remarks() {
	const pitch = 8.0
	s.heading("Notes", 3*pitch)
	for s.y-pitch >= marginFoot {
		b := s.room(pitch)
		s.draw(func(c drawing.Canvas) { rule(c, b.Lo.X, b.Hi.X, b.Lo.Y) })
	}
}

func (r row) where() []string {
	return fonts.Regular.Wrap(r.Where, whereSize, columnWidth-2*boxWidth-9)
}

func (r row) height() float64 {
	if r.group != "" {
		return groupHeight
	}
	return max(boxHeight+1.8, 5+float64(len(r.where()))*whereSize*1.2)
}

// draw sets a row whose upper left corner is at a place.
func (r row) draw(c drawing.Canvas, at plane.Point) {
	if r.group != "" {
		c.Word(drawing.Word{Text: r.group, Size: textSize, Bold: true, At: at.Sub(plane.Point{Y: groupHeight - 2.6})})
		rule(c, at.X, at.X+columnWidth, at.Y-groupHeight+1.2)
		for k, word := range []string{"first", "second"} {
			x := at.X + columnWidth - (1.5-float64(k))*boxWidth
			c.Word(drawing.Word{Text: word, Size: whereSize, Colour: drawing.Grey, At: plane.Point{X: x, Y: at.Y - groupHeight + 2.6}}.Back(0.5))
		}
		return
	}
	badge(c, r.number, at.Add(plane.Point{X: 2.4, Y: -2.9}), 2.3)
	label := r.Label
	if r.Degrees {
		label += " (degrees)"
	}
	c.Word(drawing.Word{Text: label, Size: 2.8, Bold: true, At: at.Add(plane.Point{X: 6.5, Y: -3.7})}.Fit(columnWidth - 2*boxWidth - 8))
	for i, line := range r.where() {
		c.Word(drawing.Word{Text: line, Size: whereSize, At: at.Add(plane.Point{X: 6.5, Y: -6.6 - float64(i)*whereSize*1.2})})
	}
	for k := range 2 {
		lo := at.Add(plane.Point{X: columnWidth - float64(2-k)*boxWidth, Y: -boxHeight - 0.8})
		box := drawing.Box{Lo: lo, Hi: lo.Add(plane.Point{X: boxWidth, Y: boxHeight})}
		c.Line(box.Corners(), true, boxPen)
	}
}

// badge is a number in a circle.
func badge(c drawing.Canvas, number int, at plane.Point, radius float64) {
	c.Fill(disc(at, radius), drawing.White)
	c.Line(disc(at, radius), true, drawing.Pen{Width: 0.18})
	w := drawing.Word{Text: fmt.Sprint(number), Size: radius * 1.15, Bold: true}
	w.At = at.Sub(plane.Point{Y: fonts.CapHeight * w.Size / 2})
	c.Word(w.Back(0.5))
}
