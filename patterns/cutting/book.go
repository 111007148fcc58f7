package cutting

import (
	"fmt"
	"io"
	"math"
	"strings"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
	"understructure/patterns/vector"
)

// The page is A4 lying (ISO 216:2007), in millimetres.
const (
	pageWidth, pageHeight = 297.0, 210.0
	margin                = 15.0
	head                  = 17.0 // for the title, from the upper margin
	textSize              = 2.6
	leading               = 1.4
	dimension             = 7.0 // room for a dimension line
	columns               = 5   // of the key
)

var (
	edgePen = drawing.Pen{Width: 0.35}
	cutPen  = drawing.Pen{Width: 0.2}
	finePen = drawing.Pen{Width: 0.13, Colour: drawing.Grey}
	dashPen = drawing.Pen{Width: 0.13, Dash: []float64{1.5, 1}, Colour: drawing.Grey}
)

// cautions go with what is cut (common practice, no published source).
var cautions = map[bool]string{
	true: "Hot knives and hot wires release fumes from foam: cut with extraction or out of doors, never near the garment, and never leave a hot tool alone. " +
		"Sawing, rasping and sanding raise dust: wear a mask and glasses, clear up before the garment comes near. Cut away from the hand that holds.",
	false: "Cutting wadding and cloth sheds fibres and dust: wear a mask, and keep garments covered until the table is clean. Rotary cutters and long shears: cut away from the hand, close the blade.",
}

// Write writes a page for every plank, offcut and roll of a plan as PDF. It fails where nothing was laid.
func Write(w io.Writer, p plan.Plan, m vector.Meta) error {
	b := vector.NewBook(m)
	for i := range p.Layouts {
		b.Page(pageWidth, pageHeight)
		draw(b, p, i)
	}
	return b.Write(w)
}

// draw draws the page of one layout: title, the stock to scale, the key to its numbers, the cautions.
func draw(c drawing.Canvas, p plan.Plan, i int) {
	l := p.Layouts[i]
	k := keyOf(l, p.Pieces)
	foot := notes(c, cautions[l.Kind != plan.OnRoll])
	foot = k.draw(c, foot+2)
	room := drawing.Box{Lo: plane.Point{X: margin + dimension, Y: foot + dimension + 2}, Hi: plane.Point{X: pageWidth - margin, Y: pageHeight - margin - head}}
	v := viewOf(c, l, room)
	title(c, p, i, v.scale)
	v.stock(l)
	for _, q := range l.Places {
		v.piece(q, k)
	}
}

// scales are what rulers and heads are used to.
var scales = []float64{1, 2, 2.5, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100}

// scaleFor is how many times smaller a rectangle is drawn, the least of the usual scales with which it fits into a box.
func scaleFor(across, up float64, b drawing.Box) float64 {
	need := max(across/b.Width(), up/b.Height())
	for _, s := range scales {
		if s >= need {
			return s
		}
	}
	return math.Ceil(need)
}

func title(c drawing.Canvas, p plan.Plan, i int, scale float64) {
	l := p.Layouts[i]
	y, right := pageHeight-margin, pageWidth-margin
	number := drawing.Word{Text: fmt.Sprintf("page %d of %d, scale 1 : %g", i+1, len(p.Layouts), scale), Size: textSize, At: plane.Point{X: right, Y: y - 4}}.Back(1)
	c.Word(number)
	what := strings.TrimSpace(p.Object.Number + " " + p.Object.Title)
	c.Word(drawing.Word{Text: "Cutting: " + what, Size: 3.8, Bold: true, At: plane.Point{X: margin, Y: y - 4}}.Fit(number.At.X - margin - 4))
	c.Word(drawing.Word{Text: l.Stock, Size: 3.2, At: plane.Point{X: margin, Y: y - 9}}.Fit(right - margin))
	c.Word(drawing.Word{Text: summary(l), Size: textSize, At: plane.Point{X: margin, Y: y - 13.5}, Colour: drawing.Grey}.Fit(right - margin))
}

// summary says how well the stock is used.
func summary(l plan.Layout) string {
	size := fmt.Sprintf("%.0f × %.0f mm", l.Length, l.Width)
	gap := foamGap
	if l.Kind == plan.OnRoll {
		size, gap = fmt.Sprintf("%.2f m off a roll %.0f mm wide", math.Ceil(l.Length/10)/100, l.Width), clothGap
	}
	text := fmt.Sprintf("%s; %.0f %% used, waste %.3f m²; %g mm between cuts", size, 100*l.Utilisation, l.Waste*1e-6, gap)
	if r := l.Rest; r != nil {
		text += fmt.Sprintf("; left over %.0f × %.0f mm, keep it", r.Length, r.Width)
	}
	return text
}

// notes sets a caution at the foot and returns how high it reaches.
func notes(c drawing.Canvas, text string) float64 {
	lines := fonts.Regular.Wrap(text, textSize, pageWidth-2*margin)
	y := margin + float64(len(lines)-1)*textSize*leading
	for i, line := range lines {
		c.Word(drawing.Word{Text: line, Size: textSize, At: plane.Point{X: margin, Y: y - float64(i)*textSize*leading}})
	}
	return y + textSize*leading
}

// view is where the stock's own coordinates lie on the page. A short stretch of a broad roll is turned by a quarter.
type view struct {
	c      drawing.Canvas
	at     plane.Point
	scale  float64
	turned float64 // the width of the stock where it is turned, otherwise 0
}

func viewOf(c drawing.Canvas, l plan.Layout, room drawing.Box) view {
	v := view{c: c}
	across, up := l.Length, l.Width
	if across < up {
		across, up, v.turned = up, across, l.Width
	}
	v.scale = scaleFor(across, up, room)
	v.at = room.Lo.Add(plane.Point{X: max(0, room.Width()-across/v.scale) / 2, Y: max(0, room.Height()-up/v.scale) / 2})
	return v
}

func (v view) of(p plane.Point) plane.Point {
	if v.turned > 0 {
		p = plane.Point{X: v.turned - p.Y, Y: p.X}
	}
	return v.at.Add(p.Mul(1 / v.scale))
}

// stock draws the outline with its dimensions, and what is left over.
func (v view) stock(l plan.Layout) {
	box := drawing.Box{Hi: plane.Point{X: l.Length, Y: l.Width}}
	if r := l.Rest; r != nil {
		rest := drawing.Box{Lo: r.At, Hi: r.At.Add(plane.Point{X: r.Length, Y: r.Width})}
		v.c.Fill(plane.Ring(rest.Corners()).Map(v.of), drawing.Mist)
		w := drawing.Word{Text: fmt.Sprintf("left over %.0f × %.0f mm", r.Length, r.Width), Size: textSize, At: v.of(rest.Centre()), Colour: drawing.Grey}
		if wide := r.Length / v.scale; w.Width() > wide {
			w.Turn = math.Pi / 2
		}
		v.c.Word(w.Fit(max(r.Length, r.Width) / v.scale).Back(0.5))
	}
	v.c.Line(plane.Ring(box.Corners()).Map(v.of), true, edgePen)
	on := drawing.Empty().Round(v.of(box.Lo), v.of(box.Hi))
	v.dimension(on.Lo.Sub(plane.Point{Y: 4}), plane.Point{X: on.Hi.X, Y: on.Lo.Y - 4})
	v.dimension(on.Lo.Sub(plane.Point{X: 4}), plane.Point{X: on.Lo.X - 4, Y: on.Hi.Y})
}

// dimension draws a line with ticks and the length that it stands for.
func (v view) dimension(from, to plane.Point) {
	long := to.Dist(from)
	along := to.Sub(from).Mul(1 / long)
	across := plane.Point{X: -along.Y, Y: along.X}.Mul(1.2)
	v.c.Line([]plane.Point{from, to}, false, finePen)
	for _, p := range []plane.Point{from, to} {
		v.c.Line([]plane.Point{p.Sub(across), p.Add(across)}, false, finePen)
	}
	w := drawing.Word{Text: fmt.Sprintf("%.0f mm", long*v.scale), Size: textSize, Turn: math.Atan2(along.Y, along.X), At: from.Lerp(to, 0.5)}
	below := 3.2
	if along.Y > 0 {
		below = -1 // on the far side of an upright line
	}
	w.At = w.At.Sub(plane.Point{X: -along.Y, Y: along.X}.Mul(below))
	v.c.Word(w.Back(0.5))
}

// piece draws one outline with its number and an arrow that points up the figure.
func (v view) piece(q plan.Place, k key) {
	pc := k.pieces[q.Piece]
	outline := pc.CutLine()
	if q.Outline != nil {
		outline = q.Outline
	}
	on := outline.Map(func(p plane.Point) plane.Point { return v.of(q.Of(p)) })
	v.c.Line(on, true, cutPen)
	for _, m := range pc.Marks {
		if m.Kind == piece.InnerOutline {
			v.c.Line(plane.Ring(m.Points).Map(func(p plane.Point) plane.Point { return v.of(q.Of(p)) }), true, dashPen)
		}
	}
	at, free := heart(outline)
	w := drawing.Word{Text: fmt.Sprint(k.numbers[q.Piece]), Bold: true, Size: min(3.2, 0.9*free/v.scale)}
	if long := w.Size * v.scale; q.Outline == nil && outline.Contains(at.Add(plane.Point{Y: 2.5 * long})) {
		v.arrow(q, at, long)
	}
	w.At = v.of(q.Of(at)).Sub(plane.Point{Y: fonts.CapHeight * w.Size / 2})
	v.c.Word(w.Back(0.5))
}

// arrow points up the figure, beside the number, which leaves it room where a piece is not too small.
func (v view) arrow(q plan.Place, middle plane.Point, long float64) {
	from := middle.Add(plane.Point{Y: long})
	tip := from.Add(plane.Point{Y: long})
	head := plane.Point{X: long / 4, Y: -long / 3}
	for _, l := range [][]plane.Point{{from, tip}, {tip.Add(head), tip, tip.Add(plane.Point{X: -head.X, Y: head.Y})}} {
		v.c.Line(plane.Ring(l).Map(func(p plane.Point) plane.Point { return v.of(q.Of(p)) }), false, finePen)
	}
}
