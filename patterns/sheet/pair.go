package sheet

import (
	"math"
	"slices"

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

// turnedOver reports whether b is a turned over: of the same material, every line, mark and seam within alike, in whatever
// order they were drawn. What the seams are sewn to differs, as left from right.
func turnedOver(a, b piece.Piece) bool {
	if a.Material != b.Material || a.Thickness != b.Thickness || a.Layer != b.Layer || a.Count != b.Count ||
		len(a.Outline) != len(b.Outline) || len(a.Holes) != len(b.Holes) || len(a.Marks) != len(b.Marks) || len(a.Seams) != len(b.Seams) {
		return false
	}
	lo, _ := b.Outline.Bounds()
	_, hi := a.Outline.Bounds()
	over := func(r []plane.Point) plane.Ring {
		return plane.Ring(r).Map(func(q plane.Point) plane.Point { return plane.Point{X: lo.X + hi.X - q.X, Y: q.Y} }).Reverse()
	}
	return sameRing(over(a.Outline), b.Outline) &&
		paired(len(a.Holes), func(i, j int) bool { return sameRing(over(a.Holes[i]), b.Holes[j]) }) &&
		paired(len(a.Marks), func(i, j int) bool {
			m, n := a.Marks[i], b.Marks[j]
			return m.Kind == n.Kind && m.Label == n.Label && sameMark(m.Kind, over(m.Points), n.Points)
		}) &&
		paired(len(a.Seams), func(i, j int) bool {
			s, t := a.Seams[i], b.Seams[j]
			return s.Kind == t.Kind && math.Abs(s.Length-t.Length) <= alike && same(over(s.Points), t.Points)
		})
}

// paired finds for each of n things another of n things that is like it, each once, and reports whether it did.
func paired(n int, like func(i, j int) bool) bool {
	taken := make([]bool, n)
	for i := range n {
		j := 0
		for j < n && (taken[j] || !like(i, j)) {
			j++
		}
		if j == n {
			return false
		}
		taken[j] = true
	}
	return true
}

// sameMark compares marks, of which the first was turned over and so runs backward. An arrow alone has a direction.
func sameMark(k piece.Kind, a plane.Ring, b []plane.Point) bool {
	switch {
	case k == piece.Up:
		return same(a.Reverse(), b)
	case k.Closed():
		return sameRing(a, b) || sameRing(a.Reverse(), b)
	}
	return same(a, b) || same(a.Reverse(), b)
}

// sameRing compares closed lines wherever they begin.
func sameRing(a, b plane.Ring) bool {
	for k := range b {
		if near(a[0], b[k]) && same(a, append(b[k:len(b):len(b)], b[:k]...)) {
			return true
		}
	}
	return false
}

func same(a, b []plane.Point) bool {
	return slices.EqualFunc(a, b, near)
}

func near(p, q plane.Point) bool { return math.Max(math.Abs(p.X-q.X), math.Abs(p.Y-q.Y)) <= alike }
