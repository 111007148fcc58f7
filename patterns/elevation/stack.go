package elevation

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// Stack is the slices of a mount drawn apart along the pole, from the front and a little from above.
type Stack struct {
	slices []slice
	poled  bool
	scale  float64
	gap    float64 // between two slices, in millimetres of paper
	deep   float64 // how far the front edges lie below the middle
	back   float64 // and the back edges above it
}

// slice is one plank: its faces, seen from above, and the height of its underside.
type slice struct {
	number            int
	lower, upper      plane.Ring
	bottom, thickness float64
	pins              []plane.Point
}

// The view is lifted by this angle; a label needs this pitch, and these strips stand beside the picture, in millimetres of paper.
var lifted, tilted = math.Sincos(20 * math.Pi / 180)

const (
	pitch       = 1.3 * wordSize
	shown       = 0.55 // how much of a slice's upper face is seen below the next
	numberStrip = 12.0
	heightStrip = 34.0
	poleEnd     = 2.5
)

// StackOf draws a plan's slices apart so that they fit into a width and about a height of paper.
func StackOf(p plan.Plan, width, height float64) Stack {
	s := Stack{}
	for _, q := range p.Pieces {
		if c, ok := sliceOf(q); ok {
			s.slices = append(s.slices, c)
			s.poled = s.poled || len(q.Holes) > 0
		}
	}
	if len(s.slices) == 0 {
		return s
	}
	slices.SortStableFunc(s.slices, func(a, b slice) int { return a.number - b.number })
	tall, size := 0.0, drawing.Empty()
	for _, c := range s.slices {
		tall += c.thickness * tilted
		size = size.Round(c.lower...).Round(c.upper...)
	}
	gaps := float64(len(s.slices) - 1)
	for _, s.scale = range scales {
		deep := size.Height() * lifted / s.scale
		s.gap = max(pitch, shown*deep)
		if size.Width() <= s.scale*(width-numberStrip-heightStrip) && tall/s.scale+deep+gaps*s.gap <= height {
			break
		}
	}
	s.deep, s.back = max(0, size.Hi.Y)*lifted/s.scale, max(0, -size.Lo.Y)*lifted/s.scale
	return s
}

// sliceOf takes a slice from its template: both faces are on it where they differ.
func sliceOf(q piece.Piece) (slice, bool) {
	if !strings.HasPrefix(q.Material, "plank") || len(q.Position) == 0 {
		return slice{}, false
	}
	c := slice{number: q.Layer, lower: q.Outline, upper: q.Outline, bottom: q.Position[0].Z, thickness: q.Thickness}
	for _, m := range q.Marks {
		switch {
		case m.Kind == piece.InnerOutline && m.Label == "bottom face":
			c.lower = m.Points
		case m.Kind == piece.InnerOutline:
			c.upper = m.Points
		case m.Kind == piece.Pin && strings.HasPrefix(m.Label, "to ") && m.Label == fmt.Sprintf("to %d", q.Layer+1):
			c.pins = append(c.pins, m.Points...)
		}
	}
	return c, true
}

// Count is how many slices are drawn.
func (s Stack) Count() int { return len(s.slices) }

// Height is how much paper the stack needs; 0 where there are no slices.
func (s Stack) Height() float64 {
	if len(s.slices) == 0 {
		return 0
	}
	_, top := s.place(len(s.slices) - 1)
	return keyStrip + s.deep + top + max(s.back, poleEnd) + 0.5
}

// place is how far above the lowest slice's middle a slice's faces lie on paper.
func (s Stack) place(n int) (lower, upper float64) {
	for _, c := range s.slices[:n] {
		lower += c.thickness*tilted/s.scale + s.gap
	}
	return lower, lower + s.slices[n].thickness*tilted/s.scale
}

// Draw draws the stack into a box of its height: the numbers on the left, thickness and height of the underside on the right.
func (s Stack) Draw(c drawing.Canvas, box drawing.Box) {
	if len(s.slices) == 0 {
		return
	}
	axis := plane.Point{X: box.Lo.X + numberStrip + (box.Width()-numberStrip-heightStrip)/2, Y: box.Lo.Y + keyStrip + s.deep}
	s.pole(c, axis)
	for i, k := range s.slices {
		lower, upper := s.place(i)
		s.slab(c, k, axis.Add(plane.Point{Y: lower}), axis.Add(plane.Point{Y: upper}))
		at := axis.Y + (lower+upper)/2 - s.deep
		s.label(c, k, at, axis.X, box)
		if i+1 < len(s.slices) {
			next, _ := s.place(i + 1)
			s.pins(c, k, axis, upper, next)
		}
	}
	used := bar(c, s.scale, box.Lo.Add(plane.Point{Y: 1}))
	c.Word(drawing.Word{Text: "thickness, height of underside", Size: wordSize, Colour: drawing.Grey,
		At: plane.Point{X: box.Hi.X, Y: box.Lo.Y + 1}}.Fit(box.Width() - used - 4).Back(1))
}

// flat puts a point of a slice's face on paper: the figure's right on the left, its front nearer.
func (s Stack) flat(at plane.Point) func(plane.Point) plane.Point {
	return func(p plane.Point) plane.Point {
		return plane.Point{X: at.X - p.X/s.scale, Y: at.Y - p.Y*lifted/s.scale}
	}
}

func (s Stack) slab(c drawing.Canvas, k slice, lower, upper plane.Point) {
	bottom, top := k.lower.Map(s.flat(lower)), k.upper.Map(s.flat(upper))
	body := append(slices.Clone(bottom), top...).Hull()
	c.Fill(body, drawing.Pale)
	c.Line(body, true, drawing.Pen{Width: 0.2})
	c.Fill(top, drawing.White)
	c.Line(top, true, drawing.Pen{Width: 0.2})
}

// pole draws the pole through all slices; what is drawn later hides it where it runs inside one.
func (s Stack) pole(c drawing.Canvas, axis plane.Point) {
	if !s.poled {
		return
	}
	_, top := s.place(len(s.slices) - 1)
	c.Line([]plane.Point{{X: axis.X, Y: axis.Y - s.deep - 1.5}, {X: axis.X, Y: axis.Y + top + poleEnd}}, false, drawing.Pen{Width: 0.9, Colour: drawing.Grey})
}

// pins draws the pole and the pins that lead from one slice's upper face to the next.
func (s Stack) pins(c drawing.Canvas, k slice, axis plane.Point, upper, next float64) {
	if s.poled {
		c.Line([]plane.Point{{X: axis.X, Y: axis.Y + upper}, {X: axis.X, Y: axis.Y + next}}, false, drawing.Pen{Width: 0.9, Colour: drawing.Grey})
	}
	for _, p := range k.pins {
		from, to := s.flat(axis.Add(plane.Point{Y: upper}))(p), s.flat(axis.Add(plane.Point{Y: next}))(p)
		c.Line([]plane.Point{from, to}, false, drawing.Pen{Width: 0.3, Dash: []float64{0.6, 0.4}})
	}
}

func (s Stack) label(c drawing.Canvas, k slice, y, axis float64, box drawing.Box) {
	base := y - fonts.CapHeight*wordSize/2
	right, left := reach(k.lower, plane.Point{X: 1})
	number := drawing.Word{Text: fmt.Sprint(k.number), Size: wordSize, Bold: true, At: plane.Point{X: box.Lo.X + 6, Y: base}}.Back(1)
	c.Word(number)
	fine := drawing.Pen{Width: 0.13, Colour: drawing.Grey}
	c.Line([]plane.Point{{X: box.Lo.X + 7.5, Y: y}, {X: axis - left/s.scale - 0.7, Y: y}}, false, fine)
	from := box.Hi.X - heightStrip + 4
	c.Line([]plane.Point{{X: axis - right/s.scale + 0.7, Y: y}, {X: from, Y: y}}, false, fine)
	c.Word(drawing.Word{Text: fmt.Sprintf("%.1f mm", k.thickness), Size: wordSize, At: plane.Point{X: from + 13, Y: base}}.Back(1))
	c.Word(drawing.Word{Text: "at " + whole(k.bottom), Size: wordSize, At: plane.Point{X: box.Hi.X, Y: base}}.Back(1))
}
