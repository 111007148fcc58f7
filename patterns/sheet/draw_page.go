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
	right := pg.Width - margin
	if pg.Tile != nil {
		pg.seams(c)
		right = pg.assembly(c) - 4
	}
	pg.title(c, right)
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

// seams draws the crosses, the seam lines and the names of the neighbours of a tile.
func (pg Page) seams(c drawing.Canvas) {
	t, clip := pg.Tile, pg.Items[0].Clip
	for _, s := range t.sides() {
		if !s.joined {
			continue
		}
		for _, run := range clip.Cut([]plane.Point{s.from, s.to}, false) {
			c.Line(run, false, seamPen)
		}
		for _, p := range []plane.Point{s.from, s.to} {
			cross(c, clip, p)
		}
		if s.neighbour != "" {
			s.name(c)
		}
	}
}

// crossArm is the length of a cross's arms, in millimetres; words on a tile keep that far from its seams.
const crossArm = 5.0

// cross draws a cross for laying two tiles over each other, as much of it as the tile shows.
func cross(c drawing.Canvas, clip drawing.Box, at plane.Point) {
	for _, d := range []plane.Point{{X: crossArm}, {Y: crossArm}} {
		for _, run := range clip.Cut([]plane.Point{at.Sub(d), at.Add(d)}, false) {
			c.Line(run, false, crossPen)
		}
	}
}

// seam is one side of a tile.
type seam struct {
	from, to  plane.Point // clockwise, so that outward lies to the left
	joined    bool        // there is a tile beyond, printed or not
	neighbour string      // the name of the tile beyond; "" where it is not printed
}

func (t *Tile) sides() []seam {
	k := t.Core.Corners()
	all := []seam{{from: k[3], to: k[2]}, {from: k[2], to: k[1]}, {from: k[1], to: k[0]}, {from: k[0], to: k[3]}}
	for i, d := range [][2]int{{-1, 0}, {0, 1}, {1, 0}, {0, -1}} {
		r, q := t.Row+d[0], t.Column+d[1]
		all[i].joined = r >= 0 && r < t.Rows && q >= 0 && q < t.Columns
		if all[i].joined && t.Printed[r][q] {
			all[i].neighbour = TileName(r, q)
		}
	}
	return all
}

// name writes the neighbour's name beyond the middle of the seam, with a small arrow to it.
func (s seam) name(c drawing.Canvas) {
	out := left(s.to.Sub(s.from).Mul(1 / s.to.Dist(s.from)))
	across := left(out)
	middle := s.from.Lerp(s.to, 0.5)
	c.Fill([]plane.Point{middle.Add(out.Mul(1.6)), middle.Add(across.Mul(1.1)), middle.Sub(across.Mul(1.1))}, drawing.Black)
	w := drawing.Word{Text: s.neighbour, Size: 2.6, Bold: true}
	half := math.Abs(out.X)*w.Width()/2 + math.Abs(out.Y)*fonts.CapHeight*w.Size/2
	w.At = middle.Add(out.Mul(2.2 + half)).Sub(plane.Point{Y: fonts.CapHeight * w.Size / 2})
	c.Word(w.Back(0.5))
}

// The room for the assembly map, in millimetres.
const mapWidth, mapHeight = 36.0, 22.0

// assembly draws a small map of all tiles at the right of the foot, this one shaded, and
// returns its left edge.
func (pg Page) assembly(c drawing.Canvas) float64 {
	t, it := pg.Tile, pg.Items[0]
	w, h := t.Core.Width(), t.Core.Height()
	scale := math.Min(mapWidth/(w*float64(t.Columns)), mapHeight/(h*float64(t.Rows)))
	w, h = w*scale, h*scale
	lo := plane.Point{X: pg.Width - margin - w*float64(t.Columns), Y: margin}
	cell := func(r, k int) drawing.Box {
		at := lo.Add(plane.Point{X: w * float64(k), Y: h * float64(t.Rows-1-r)})
		return drawing.Box{Lo: at, Hi: at.Add(plane.Point{X: w, Y: h})}
	}
	c.Fill(cell(t.Row, t.Column).Corners(), drawing.Pale)
	here := cell(t.Row, t.Column).Lo
	toMap := func(p plane.Point) plane.Point { return here.Add(it.OnPage(p).Sub(t.Core.Lo).Mul(scale)) }
	c.Line(thinned(it.Piece.Outline.Map(toMap), 0.1), true, mapPen)
	for r := range t.Rows {
		for k := range t.Columns {
			if t.Printed[r][k] {
				b := cell(r, k)
				c.Line(b.Corners(), true, thinPen)
				tileLabel(c, b, TileName(r, k))
			}
		}
	}
	return lo.X
}

// tileLabel sets a tile's name in its cell of the map, where the cell has room for letters that can be read.
func tileLabel(c drawing.Canvas, b drawing.Box, name string) {
	word := drawing.Word{Text: name, Size: math.Min(2.4, 0.55*b.Height())}
	if word.Size < 1.4 || word.Width() > b.Width()*0.9 {
		return
	}
	word.At = b.Centre().Sub(plane.Point{Y: fonts.CapHeight * word.Size / 2})
	c.Word(word.Back(0.5))
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
