package vector

import (
	"fmt"
	"math"
	"strconv"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
)

// Paths are written in whole hundredths of a millimetre, a tenth of what a printer can place,
// measured from the path's first point: short numbers make small files.
const grain = 100

// begin saves the page's own space and moves to the grain, with its origin at a point.
func (b *Book) begin(origin plane.Point) {
	b.origin = whole(origin)
	const unit = points / grain
	b.path = fmt.Appendf(b.path[:0], "q %.12f 0 0 %.12f %.4f %.4f cm\n",
		unit, unit, b.origin.X*unit, b.origin.Y*unit)
}

// end paints the path and gives it to the page.
func (b *Book) end(operator string) {
	b.path = append(b.path, operator...)
	b.path = append(b.path, "\nQ"...)
	b.pdf.RawWriteStr(string(b.path))
}

// trace writes the corners, each once.
func (b *Book) trace(line []plane.Point) {
	last := plane.Point{}
	for i, p := range line {
		b.check(p)
		q := whole(p).Sub(b.origin)
		if i > 0 && q == last && i < len(line)-1 {
			continue
		}
		b.number(q.X)
		b.path = append(b.path, ' ')
		b.number(q.Y)
		if i == 0 {
			b.path = append(b.path, " m\n"...)
		} else {
			b.path = append(b.path, " l\n"...)
		}
		last = q
	}
}

// pen sets width, ends, corners and dashes. Solid lines end round, dashes square.
func (b *Book) pen(p drawing.Pen) {
	b.number(math.Round(p.Width * grain))
	b.path = append(b.path, " w 1 j "...)
	if len(p.Dash) == 0 {
		b.path = append(b.path, "1 J\n"...)
		return
	}
	b.path = append(b.path, '[')
	for _, d := range p.Dash {
		b.number(math.Round(d * grain))
		b.path = append(b.path, ' ')
	}
	b.path = append(b.path, "] 0 d\n"...)
}

func (b *Book) colour(c drawing.Colour, operator string) {
	if c != drawing.Black {
		b.path = fmt.Appendf(b.path, "%.3f %.3f %.3f %s\n", float64(c.R)/255, float64(c.G)/255, float64(c.B)/255, operator)
	}
}

func (b *Book) number(x float64) { b.path = strconv.AppendInt(b.path, int64(x), 10) }

func whole(p plane.Point) plane.Point {
	return plane.Point{X: math.Round(p.X * grain), Y: math.Round(p.Y * grain)}
}
