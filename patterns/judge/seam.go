package judge

import (
	"math"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/plantest"
	"understructure/patterns/sheet"
)

// Seam is a place on an edge that two neighbouring tiles both show, where it crosses their overlap steeply and nothing
// else is drawn near: the numbers of the two pages, from 0, and the place on each.
type Seam struct {
	Pages    [2]int
	At       [2]plane.Point
	Sideways bool // the tiles lie side by side, so that heights are to be compared
}

// tile is an item that is one, with its page.
type tile struct {
	page int
	item sheet.Item
}

// FirstSeam finds such a place on pages, and whether there is one.
func FirstSeam(pages []sheet.Page) (Seam, bool) {
	var tiles []tile
	for i, pg := range pages {
		for _, it := range pg.Items {
			if it.Tile != nil {
				tiles = append(tiles, tile{i, it})
			}
		}
	}
	for _, a := range tiles {
		for _, b := range tiles {
			if a.item.Piece.ID != b.item.Piece.ID || a.page == b.page {
				continue
			}
			right := b.item.Tile.Row == a.item.Tile.Row && b.item.Tile.Column == a.item.Tile.Column+1
			below := b.item.Tile.Column == a.item.Tile.Column && b.item.Tile.Row == a.item.Tile.Row+1
			if right || below {
				if s, found := between(pages, a, b, right); found {
					return s, true
				}
			}
		}
	}
	return Seam{}, false
}

// between looks along a line in the overlap, past the arms of the crosses.
func between(pages []sheet.Page, a, b tile, sideways bool) (Seam, bool) {
	const past = 6.5
	along, line := plane.Point{X: 1}, a.item.Tile.Core.Hi.X-past
	if !sideways {
		along, line = plane.Point{Y: 1}, a.item.Tile.Core.Lo.Y+past
	}
	move := b.item.Offset.Sub(a.item.Offset)
	ring := a.item.Piece.CutLine().Map(a.item.OnPage)
	for k, p := range ring {
		q := ring[(k+1)%len(ring)]
		d, s, e := q.Sub(p), p.Dot(along), q.Dot(along)
		if (s > line) == (e > line) || math.Abs(d.Dot(along)) < 0.9*d.Norm() {
			continue
		}
		at := p.Lerp(q, (line-s)/(e-s))
		if alone(pages[a.page], a.item, at) && alone(pages[b.page], b.item, at.Add(move)) {
			return Seam{Pages: [2]int{a.page, b.page}, At: [2]plane.Point{at, at.Add(move)}, Sideways: sideways}, true
		}
	}
	return Seam{}, false
}

// alone reports whether one line only, and no word, is drawn near a place that a tile shows.
func alone(pg sheet.Page, it sheet.Item, at plane.Point) bool {
	const near = 2.0
	if !it.Clip.Contains(at) {
		return false
	}
	var r plantest.Recorder
	pg.Draw(&r)
	lines := 0
	for _, l := range r.Lines {
		for k := 1; k < len(l.Points); k++ {
			if distance(at, l.Points[k-1], l.Points[k]) < near {
				lines++
				break
			}
		}
		if n := len(l.Points); l.Closed && n > 1 && distance(at, l.Points[n-1], l.Points[0]) < near && l.Layer != drawing.Cut {
			lines++
		}
	}
	for _, w := range r.Words {
		if drawing.Empty().Round(w.Corners()...).Grow(near).Contains(at) {
			return false
		}
	}
	return lines == 1
}

// distance is that of a point from the line between two others.
func distance(p, from, to plane.Point) float64 {
	d := to.Sub(from)
	s := p.Sub(from).Dot(d) / math.Max(d.Dot(d), 1e-12)
	return p.Dist(from.Add(d.Mul(math.Max(0, math.Min(1, s)))))
}
