package nest

import (
	"slices"

	"understructure/geometry/plane"
)

// Stock is one size of plank or sheet, or one offcut.
type Stock struct {
	ID      string     // names it in errors
	Outline plane.Ring // simple; mm
	Count   int        // how many there are; 0 for as many as are wanted
	Offcut  bool       // to be used before what is whole
	open    bool       // a strip: as long as need be
}

// Sheet is a rectangle as stock, its lower left corner at the origin; mm.
func Sheet(id string, length, width float64, count int) Stock {
	return Stock{ID: id, Outline: rectangle(plane.Point{}, plane.Point{X: length, Y: width}), Count: count}
}

func rectangle(lo, hi plane.Point) plane.Ring {
	return plane.Ring{lo, {X: hi.X, Y: lo.Y}, hi, {X: lo.X, Y: hi.Y}}
}

// lacking is what a stock lacks of the box round it, in convex parts that reach out of the box; none for a sheet.
func lacking(outline plane.Ring) []plane.Ring {
	r := clean(outline)
	lo, hi := r.Bounds()
	if box := rectangle(lo, hi).Area(); r.Area() > box*(1-1e-12) {
		return nil
	}
	const rim = apart / 4 // so that the way out of the stock is never outward
	lo, hi = lo.Sub(plane.Point{X: rim, Y: rim}), hi.Add(plane.Point{X: rim, Y: rim})
	right := 0
	for i, p := range r {
		if p.X > r[right].X {
			right = i
		}
	}
	// One ring: round the rim, in by a slit to the rightmost corner, round the outline the other way, and out again.
	slit := plane.Point{X: hi.X, Y: r[right].Y}
	ring := plane.Ring{slit, hi, {X: lo.X, Y: hi.Y}, lo, {X: hi.X, Y: lo.Y}, slit}
	for k := range len(r) + 1 {
		ring = append(ring, r[(right-k+2*len(r))%len(r)])
	}
	return slices.DeleteFunc(convexParts(ring), func(p plane.Ring) bool { return p.Area() <= 0 })
}
