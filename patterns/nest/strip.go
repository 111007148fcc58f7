package nest

import (
	"context"
	"fmt"
	"math"

	"understructure/geometry/plane"
)

// Strip lays all pieces on a strip from its left edge, as short as the effort allows. The width is
// in mm. It fails when a piece is wider than the strip in every way that it may lie, or when the context ends
// before there is any layout; later, the best layout so far is returned.
func Strip(ctx context.Context, pieces []Piece, width float64, o Options) (Layout, error) {
	if err := refuse(pieces, o); err != nil {
		return Layout{}, err
	}
	if !(width > 0 && width <= farthest) {
		return Layout{}, fmt.Errorf("nest: strip of width %g mm, want more than 0 and at most %g", width, farthest)
	}
	j, err := newJob(ctx, pieces, []Stock{{Outline: rectangle(plane.Point{}, plane.Point{X: 1, Y: width}), open: true}}, o)
	if err != nil {
		return Layout{}, err
	}
	j.open(0)
	for kind, of := range j.of[:len(pieces)] {
		least := math.Inf(1)
		for _, k := range of {
			p := &j.poses[k]
			least = min(least, p.hi.Y-p.lo.Y)
			j.rooms[0].hi.X += float64(pieces[kind].Count) * (p.hi.X - p.lo.X + o.Gap) // room for all, one behind the other
		}
		if least > width+edge {
			return Layout{}, fmt.Errorf("nest: piece %d %q is %.4g mm wide, want at most the strip's %g", kind+1, pieces[kind].ID, least, width)
		}
	}
	if err := j.fill(); err != nil {
		return Layout{}, err
	}
	j.shorten(0)
	l := j.layout()
	return l, l.Check(pieces, j.stock, o.Gap)
}
