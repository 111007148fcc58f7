package sheet

import (
	"fmt"
	"math"
	"slices"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
)

// Seam is where a tile is laid over its neighbour: between two crosses that both tiles show, beside the edges of the
// piece. It runs clockwise round the tile, so that outward lies to the left.
type Seam struct {
	From, To    plane.Point // the crosses, on the page
	Named       plane.Point // where between them the neighbour is named
	Row, Column int         // of the neighbour
}

func (s Seam) moved(by plane.Point) Seam {
	s.From, s.To, s.Named = s.From.Add(by), s.To.Add(by), s.Named.Add(by)
	return s
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
			all = append(all, c.naming(Seam{From: from, To: to, Row: r, Column: q}))
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

// naming finds the place on a seam, as near its middle as can be, where the neighbour's name stands on no line.
func (c *cuts) naming(s Seam) Seam {
	for _, part := range []float64{0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74} {
		s.Named = s.From.Lerp(s.To, part)
		box := drawing.Empty().Round(s.word(mostPages).Corners()...)
		if !c.as.crosses(box) {
			return s
		}
	}
	s.Named = s.From.Lerp(s.To, 0.5)
	return s
}

// crosses reports whether any line of the piece passes a box.
func (l lying) crosses(box drawing.Box) bool {
	return slices.ContainsFunc(l.lines, func(s stroke) bool { return len(box.Cut(s.points, s.closed)) > 0 })
}

// mostPages is a page number as long as any, for which room is kept.
const mostPages = 888

// keeps are the corners of what a seam needs beside the piece: the arms of its crosses, and its word.
func (s Seam) keeps() []plane.Point {
	var all []plane.Point
	for _, p := range []plane.Point{s.From, s.To} {
		all = append(all, p.Add(plane.Point{X: crossArm}), p.Sub(plane.Point{X: crossArm}), p.Add(plane.Point{Y: crossArm}), p.Sub(plane.Point{Y: crossArm}))
	}
	return append(all, s.word(mostPages).Corners()...)
}

// draw draws the crosses, the line between them, and what lies beyond, which is on the page of that number.
func (s Seam) draw(c drawing.Canvas, clip drawing.Box, page int) {
	for _, run := range clip.Cut([]plane.Point{s.From, s.To}, false) {
		c.Line(run, false, seamPen)
	}
	for _, p := range []plane.Point{s.From, s.To} {
		cross(c, clip, p)
	}
	out := s.out()
	across := left(out)
	c.Fill([]plane.Point{s.Named.Add(out.Mul(1.6)), s.Named.Add(across.Mul(1.1)), s.Named.Sub(across.Mul(1.1))}, drawing.Black)
	c.Word(s.word(page))
}

func (s Seam) out() plane.Point { return left(s.To.Sub(s.From).Mul(1 / s.To.Dist(s.From))) }

// word names the neighbour and its page beyond the seam, along it; on a short seam the neighbour alone.
func (s Seam) word(page int) drawing.Word {
	const off = 2.2
	name := TileName(s.Row, s.Column)
	w := drawing.Word{Text: fmt.Sprintf("%s, page %d", name, page), Size: 2.6, Bold: true}
	if w.Width() > s.From.Dist(s.To)-2*crossArm {
		w.Text = name
	}
	out := s.out()
	along := left(out)
	if drawing.OnItsHead(along) {
		along = plane.Point{}.Sub(along)
	}
	w.Turn = math.Atan2(along.Y, along.X)
	middle := s.Named.Add(out.Mul(off + fonts.CapHeight*w.Size/2))
	w.At = middle.Sub(left(along).Mul(fonts.CapHeight * w.Size / 2))
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
