package draft

import (
	"understructure/geometry/padding"
	"understructure/geometry/plane"
	"understructure/patterns/piece"
)

// edge is an edge of a layer, the same for the two pieces that meet there.
type edge struct {
	layer int
	a, b  padding.Key
}

// edgeOf is the i-th edge of a part's outline.
func (p part) edgeOf(i int) edge {
	n := len(p.flat.Boundary)
	a, b := p.flat.Source[p.flat.Boundary[i%n]], p.flat.Source[p.flat.Boundary[(i+1)%n]]
	e := edge{p.layer, p.patch.Keys[a], p.patch.Keys[b]}
	if e.b.Less(e.a) {
		e.a, e.b = e.b, e.a
	}
	return e
}

// join writes down, for every piece, which stretches of its outline meet which neighbour in
// the same layer, or itself along a dart. Wadding is butted and caught with herringbone, a cover sewn. Where
// only one side was drawn, its neighbour across the middle is its own like.
func join(pieces []piece.Piece, parts []part, kind string, oneSide bool) {
	owners := map[edge][]int{}
	for i, p := range parts {
		for k := range p.flat.Boundary {
			e := p.edgeOf(k)
			owners[e] = append(owners[e], i)
		}
	}
	for i, p := range parts {
		pieces[i].Seams = seams(i, p, parts, owners, kind, oneSide)
	}
}

// seams walks the outline once and gathers the stretches that have the same neighbour.
func seams(self int, p part, parts []part, owners map[edge][]int, usual string, oneSide bool) []piece.Seam {
	var out []piece.Seam
	before := ""
	for k := range p.flat.Boundary {
		to, kind := "", usual
		if n := neighbour(self, owners[p.edgeOf(k)]); n >= 0 {
			to = parts[n].id
			if n == self {
				kind = "dart"
			}
		} else if oneSide && p.onMiddle(k) {
			to = otherName(p.id)
		}
		if to != "" {
			a, b := p.flat.Points[p.flat.Boundary[k]], p.flat.Points[p.flat.Boundary[(k+1)%len(p.flat.Boundary)]]
			if to != before {
				out = append(out, piece.Seam{To: to, Kind: kind, Points: []plane.Point{a}})
			}
			s := &out[len(out)-1]
			s.Points = append(s.Points, b)
			s.Length += a.Dist(b)
		}
		before = to
	}
	return out
}

// neighbour is the other owner of an edge: the piece itself where both sides are its own,
// −1 where there is none.
func neighbour(self int, owners []int) int {
	if len(owners) < 2 {
		return -1
	}
	for _, o := range owners {
		if o != self {
			return o
		}
	}
	return self
}
