package draft

import (
	"slices"
	"strings"

	"understructure/geometry/padding"
	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/space"
	"understructure/patterns/piece"
)

// oneSide keeps the zones of the right side.
func oneSide(zs []padding.Zone) []padding.Zone {
	return slices.DeleteFunc(slices.Clone(zs), func(z padding.Zone) bool { return strings.HasSuffix(z.Name, "left") })
}

// otherName is the name of the same place on the other side.
func otherName(s string) string {
	return strings.NewReplacer("right", "left", "left", "right").Replace(s)
}

// turnedOver is a piece of the right side as it serves on the left.
func turnedOver(p piece.Piece) piece.Piece {
	_, hi := p.Outline.Bounds()
	over := func(q plane.Point) plane.Point { return plane.Point{X: hi.X - q.X, Y: q.Y} }
	p.ID, p.Name = otherName(p.ID), otherName(p.Name)
	p.Outline = p.Outline.Map(over).Reverse()
	p.Position = slices.Clone(p.Position)
	for i, q := range p.Position {
		p.Position[i] = space.Point{X: -q.X, Y: q.Y, Z: q.Z}
	}
	slices.Reverse(p.Position)
	p.Marks = slices.Clone(p.Marks)
	for i := range p.Marks {
		p.Marks[i].Points = plane.Ring(p.Marks[i].Points).Map(over)
	}
	p.Seams = slices.Clone(p.Seams)
	for i := range p.Seams {
		p.Seams[i].To = otherName(p.Seams[i].To)
		p.Seams[i].Points = plane.Ring(p.Seams[i].Points).Map(over).Reverse()
	}
	return p
}

// both adds to every piece its like for the other side, next to it.
func both(pieces []piece.Piece) []piece.Piece {
	out := make([]piece.Piece, 0, 2*len(pieces))
	for _, p := range pieces {
		out = append(out, p, turnedOver(p))
	}
	return out
}

// onMiddle reports whether the k-th edge of the outline lies on centre front or centre back.
func (p part) onMiddle(k int) bool {
	n := len(p.flat.Boundary)
	a, b := p.flat.Source[p.flat.Boundary[k%n]], p.flat.Source[p.flat.Boundary[(k+1)%n]]
	column := -1
	switch shared := p.patch.Borders[a] & p.patch.Borders[b]; {
	case shared&padding.First != 0:
		column = p.patch.Zone.From
	case shared&padding.Last != 0:
		column = p.patch.Zone.To
	}
	return column >= 0 && (column%section.Directions == section.Front || column%section.Directions == section.Back)
}
