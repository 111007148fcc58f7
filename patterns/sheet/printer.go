package sheet

import (
	"fmt"
	"math"
	"strconv"

	"understructure/geometry/plane"
	"understructure/patterns/plan"
)

// What a rule of 100 mm may measure, in millimetres, for its printer to be corrected. "Fit to page" takes 3 % and more
// from a page with margins of 6.4 mm (derived), so what lies beyond was not printed at 100 %.
const (
	LeastRule = 98.0
	MostRule  = 102.0
)

// correction is by how much everything on a paper is drawn larger, across and up, so that its printer prints it true.
func correction(x, y float64) plane.Point {
	c := plane.Point{X: x, Y: y}
	if x == 0 {
		c.X = 1
	}
	if y == 0 {
		c.Y = 1
	}
	return c
}

// room is how much of a length of paper a page has, measured as its printer prints. Nobody knows from which edge a
// printer stretches; so that nothing leaves the paper either way, the page keeps off both edges by what it may stretch.
func room(paper, scale float64) float64 {
	if scale < 1 {
		return paper * (2 - 1/scale)
	}
	return paper / scale
}

// trueSize is the paper as its printer fills it.
func trueSize(p plan.Paper) plan.Paper {
	c := correction(p.ScaleX, p.ScaleY)
	p.Width, p.Height = room(p.Width, c.X), room(p.Height, c.Y)
	return p
}

// Print is how a page comes onto paper of a size: drawn larger by Scale, across and up, then moved by At.
type Print struct {
	Width, Height float64
	Scale, At     plane.Point
}

// Print returns how the page comes onto its paper.
func (pg Page) Print() Print {
	c := correction(pg.Scale.X, pg.Scale.Y)
	p := Print{Width: pg.Width / room(1, c.X), Height: pg.Height / room(1, c.Y), Scale: c}
	p.At = plane.Point{X: p.Width * math.Max(0, 1-c.X), Y: p.Height * math.Max(0, 1-c.Y)}
	return p
}

// corrected says for which printer the page is drawn; "" where for any.
func (pg Page) corrected() string {
	c := correction(pg.Scale.X, pg.Scale.Y)
	if c == (plane.Point{X: 1, Y: 1}) {
		return ""
	}
	factor := func(f float64) string { return strconv.FormatFloat(math.Round(f*1e4)/1e4, 'f', -1, 64) }
	return fmt.Sprintf(" Drawn ×%s across, ×%s up for this printer.", factor(c.X), factor(c.Y))
}
