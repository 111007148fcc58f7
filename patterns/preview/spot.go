package preview

import (
	"math"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/sheet"
)

// At returns the item that lies under a point of a page, and whether there is one.
func At(p sheet.Page, q plane.Point) (sheet.Item, bool) {
	for _, it := range p.Items {
		if it.Clip.Contains(q) && plane.Ring(placed(it, it.Piece.CutLine())).Contains(q) {
			return it, true
		}
	}
	return sheet.Item{}, false
}

// Covered is the share of a page's paper that is cut out as pieces, 0 to 1. What a tile shows of its
// neighbours' parts does not count.
func Covered(p sheet.Page) float64 {
	area := 0.0
	for _, it := range p.Items {
		box := it.Clip
		if it.Tile != nil {
			box = it.Tile.Core
		}
		area += math.Abs(seen(it, it.Piece.CutLine(), box).Area())
		for _, h := range it.Piece.Holes {
			area -= math.Abs(seen(it, h, box).Area())
		}
	}
	if paper := p.Width * p.Height; paper > 0 {
		return area / paper
	}
	return 0
}

// placed is a line of an item's piece where it lies on the page.
func placed(it sheet.Item, line plane.Ring) plane.Ring { return line.Map(it.OnPage) }

// seen is what a box on the page shows of a closed line of an item's piece. Where it falls apart, the
// parts hang together by edges of the box (I. Sutherland and G. Hodgman, "Reentrant polygon clipping", 1974).
func seen(it sheet.Item, line plane.Ring, box drawing.Box) plane.Ring {
	r := placed(it, line)
	for _, side := range [4]func(plane.Point) float64{ // how far a point lies inside
		func(p plane.Point) float64 { return p.X - box.Lo.X },
		func(p plane.Point) float64 { return box.Hi.X - p.X },
		func(p plane.Point) float64 { return p.Y - box.Lo.Y },
		func(p plane.Point) float64 { return box.Hi.Y - p.Y },
	} {
		r = halved(r, side)
	}
	return r
}

// halved is the part of a ring on the inner side of a straight line.
func halved(r plane.Ring, inside func(plane.Point) float64) plane.Ring {
	var out plane.Ring
	for i, q := range r {
		p := r[(i+len(r)-1)%len(r)]
		a, b := inside(p), inside(q)
		if (a < 0) != (b < 0) {
			out = append(out, p.Lerp(q, a/(a-b)))
		}
		if b >= 0 {
			out = append(out, q)
		}
	}
	return out
}
