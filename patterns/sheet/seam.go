package sheet

import (
	"math"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
)

// Seam is where a tile is laid over its neighbour: between two crosses that both tiles show, beside the edges of the
// piece. It runs clockwise round the tile, so that outward lies to the left.
type Seam struct {
	From, To    plane.Point // the crosses, on the page
	Row, Column int         // of the neighbour
}

// crossArm is the length of a cross's arms, in millimetres; words on a tile keep that far from its seams.
const crossArm = 5.0

// seams are those of one tile, as the piece lies.
func (c *cuts) seams(row, column int) []Seam {
	k := c.core(row, column).Corners()
	var all []Seam
	for _, s := range []struct {
		from, to plane.Point
		up, over int
	}{{k[3], k[2], -1, 0}, {k[2], k[1], 0, 1}, {k[1], k[0], 1, 0}, {k[0], k[3], 0, -1}} {
		r, q := row+s.up, column+s.over
		if r < 0 || r >= c.rows() || q < 0 || q >= c.columns() || !c.reach[r][q] {
			continue
		}
		if from, to, ok := c.crossing(s.from, s.to); ok {
			all = append(all, Seam{from, to, r, q})
		}
	}
	return all
}

// crossing is the stretch of a seam where the piece lies in the overlap, an arm longer at both ends. The two tiles that
// meet there find the same.
func (c *cuts) crossing(from, to plane.Point) (plane.Point, plane.Point, bool) {
	strip := drawing.Empty().Round(from, to)
	along := to.Sub(from).Mul(1 / to.Dist(from))
	if math.Abs(along.X) > math.Abs(along.Y) {
		strip.Lo.Y, strip.Hi.Y = from.Y-Overlap/2, from.Y+Overlap/2
	} else {
		strip.Lo.X, strip.Hi.X = from.X-Overlap/2, from.X+Overlap/2
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range c.as.within(strip) {
		s := p.Sub(from).Dot(along)
		lo, hi = math.Min(lo, s), math.Max(hi, s)
	}
	if lo > hi {
		return from, to, false
	}
	lo, hi = math.Max(lo-crossArm, 0), math.Min(hi+crossArm, to.Dist(from))
	return from.Add(along.Mul(lo)), from.Add(along.Mul(hi)), true
}

// keeps are the corners of what a seam needs beside the piece: the arms of its crosses, and its word.
func (s Seam) keeps() []plane.Point {
	var all []plane.Point
	for _, p := range []plane.Point{s.From, s.To} {
		all = append(all, p.Add(plane.Point{X: crossArm}), p.Sub(plane.Point{X: crossArm}), p.Add(plane.Point{Y: crossArm}), p.Sub(plane.Point{Y: crossArm}))
	}
	return append(all, s.word(TileName(s.Row, s.Column)).Corners()...)
}

// draw draws the crosses, the line between them, and what lies beyond.
func (s Seam) draw(c drawing.Canvas, clip drawing.Box) {
	for _, run := range clip.Cut([]plane.Point{s.From, s.To}, false) {
		c.Line(run, false, seamPen)
	}
	for _, p := range []plane.Point{s.From, s.To} {
		cross(c, clip, p)
	}
	out, middle := s.out(), s.From.Lerp(s.To, 0.5)
	across := left(out)
	c.Fill([]plane.Point{middle.Add(out.Mul(1.6)), middle.Add(across.Mul(1.1)), middle.Sub(across.Mul(1.1))}, drawing.Black)
	c.Word(s.word(TileName(s.Row, s.Column)))
}

func (s Seam) out() plane.Point { return left(s.To.Sub(s.From).Mul(1 / s.To.Dist(s.From))) }

// word is the neighbour's name, beyond the middle of the seam.
func (s Seam) word(name string) drawing.Word {
	out := s.out()
	w := drawing.Word{Text: name, Size: 2.6, Bold: true}
	half := math.Abs(out.X)*w.Width()/2 + math.Abs(out.Y)*fonts.CapHeight*w.Size/2
	w.At = s.From.Lerp(s.To, 0.5).Add(out.Mul(2.2 + half)).Sub(plane.Point{Y: fonts.CapHeight * w.Size / 2})
	return w.Back(0.5)
}

// cross draws a cross for laying two tiles over each other, as much of it as the tile shows.
func cross(c drawing.Canvas, clip drawing.Box, at plane.Point) {
	for _, d := range []plane.Point{{X: crossArm}, {Y: crossArm}} {
		for _, run := range clip.Cut([]plane.Point{at.Sub(d), at.Add(d)}, false) {
			c.Line(run, false, crossPen)
		}
	}
}
