package draft

import (
	"fmt"
	"math"

	"understructure/geometry/foam"
	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/space"
	"understructure/patterns/piece"
)

// Slices draws the slices of a core as pieces, bottom first, seen from above with the
// figure's front upward on the page. pole is the diameter of the pole, 0 for none.
func Slices(slices []foam.Slice, plank, pole float64, lines []Line) []piece.Piece {
	var out []piece.Piece
	for _, s := range slices {
		cut := s.Cut()
		p := piece.Piece{
			ID:       fmt.Sprintf("S%02d", s.Number),
			Name:     fmt.Sprintf("slice %d of %d%s", s.Number, len(slices), at(s, lines)),
			Material: fmt.Sprintf("plank %g mm", plank),
			Count:    1, Layer: s.Number, Thickness: s.Thickness(), Outline: cut.Ring(),
			Marks: sliceMarks(s, len(slices)),
		}
		for _, c := range p.Outline {
			p.Position = append(p.Position, space.Point{X: c.X, Y: c.Y, Z: s.Bottom})
		}
		if s.Thickness() < plank-0.05 {
			p.Material += fmt.Sprintf(", cut down to %.1f mm", s.Thickness())
		}
		if s.Pole != nil {
			p.Holes = []plane.Ring{circle(pole / 2).Move(*s.Pole).Reverse()}
		}
		if s.Lower != s.Upper {
			p.Marks = append(p.Marks,
				piece.Mark{Kind: piece.InnerOutline, Label: "bottom face", Points: s.Lower.Ring()},
				piece.Mark{Kind: piece.InnerOutline, Label: "top face", Points: s.Upper.Ring()})
		}
		out = append(out, p)
	}
	return out
}

// at names the levels that a slice holds.
func at(s foam.Slice, lines []Line) string {
	text := ""
	for _, l := range lines {
		if l.Height >= s.Bottom && l.Height < s.Top {
			text += fmt.Sprintf(", %s %.0f mm above its underside", l.Name, l.Height-s.Bottom)
		}
	}
	return text
}

// circle is a hole to drill: 96 corners stay within 0.02 mm of a 32 mm circle. It is drawn
// round its circle so that the hole is never short.
func circle(r float64) plane.Ring {
	const n = 96
	r /= math.Cos(math.Pi / n)
	ring := make(plane.Ring, n)
	for i := range ring {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		ring[i] = plane.Point{X: r * cos, Y: r * sin}
	}
	return ring
}

// tick is the length of a balance mark at the edge of a slice, mm.
const tick = 15.0

func sliceMarks(s foam.Slice, of int) []piece.Mark {
	cut := s.Cut()
	out := []piece.Mark{{Kind: piece.Up, Label: fmt.Sprintf("this face up, slice %d of %d", s.Number, of), Points: []plane.Point{{Y: cut[section.Front] * 0.45}, {Y: cut[section.Front] * 0.7}}}}
	for _, b := range []struct {
		kind piece.Kind
		j    int
	}{{piece.CentreFront, section.Front}, {piece.CentreBack, section.Back}, {piece.Side, section.Right}, {piece.Side, section.Left}} {
		d := section.Direction(b.j)
		out = append(out, piece.Mark{Kind: b.kind, Points: []plane.Point{d.Mul(cut[b.j] - tick), d.Mul(cut[b.j])}})
	}
	for _, p := range s.Pins {
		to := s.Number - 1
		if p.Upper {
			to = s.Number + 1
		}
		out = append(out, piece.Mark{Kind: piece.Pin, Label: fmt.Sprintf("to %d", to), Points: []plane.Point{p.At}})
	}
	return out
}
