package section

import (
	"math"

	"understructure/geometry/curve"
)

// Near is the slice with the girth, and the breadth or the depth, given; the other is 0.
// What is open gives way as it readily does: breadth over depth and fullness in the
// proportion that departs least from the usual slice, to the first order.
func (u Usual) Near(girth, breadth, depth float64) Body {
	b := u.Around(girth)
	longer := math.Log(or(breadth, b.Breadth)/b.Breadth) + math.Log(or(depth, b.Depth)/b.Depth)
	return b.fuller(longer*u.fullerBy(girth, breadth > 0)).Reaching(girth, breadth, depth)
}

// Breadths is how broad Near makes the slice, its depth open: from as slender to as flat as it may be.
func (u Usual) Breadths(girth float64) Span {
	slender, flat := u.ratios()
	return Span{u.breadthAt(girth, slender, true), u.breadthAt(girth, flat, true)}
}

// Depths is how deep Near makes the slice, its breadth open.
func (u Usual) Depths(girth float64) Span {
	slender, flat := u.ratios()
	return Span{u.breadthAt(girth, flat, false) / flat, u.breadthAt(girth, slender, false) / slender}
}

// breadthAt is how broad the slice is that Near makes of the breadth, or of the depth, at which
// it comes to a ratio of breadth over depth.
func (u Usual) breadthAt(girth, ratio float64, byBreadth bool) float64 {
	b, by := u.Around(girth), u.fullerBy(girth, byBreadth)
	at := func(longer float64) float64 {
		return girth * ratio / b.fuller(longer*by).tape(ratio, 1, 0)
	}
	const most = 2.0 // times e²: no slice of a given girth grows so long
	longer, err := curve.Root(func(v float64) float64 {
		if byBreadth {
			return v - math.Log(at(v)/b.Breadth)
		}
		return v - math.Log(at(v)/ratio/b.Depth)
	}, -most, most, settled/10)
	if err != nil {
		return b.Breadth
	}
	return at(longer)
}

// fullerBy is how much fuller Near makes the slice with the girth for each e-fold of its breadth, or of
// its depth.
func (u Usual) fullerBy(girth float64, byBreadth bool) float64 {
	b := u.Around(girth)
	const dx = 1e-3
	by := func(breadth, depth, fuller float64) float64 {
		return math.Log(b.tape(breadth, depth, fuller)/girth) / dx
	}
	given, open := by(b.Breadth*(1+dx), b.Depth, 0), by(b.Breadth, b.Depth*(1+dx), 0)
	if !byBreadth {
		given, open = open, given
	}
	full := by(b.Breadth, b.Depth, dx)
	// The tape keeps its length: given·longer + open·wider + full·fuller = 0, where
	// ((longer − wider)/Ratio)² + (fuller/Fullness)² is least.
	ease := open * u.Ratio / (full * u.Fullness)
	wider := (1 - ease*ease*given/open) / (1 + ease*ease)
	return -(given + open*wider) / full
}

// fuller is the slice made fuller, as far as it may be.
func (b Body) fuller(by float64) Body {
	return b.stretchedTo(b.Breadth, b.Depth, math.Max(b.leanest(), math.Min(b.fullest(), by)))
}

// or returns v, or otherwise where v is 0.
func or(v, otherwise float64) float64 {
	if v == 0 {
		return otherwise
	}
	return v
}
