package nest

import (
	"context"
	"fmt"
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/unit"
)

// Paper is one size of page, upright, in mm, and the margins that pieces keep off. Of a roll, the height is the
// most that a page may have; its pages are only as high as need be.
type Paper struct {
	Width, Height            float64
	Left, Right, Top, Bottom float64
	Roll                     bool
}

// Page is one sheet of paper with the pieces on it; their places are measured from its lower left
// corner, x to the right, y up. Placement.Bin is the page's number.
type Page struct {
	Height     float64
	Placements []Placement
}

// Pages lays pieces on as few pages as the effort allows, each from the bottom up. It fails when a piece is larger
// than what the margins leave, in every way that it may lie; such a piece wants tiles, and is not for this room.
func Pages(ctx context.Context, pieces []Piece, paper Paper, o Options) ([]Page, error) {
	width, height := paper.Width-paper.Left-paper.Right, paper.Height-paper.Top-paper.Bottom
	if !(width > 0 && height > 0) {
		return nil, fmt.Errorf("nest: a page of %g × %g mm has %g × %g mm between its margins, want more than 0", paper.Width, paper.Height, width, height)
	}
	// A bin is filled from the left; a page that is to be filled from the bottom is turned by a quarter.
	turned := make([]Piece, len(pieces))
	for i, p := range pieces {
		turned[i] = p
		turned[i].Turns = nil
		for _, t := range allowed(p) {
			turned[i].Turns = append(turned[i].Turns, t-quarter)
		}
	}
	l, err := Bins(ctx, turned, []Stock{Sheet("page", height, width, 0)}, o)
	if err != nil {
		return nil, err
	}
	pages := make([]Page, len(l.Bins))
	for k, b := range l.Bins {
		pages[k].Height = paper.Height
		if paper.Roll {
			pages[k].Height = math.Min(paper.Height, b.Length+paper.Top+paper.Bottom)
		}
	}
	origin := plane.Point{X: paper.Left + width, Y: paper.Bottom}
	for _, p := range l.Placements {
		p.Turn = nearest(allowed(pieces[p.Piece]), p.Turn+quarter)
		p.Move = origin.Add(plane.Point{X: -p.Move.Y, Y: p.Move.X})
		pages[p.Bin].Placements = append(pages[p.Bin].Placements, p)
	}
	return pages, nil
}

const quarter = 90 * unit.Degree

// allowed are the turns of a piece; as drawn where none is named.
func allowed(p Piece) []unit.Angle {
	if len(p.Turns) == 0 {
		return []unit.Angle{0}
	}
	return p.Turns
}

// nearest is the turn in a list that another was before it was rounded.
func nearest(turns []unit.Angle, t unit.Angle) unit.Angle {
	best := turns[0]
	for _, u := range turns {
		if math.Abs(float64(u-t)) < math.Abs(float64(best-t)) {
			best = u
		}
	}
	return best
}
