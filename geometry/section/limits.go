package section

import "math"

// Span is a range of lengths, in millimetres. It is empty where Least > Most.
type Span struct{ Least, Most float64 }

// Clamp returns the length of the span nearest to v.
func (s Span) Clamp(v float64) float64 { return math.Max(s.Least, math.Min(s.Most, v)) }

// Inside is the span less a margin at both ends, as far as there is room for it.
func (s Span) Inside(margin float64) Span {
	margin = math.Min(margin, math.Max(s.Most-s.Least, 0)/2)
	return Span{s.Least + margin, s.Most - margin}
}

// How far a slice may be shaped on purpose, as fullness: from nearly a diamond to nearly a box. Fit's own bounds lie a little farther out, so that arcs can be had besides.
const shapedLeanest, shapedFullest = leanest + 0.02, fullest - 0.04

// mostFlattened is by how much a slice may be made flatter or more slender, breadth over depth: twice
// or half. The bodies that the profiles come from differ by half as much, at five standard deviations.
const mostFlattened = 2.0

// ratios are breadth over depth of the most slender and the flattest slice that b may be made.
func (b Body) ratios() (slender, flat float64) {
	r := b.Breadth / b.Depth
	return r / mostFlattened, r * mostFlattened
}

// Breadths is how broad the slice can be made that has the girth and the depth given: beyond it the
// outline would have corners or points.
func (b Body) Breadths(girth, depth float64) Span {
	tape := func(fuller float64) func(float64) float64 {
		return func(breadth float64) float64 { return b.tape(breadth, depth, fuller) }
	}
	return Span{sized(girth, tape(b.fullest())), sized(girth, tape(b.leanest()))}
}

// Depths is how deep the slice can be made that has the girth and the breadth given.
func (b Body) Depths(girth, breadth float64) Span {
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

// farthestSeam is how far a slice may be moved forward or back past its side seams, as a part
// of its depth; our judgement.
const farthestSeam = 0.25

// mostBalance is how much broader one side of a slice may be made: twice as broad as the other;
// our judgement.
const mostBalance = 0.35

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
	return Span{at(-mostBalance), at(mostBalance)}
}

// Leanest and Fullest are the slice made as lean or as full as it may be.
func (b Body) Leanest() Body { return b.stretchedTo(b.Breadth, b.Depth, b.leanest()) }
func (b Body) Fullest() Body { return b.stretchedTo(b.Breadth, b.Depth, b.fullest()) }

// leanest and fullest are how much leaner or fuller than it is the slice can be made.
func (b Body) leanest() float64 { return math.Min(shapedLeanest-math.Min(b.Front, b.Back), 0) }
func (b Body) fullest() float64 { return math.Max(shapedFullest-math.Max(b.Front, b.Back), 0) }
