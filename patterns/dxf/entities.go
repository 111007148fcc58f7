package dxf

import (
	"math"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/piece"
	"understructure/patterns/sheet"
)

// The sizes of marks, in millimetres: half a pin's cross, the barbs of an arrow and half their spread.
const (
	pinHalf   = 3.0
	barb      = 5.0
	barbApart = 1.6
)

// entities draws the marks, then the holes, and the edge last.
func (f *file) entities() {
	pc := f.item.Piece
	for _, w := range f.item.Label.Words {
		f.word(w)
	}
	if len(f.item.Label.Leader) > 1 {
		f.line(drawing.Text, f.item.Label.Leader, false)
	}
	for _, m := range pc.Marks {
		f.mark(m, pc.Sewn())
	}
	if pc.Sewn() {
		f.line(drawing.Seams, pc.Outline, true)
	}
	for _, h := range pc.Holes {
		f.line(drawing.Holes, h, true)
	}
	f.line(drawing.Cut, pc.CutLine(), true)
}

// mark draws a mark of a piece that is sewn or not.
func (f *file) mark(m piece.Mark, sewn bool) {
	switch m.Kind {
	case piece.Allowance: // is the edge
	case piece.Pin:
		for _, p := range m.Points {
			f.line(drawing.Marks, []plane.Point{p.Sub(plane.Point{X: pinHalf}), p.Add(plane.Point{X: pinHalf})}, false)
			f.line(drawing.Marks, []plane.Point{p.Sub(plane.Point{Y: pinHalf}), p.Add(plane.Point{Y: pinHalf})}, false)
		}
	case piece.Up:
		f.arrow(m.Points)
	case piece.CentreFront, piece.CentreBack, piece.Side:
		if !sewn { // else it is a seam, and drawn as one
			f.line(drawing.Marks, m.Points, false)
		}
	default:
		f.line(sheet.LayerOf(m.Kind), m.Points, m.Kind.Closed())
	}
}

func (f *file) arrow(m []plane.Point) {
	if len(m) < 2 || m[0] == m[1] {
		return
	}
	tail, tip := m[0], m[1]
	along := tip.Sub(tail).Mul(1 / tip.Dist(tail))
	neck, across := tip.Sub(along.Mul(barb)), plane.Point{X: -along.Y, Y: along.X}.Mul(barbApart)
	f.line(drawing.Marks, []plane.Point{tail, tip}, false)
	f.line(drawing.Marks, []plane.Point{neck.Add(across), tip, neck.Sub(across)}, false)
}

// line is a polyline with a vertex at every point.
func (f *file) line(on drawing.Layer, points []plane.Point, closed bool) {
	if len(points) < 2 {
		return
	}
	layer := named(on)
	f.pair(0, "POLYLINE")
	f.pair(8, layer)
	f.pair(66, 1) // vertices follow
	f.point(10, 0, 0)
	if closed {
		f.pair(70, 1)
	}
	for _, p := range points {
		at := f.item.OnPage(p)
		f.pair(0, "VERTEX")
		f.pair(8, layer)
		f.point(10, at.X, at.Y)
	}
	f.pair(0, "SEQEND")
	f.pair(8, layer)
}

func (f *file) word(w drawing.Word) {
	text := escaped(w.Text)
	if text == "" {
		return
	}
	at := f.item.OnPage(w.At)
	f.pair(0, "TEXT")
	f.pair(8, named(drawing.Text))
	f.point(10, at.X, at.Y)
	f.number(40, w.Size*fonts.CapHeight) // the height of capitals is what counts there
	f.pair(1, text)
	f.number(50, w.Turn*180/math.Pi)
}
