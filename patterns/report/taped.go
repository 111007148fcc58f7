package report

import (
	"fmt"

	"understructure/assets/fonts"
	geo "understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/plan"
	"understructure/patterns/tapes"
)

// The measures of a reading with its drawing, in millimetres.
const (
	readings    = 6 // in a row
	readingHigh = 11.2
	readingPic  = 10.2
	readingText = readingPic + 1.5
)

// taped sets every reading with its number and a drawing of where the tape lay, those of one part in rows of their own.
func (g *galley) taped(p plan.Plan) {
	tape, _ := sorted(p)
	if len(tape) == 0 {
		return
	}
	g.heading("Measurements taken by tape, millimetres")
	for first := 0; first < len(tape); {
		end := first + 1
		for end < len(tape) && tape[end].where == tape[first].where {
			end++
		}
		g.partName(tape[first].where)
		for i := first; i < end; i += readings {
			g.readings(tape[i:min(i+readings, end)], i+1, geo.Wearer(p.Object.Wearer))
		}
		first = end
	}
}

func (g *galley) partName(part string) {
	g.add(3.6, func(c drawing.Canvas, b drawing.Box) {
		c.Word(drawing.Word{Text: part, Size: tableSize, Colour: drawing.Grey, At: b.Lo.Add(plane.Point{Y: 0.8})}.Fit(b.Width()))
	}).keep = true
}

func (g *galley) readings(row []value, first int, w geo.Wearer) {
	g.add(readingHigh, func(c drawing.Canvas, b drawing.Box) {
		wide := (b.Width() + columnGap) / readings
		for i, v := range row {
			lo := b.Lo.Add(plane.Point{X: float64(i) * wide})
			if d, ok := tapes.Of(v.part, v.key, w); ok {
				d.Draw(c, drawing.Box{Lo: lo.Add(plane.Point{Y: 0.6}), Hi: lo.Add(plane.Point{X: readingPic, Y: 0.6 + readingPic})}, tapes.Print)
			}
			at := lo.Add(plane.Point{X: readingText, Y: readingHigh - 3.2})
			n := drawing.Word{Text: fmt.Sprint(first + i), Size: tableSize, Colour: drawing.Grey, At: at}
			c.Word(n)
			c.Word(drawing.Word{Text: v.number, Size: bodySize, Bold: true, At: at.Add(plane.Point{X: n.Width() + 1.2})}.Fit(wide - readingText - n.Width() - 1.2 - columnGap))
			for k, line := range fonts.Regular.Wrap(fonts.Readable(v.what), tableSize, wide-readingText-columnGap) {
				c.Word(drawing.Word{Text: line, Size: tableSize, At: at.Sub(plane.Point{Y: 3.1 + float64(k)*tableLine})})
			}
		}
	})
}
