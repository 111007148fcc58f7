package asbuilt

import (
	"math"

	"understructure/geometry/plane"
	"understructure/patterns/piece"
)

// rise is the greatest distance of two rows on the side of a slice, mm.
const rise = 4.0

// treads is how many rows lie on the level step between two slices, its edges left out.
const treads = 3

// stacked are the outlines of slices piled up: each from its bottom face to its top face,
// straight between them where they differ, and over the step to the next.
func stacked(slices []piece.Piece) Bare {
	var b Bare
	var under [columns]float64
	for _, s := range slices {
		if len(s.Position) == 0 {
			continue // Check objects to it
		}
		lower, upper := faces(s)
		from, to := spokes(lower), spokes(upper)
		bottom := s.Position[0].Z
		for i := 1; i <= treads && len(b.Heights) > 0; i++ {
			b.add(bottom, between(under, from, float64(i)/(treads+1)))
		}
		n := max(2, int(math.Ceil(s.Thickness/rise)))
		for i := range n + 1 {
			t := float64(i) / float64(n)
			b.add(bottom+t*s.Thickness, between(from, to, t))
		}
		under = to
	}
	return b
}

func (b *Bare) add(z float64, outline plane.Ring) {
	b.Heights, b.Outlines = append(b.Heights, z), append(b.Outlines, outline)
}

// faces are the outlines of both faces of a slice as finished, where its position puts them.
func faces(s piece.Piece) (lower, upper plane.Ring) {
	at := s.Position[0]
	shift := plane.Point{X: at.X, Y: at.Y}.Sub(s.Outline[0])
	lower = s.Outline.Move(shift)
	upper = lower
	for _, m := range s.Marks {
		if m.Kind != piece.InnerOutline {
			continue
		}
		if m.Label == "bottom face" {
			lower = plane.Ring(m.Points).Move(shift)
		} else {
			upper = plane.Ring(m.Points).Move(shift)
		}
	}
	return lower, upper
}

// between is the outline at a fraction of the way from one to another.
func between(from, to [columns]float64, t float64) plane.Ring {
	out := make(plane.Ring, columns)
	for j := range out {
		out[j] = direction(j).Mul(from[j] + t*(to[j]-from[j]))
	}
	return out
}
