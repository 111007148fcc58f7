package section

import (
	"math"

	"understructure/geometry/curve"
)

// Filled is the slice with the breadth and the depth given, made as much fuller or leaner as
// the girth wants; as far as it can be where that is not enough.
func (b Body) Filled(girth, breadth, depth float64) Body {
	lean, full := b.leanest(), b.fullest()
	fuller, err := curve.Root(func(v float64) float64 { return b.tape(breadth, depth, v) - girth }, lean, full, settled/100)
	if err != nil {
		fuller = full
		if b.tape(breadth, depth, lean) > girth {
			fuller = lean
		}
	}
	return b.stretchedTo(breadth, depth, fuller)
}

// Around is the slice at the size at which its tape has the girth.
func (b Body) Around(girth float64) Body {
	g, _, _ := b.Arcs()
	f := girth / g
	b.Breadth, b.Depth, b.Seam = f*b.Breadth, f*b.Depth, f*b.Seam
	return b
}

// Reaching is the slice with the breadth given and as deep as the girth wants it, or, where
// the breadth is 0, with the depth given and as broad. Where it would be flatter or more slender than
// it may be made, its fullness gives way.
func (b Body) Reaching(girth, breadth, depth float64) Body {
	slender, flat := b.ratios()
	if depth == 0 {
		wants := sized(girth, func(v float64) float64 { return b.tape(breadth, v, 0) })
		depth = Span{breadth / flat, breadth / slender}.Clamp(wants)
		if depth == wants {
			return b.stretchedTo(breadth, depth, 0)
		}
		return b.Filled(girth, breadth, depth)
	}
	wants := sized(girth, func(v float64) float64 { return b.tape(v, depth, 0) })
	breadth = Span{slender * depth, flat * depth}.Clamp(wants)
	if breadth == wants {
		return b.stretchedTo(breadth, depth, 0)
	}
	return b.Filled(girth, breadth, depth)
}

// Uneven is the slice with one side broader, by as much as gives it the left arc, and the size
// that gives it the girth. Breadth over depth and fullness stay. As far as it may be where
// that is not enough.
func (b Body) Uneven(girth, left float64) Body {
	o := b.outline()
	balance, err := curve.Root(func(v float64) float64 {
		b.Balance = v
		skin := b.stretched(o)
		g, _, l := arcs(&skin, b.Seam)
		return l*girth/g - left
	}, -mostBalance, mostBalance, settled/10)
	if err != nil {
		balance = math.Copysign(mostBalance, left-girth/2)
	}
	b.Balance = balance
	return b.Around(girth)
}

// stretchedTo is the slice at a breadth and a depth, and fuller.
func (b Body) stretchedTo(breadth, depth, fuller float64) Body {
	b.Breadth, b.Depth = breadth, depth
	b.Front += fuller
	b.Back += fuller
	return b
}

// tape is the girth of the slice at a breadth and a depth, and fuller.
func (b Body) tape(breadth, depth, fuller float64) float64 {
	girth, _, _ := b.stretchedTo(breadth, depth, fuller).Arcs()
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
