package sheet

import (
	"math"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/piece"
)

// The pens of a piece, in millimetres. The cut line is the heaviest, so that the knife follows no other.
var (
	cutPen    = drawing.Pen{Width: 0.5}
	markPen   = drawing.Pen{Width: 0.25}
	centrePen = drawing.Pen{Width: 0.25, Dash: []float64{8, 1.5, 1, 1.5}} // chain line, as ISO 128-2 has it for axes
	innerPen  = drawing.Pen{Width: 0.3, Dash: []float64{3, 1.5}}
	sewPen    = drawing.Pen{Width: 0.3, Dash: []float64{6, 2}}
	leaderPen = drawing.Pen{Width: 0.18, Colour: drawing.Grey}
)

// The sizes of marks, in millimetres.
const (
	pinRadius    = 3.0
	arrowHalf    = 1.6 // half the breadth of an arrow's head
	arrowHead    = 5.0
	featherDepth = 2.5 // from the edge to the middle of the wave
	featherWave  = 1.2
	featherPitch = 5.0
)

// Draw draws the item's piece, its marks and its words, one layer after the other.
func (it Item) Draw(c drawing.Canvas) {
	c.On(drawing.Cut)
	it.line(c, it.Piece.CutLine(), true, cutPen)
	if len(it.Piece.Holes) > 0 {
		c.On(drawing.Holes)
	}
	for _, h := range it.Piece.Holes {
		it.line(c, h, true, cutPen)
	}
	if it.Piece.Sewn() {
		c.On(drawing.Seams)
		it.line(c, it.Piece.Outline, true, sewPen)
	}
	for _, l := range drawing.Layers {
		it.marks(c, l)
	}
	c.On(drawing.Text)
	it.line(c, it.Label.Leader, false, leaderPen)
	for _, w := range it.Label.Words {
		w.At = it.OnPage(w.At)
		w.Turn += turnOf(it.Turned)
		c.Word(w)
	}
}

// marks draws what the piece has of marks on one layer.
func (it Item) marks(c drawing.Canvas, on drawing.Layer) {
	begun := false
	for _, m := range it.Piece.Marks {
		if LayerOf(m.Kind) != on {
			continue
		}
		if !begun {
			c.On(on)
			begun = true
		}
		it.mark(c, m)
	}
}

// LayerOf is the layer that marks of a kind are drawn on; "" for an allowance, which is the cut line itself.
func LayerOf(k piece.Kind) drawing.Layer {
	switch k {
	case piece.Allowance:
		return ""
	case piece.InnerOutline:
		return drawing.Second
	case piece.Dart:
		return drawing.Darts
	case piece.Feather:
		return drawing.Feather
	case piece.Step:
		return drawing.Steps
	}
	return drawing.Marks
}

// line draws what the clip leaves of a line of the piece.
func (it Item) line(c drawing.Canvas, points []plane.Point, closed bool, pen drawing.Pen) {
	moved := make([]plane.Point, len(points))
	whole := true
	for i, p := range points {
		moved[i] = it.OnPage(p)
		whole = whole && it.Clip.Contains(moved[i])
	}
	if whole {
		if len(moved) > 1 {
			c.Line(moved, closed, pen)
		}
		return
	}
	for _, run := range it.Clip.Cut(moved, closed) {
		c.Line(run, false, pen)
	}
}

func (it Item) mark(c drawing.Canvas, m piece.Mark) {
	switch m.Kind {
	case piece.Pin:
		it.pin(c, m.Points)
	case piece.Up:
		it.arrow(c, m.Points)
	case piece.Feather:
		for _, w := range waves(it.Piece, m.Points) {
			it.line(c, w, false, markPen)
		}
	case piece.InnerOutline:
		it.line(c, m.Points, true, innerPen)
	case piece.CentreFront, piece.CentreBack, piece.Side:
		if it.Piece.Sewn() {
			return // a balance line is a seam there, and drawn as one
		}
		it.line(c, m.Points, false, centrePen)
	default:
		it.line(c, m.Points, false, markPen)
	}
}

// pin draws a cross in a circle about every point.
func (it Item) pin(c drawing.Canvas, at []plane.Point) {
	for _, p := range at {
		it.line(c, circle(p, pinRadius), true, markPen)
		for _, d := range []plane.Point{{X: 1.5 * pinRadius}, {Y: 1.5 * pinRadius}} {
			it.line(c, []plane.Point{p.Sub(d), p.Add(d)}, false, markPen)
		}
	}
}

// circle is a polygon of 48 corners: 0.006 mm from a circle of 3 mm.
func circle(centre plane.Point, radius float64) []plane.Point {
	const n = 48
	r := make([]plane.Point, n)
	for i := range r {
		a := 2 * math.Pi * float64(i) / n
		r[i] = centre.Add(plane.Point{X: radius * math.Cos(a), Y: radius * math.Sin(a)})
	}
	return r
}

// arrow draws a line from tail to head and a filled head.
func (it Item) arrow(c drawing.Canvas, m []plane.Point) {
	if len(m) < 2 || m[0] == m[1] {
		return
	}
	tail, tip := m[0], m[1]
	a := tip.Sub(tail).Mul(1 / tip.Dist(tail))
	neck := tip.Sub(a.Mul(arrowHead))
	across := plane.Point{X: -a.Y, Y: a.X}.Mul(arrowHalf)
	it.line(c, []plane.Point{tail, neck}, false, drawing.Pen{Width: 0.4})
	head := []plane.Point{it.OnPage(tip), it.OnPage(neck.Add(across)), it.OnPage(neck.Sub(across))}
	for _, p := range head {
		if !it.Clip.Contains(p) {
			it.line(c, []plane.Point{tip, neck.Add(across), neck.Sub(across)}, true, markPen)
			return
		}
	}
	c.Fill(head, drawing.Black)
}

// waves are a wavy line beside an edge, on the side of the cloth, broken where the cloth is too narrow for it.
func waves(pc piece.Piece, edge []plane.Point) [][]plane.Point {
	t := ticks(edge, featherPitch/8)
	if len(t) == 0 {
		return nil
	}
	side := clothSide(pc, t)
	runs := [][]plane.Point{nil}
	for i, k := range t {
		d := featherDepth + featherWave*math.Sin(2*math.Pi*float64(i)/8)
		last := len(runs) - 1
		if p := k.at.Add(left(k.along).Mul(side * d)); inside(pc, p) {
			runs[last] = append(runs[last], p)
		} else if len(runs[last]) > 0 {
			runs = append(runs, nil)
		}
	}
	return runs
}

// clothSide is 1 where the cloth lies to the left of most of a line, -1 where it lies to the right.
func clothSide(pc piece.Piece, line []tick) float64 {
	score := 0
	for _, k := range line {
		d := left(k.along).Mul(featherDepth)
		if inside(pc, k.at.Add(d)) {
			score++
		}
		if inside(pc, k.at.Sub(d)) {
			score--
		}
	}
	if score < 0 {
		return -1
	}
	return 1
}

func left(d plane.Point) plane.Point { return plane.Point{X: -d.Y, Y: d.X} }
