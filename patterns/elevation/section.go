package elevation

import (
	"math"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/plan"
)

// Section draws the mount cut at a level and seen from above, front at the top, into a box; all
// bodies have the outlines of the height that is nearest to the level. It draws nothing for a level
// that the plan does not have.
func Section(c drawing.Canvas, p plan.Plan, level string, box drawing.Box) {
	i, ok := Nearest(p, level)
	if !ok {
		return
	}
	all := bodies(p.Surface)
	extent := around(all, i)
	if extent.Width() <= 0 || extent.Height() <= 0 {
		return
	}
	draw := box
	draw.Hi.Y -= 1.5 * wordSize
	fit := into(largest(p, all, extent), draw.Grow(-1))
	c.Word(drawing.Word{Text: "front", Size: 0.85 * wordSize, Colour: drawing.Grey,
		At: plane.Point{X: fit(extent.Centre()).X, Y: fit(extent.Hi).Y + 0.5*wordSize}}.Back(0.5))
	cross(c, fit(plane.Point{}), draw)
	for _, b := range all {
		if i < len(b.rings) && len(b.rings[i]) > 2 {
			c.Line(mapped(b.rings[i], fit), true, b.pen)
		}
	}
}

// around is the box round all bodies at one height.
func around(all []body, i int) drawing.Box {
	b := drawing.Empty()
	for _, each := range all {
		if i < len(each.rings) {
			b = b.Round(each.rings[i]...)
		}
	}
	return b
}

// largest is a box about the middle of one section that would hold the section of any level, so
// that all are drawn to one scale.
func largest(p plan.Plan, all []body, one drawing.Box) drawing.Box {
	for _, l := range p.Levels {
		if i, ok := Nearest(p, l.Name); ok {
			other := around(all, i)
			half := other.Hi.Sub(other.Lo).Mul(0.5)
			one = one.Round(one.Centre().Sub(half), one.Centre().Add(half))
		}
	}
	return one
}

// cross marks the axis of the figure.
func cross(c drawing.Canvas, at plane.Point, box drawing.Box) {
	if !box.Contains(at) {
		return
	}
	for _, d := range []plane.Point{{X: 1.5}, {Y: 1.5}} {
		c.Line([]plane.Point{at.Sub(d), at.Add(d)}, false, drawing.Pen{Width: 0.13, Colour: drawing.Grey})
	}
}

// Nearest is the index of the plan's surface height that is nearest to a level, and whether
// there is such a level and any height within 50 mm of it.
func Nearest(p plan.Plan, level string) (int, bool) {
	for _, l := range p.Levels {
		if l.Name != level {
			continue
		}
		best, gap := 0, 50.0
		found := false
		for i, z := range p.Surface.Heights {
			if d := math.Abs(z - l.Height); d < gap {
				best, gap, found = i, d, true
			}
		}
		return best, found
	}
	return 0, false
}
