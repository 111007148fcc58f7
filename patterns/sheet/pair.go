package sheet

import (
	"math"

	"understructure/geometry/plane"
	"understructure/patterns/piece"
)

// alike is how far two outlines may lie apart, one of them turned over, for one template to serve both, mm.
const alike = 0.05

// twins finds, for every piece, the one that the same template serves when it is turned over; -1 for none. The
// first of the two has the second, the second has -1 and is marked as served.
func twins(pieces []piece.Piece) (second []int, served []bool) {
	second, served = make([]int, len(pieces)), make([]bool, len(pieces))
	for i, a := range pieces {
		second[i] = -1
		if served[i] {
			continue
		}
		for j := i + 1; j < len(pieces); j++ {
			if !served[j] && turnedOver(a, pieces[j]) {
				second[i], served[j] = j, true
				break
			}
		}
	}
	return second, served
}

// turnedOver reports whether b is a turned over: the same material, marks and seams, and every line within alike.
func turnedOver(a, b piece.Piece) bool {
	if a.Material != b.Material || a.Thickness != b.Thickness || a.Layer != b.Layer || a.Count != b.Count ||
		len(a.Outline) != len(b.Outline) || len(a.Holes) != len(b.Holes) || len(a.Marks) != len(b.Marks) || len(a.Seams) != len(b.Seams) {
		return false
	}
	lo, _ := b.Outline.Bounds()
	_, hi := a.Outline.Bounds()
	over := func(q plane.Point) plane.Point { return plane.Point{X: lo.X + hi.X - q.X, Y: q.Y} }
	if !same(a.Outline.Map(over).Reverse(), b.Outline) {
		return false
	}
	for k, h := range a.Holes {
		if !same(h.Map(over).Reverse(), b.Holes[k]) {
			return false
		}
	}
	for k, m := range a.Marks {
		if m.Kind != b.Marks[k].Kind || m.Label != b.Marks[k].Label || !same(plane.Ring(m.Points).Map(over), b.Marks[k].Points) {
			return false
		}
	}
	return true
}

func same(a, b []plane.Point) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if math.Max(math.Abs(a[i].X-b[i].X), math.Abs(a[i].Y-b[i].Y)) > alike {
			return false
		}
	}
	return true
}
