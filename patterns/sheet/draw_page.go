package sheet

import (
	"math"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
)

var (
	rulePen  = drawing.Pen{Width: 0.25}
	seamPen  = drawing.Pen{Width: 0.18, Dash: []float64{1, 2}, Colour: drawing.Grey}
	crossPen = drawing.Pen{Width: 0.25}
	thinPen  = drawing.Pen{Width: 0.13}
	mapPen   = drawing.Pen{Width: 0.35, Colour: drawing.Grey}
)

// ScaleNote stands on every page.
const ScaleNote = "Print at 100 % – do not fit to page; measure the rule."

// Draw draws the page.
func (pg Page) Draw(c drawing.Canvas) {
	for _, it := range pg.Items {
		it.Draw(c)
	}
	c.On(drawing.Sheet)
	pg.rules(c)
	for _, it := range pg.Items {
		if it.Tile != nil {
			for _, s := range it.Tile.Seams {
				s.draw(c, it.Clip, it.Tile.Grid.Pages[s.Row][s.Column])
			}
		}
	}
	for _, p := range pg.Panels {
		p.draw(c)
	}
	pg.title(c, pg.Width-margin)
}

// rules draws the two 100 mm rules from one corner, with ends and ticks every 10 mm.
func (pg Page) rules(c drawing.Canvas) {
	corner := plane.Point{X: margin + side - 4, Y: margin + foot - 4}
	for _, r := range []struct{ along, out plane.Point }{
		{plane.Point{X: 1}, plane.Point{Y: -1}}, {plane.Point{Y: 1}, plane.Point{X: -1}},
	} {
		c.Line([]plane.Point{corner, corner.Add(r.along.Mul(Rule))}, false, rulePen)
		for mm := 0; mm <= Rule; mm += 10 {
			long := 1.5
			if mm%50 == 0 {
				long = 3
			}
			at := corner.Add(r.along.Mul(float64(mm)))
			c.Line([]plane.Point{at, at.Add(r.out.Mul(long))}, false, rulePen)
		}
	}
	w := drawing.Word{Text: "100 mm", Size: 2.4}
	w.At = corner.Add(plane.Point{X: Rule - 1.5, Y: -1.9 - fonts.CapHeight*w.Size})
	c.Word(w.Back(1))
	w.Turn, w.At = math.Pi/2, corner.Add(plane.Point{X: -1.9, Y: Rule - 1.5})
	c.Word(w.Back(1))
}

// title sets the title block under the rule, from the left margin to right.
func (pg Page) title(c drawing.Canvas, right float64) {
	left := margin + side - 4
	number := drawing.Word{Text: pg.Title.Page, Size: 2.8, At: plane.Point{X: right, Y: margin + 12.4}}.Back(1)
	c.Word(number)
	put := func(text string, y, size, width float64, bold bool, colour drawing.Colour) {
		c.Word(drawing.Word{Text: text, Size: size, Bold: bold, Colour: colour, At: plane.Point{X: left, Y: margin + y}}.Fit(width))
	}
	put(pg.Title.Object, 12.4, 3.6, number.At.X-left-4, true, drawing.Black)
	put(pg.Title.Piece, 8.2, 2.8, right-left, false, drawing.Black)
	put(pg.Title.Material, 4.2, 2.8, right-left, false, drawing.Black)
	put(ScaleNote+pg.corrected(), 0.4, 2.4, right-left, false, drawing.Black)
}

// thinned drops points closer to the last one kept than a step; a map needs no more.
func thinned(r []plane.Point, step float64) []plane.Point {
	var kept []plane.Point
	for i, p := range r {
		if i == 0 || p.Dist(kept[len(kept)-1]) >= step {
			kept = append(kept, p)
		}
	}
	return kept
}
