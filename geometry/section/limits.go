package section

import (
	"math"

	"understructure/geometry/curve"
)

// Span is a range of lengths, in millimetres. It is empty where Least > Most.
type Span struct{ Least, Most float64 }

// Clamp returns the length of the span nearest to v.
func (s Span) Clamp(v float64) float64 { return math.Max(s.Least, math.Min(s.Most, v)) }

// How far a slice may be shaped on purpose, as fullness: from nearly a diamond to nearly a box. Fit's own bounds lie a little farther out, so that arcs can be had besides.
const shapedLeanest, shapedFullest = leanest + 0.02, fullest - 0.04

// The most slender and the flattest outline that a slice may be shaped to, breadth over depth.
// The bodies that the profiles come from lie between 0.9 and 2.1 (five standard deviations);
// twice as much is left to the hand, our judgement.
const slenderest, flattest = 0.45, 4.2

// Breadths is how broad the slice can be made that has the girth given and, where that is
// not 0, the depth: beyond it the outline would have corners or points.
func (b Body) Breadths(girth, depth float64) Span {
	if depth == 0 {
		return Span{
			girth * slenderest / b.tape(slenderest, 1, b.fullest()),
			girth * flattest / b.tape(flattest, 1, b.leanest()),
		}
	}
	tape := func(fuller float64) func(float64) float64 {
		return func(breadth float64) float64 { return b.tape(breadth, depth, fuller) }
	}
	return Span{sized(girth, tape(b.fullest())), sized(girth, tape(b.leanest()))}
}

// Depths is how deep the slice can be made that has the girth given and, where that is not
// 0, the breadth.
func (b Body) Depths(girth, breadth float64) Span {
	if breadth == 0 {
		return Span{
			girth / b.tape(flattest, 1, b.fullest()),
			girth / b.tape(slenderest, 1, b.leanest()),
		}
	}
	tape := func(fuller float64) func(float64) float64 {
		return func(depth float64) float64 { return b.tape(breadth, depth, fuller) }
	}
	return Span{sized(girth, tape(b.fullest())), sized(girth, tape(b.leanest()))}
}

// Within returns the factor nearest to 1 by which breadth and depth must both change for the
// slice to have them together with the girth.
func (b Body) Within(girth, breadth, depth float64) float64 {
	return Span{
		girth / b.tape(breadth, depth, b.fullest()),
		girth / b.tape(breadth, depth, b.leanest()),
	}.Clamp(1)
}

// Filled is the slice with the breadth and the depth given, made as much fuller or leaner as
// its girth wants; as far as it can be where that is not enough.
func (b Body) Filled(girth, breadth, depth float64) Body {
	lean, full := b.leanest(), b.fullest()
	fuller, err := curve.Root(func(v float64) float64 { return b.tape(breadth, depth, v) - girth }, lean, full, settled/100)
	if err != nil {
		fuller = full
		if b.tape(breadth, depth, lean) > girth {
			fuller = lean
		}
	}
	b.Breadth, b.Depth = breadth, depth
	b.Front += fuller
	b.Back += fuller
	return b
}

// Uneven is the slice with one side broader, by as much as gives it the left arc, and the size
// that gives it the girth. Breadth over depth and fullness stay. As far as it may be where
// that is not enough.
func (b Body) Uneven(girth, left float64) Body {
	o := b.outline()
	sized := func(balance float64) (c Body, arc float64) {
		c = b
		c.Balance = balance
		skin := c.stretched(o)
		g, _, l := arcs(&skin, c.Seam)
		f := girth / g
		c.Breadth, c.Depth, c.Seam = f*c.Breadth, f*c.Depth, f*c.Seam
		return c, f * l
	}
	balance, err := curve.Root(func(v float64) float64 {
		_, l := sized(v)
		return l - left
	}, -MostBalance, MostBalance, settled/10)
	if err != nil {
		balance = math.Copysign(MostBalance, left-girth/2)
	}
	c, _ := sized(balance)
	return c
}

// farthestSeam is how far a slice may be moved forward or back past its side seams, as a part
// of its depth; our judgement.
const farthestSeam = 0.25

// MostBalance is how much broader one side of a slice may be made: twice as broad as the other;
// our judgement.
const MostBalance = 0.35

// FrontArcs is how long the front arc of the slice may be made by moving it past its seams.
func (b Body) FrontArcs() Span {
	at := func(part float64) float64 {
		b := b
		b.Seam += part * b.Depth
		_, front, _ := b.Arcs()
		return front
	}
	return Span{at(farthestSeam), at(-farthestSeam)}
}

// LeftArcs is how long the left arc of the slice may be made by making one side broader.
func (b Body) LeftArcs() Span {
	at := func(balance float64) float64 {
		b := b
		girth, _, _ := b.Arcs()
		b.Balance = balance
		uneven, _, left := b.Arcs()
		return left * girth / uneven
	}
	return Span{at(-MostBalance), at(MostBalance)}
}

// leanest and fullest are how much leaner or fuller than it is the slice can be made.
func (b Body) leanest() float64 { return math.Min(shapedLeanest-math.Min(b.Front, b.Back), 0) }
func (b Body) fullest() float64 { return math.Max(shapedFullest-math.Max(b.Front, b.Back), 0) }

// tape is the girth of the slice stretched to a breadth and a depth, and made fuller.
func (b Body) tape(breadth, depth, fuller float64) float64 {
	b.Breadth, b.Depth = breadth, depth
	b.Front += fuller
	b.Back += fuller
	girth, _, _ := b.Arcs()
	return girth
}

// sized is the length at which a slice that grows with it has the girth; 0 where even
// without any length it has more.
func sized(girth float64, tape func(float64) float64) float64 {
	size, err := curve.Root(func(v float64) float64 { return tape(v) - girth }, 0, girth/2, met/10)
	if err != nil {
		return 0
	}
	return size
}
