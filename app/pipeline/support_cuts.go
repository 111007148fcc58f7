package pipeline

import (
	"fmt"
	"math"
	"strings"

	"understructure/patterns/draft"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// longStrip is the length, as it is cut, from which a plain rectangle is cut by measure and needs no template, mm.
const longStrip = 1000.0

// templates parts what was drafted into pieces to be printed and rows of the cutting table: what is too long and
// narrow for a template, and plain rectangles so long that no paper is worth it.
func templates(part string, s draft.Support) (pieces []piece.Piece, cuts []plan.Cut) {
	for _, p := range s.Pieces {
		if strip(p) {
			cuts = append(cuts, measured(part, p))
		} else {
			pieces = append(pieces, p)
		}
	}
	for _, c := range s.Cuts {
		cuts = append(cuts, plan.Cut{Part: part, Name: c.Name, Material: c.Material, Length: c.Length, Width: c.Width, Count: c.Count, Note: c.Note})
	}
	return pieces, cuts
}

// strip reports whether a piece is a plain rectangle, sewn to nothing but itself, that is longer than a metre or of
// net, which is gathered anyway.
func strip(p piece.Piece) bool {
	lo, hi := p.Outline.Bounds()
	if len(p.Outline) != 4 || p.Area() < (hi.X-lo.X)*(hi.Y-lo.Y)*(1-1e-9) {
		return false
	}
	if lo, hi := p.CutLine().Bounds(); math.Max(hi.X-lo.X, hi.Y-lo.Y) <= longStrip && !strings.HasSuffix(p.Material, "net") {
		return false
	}
	for _, s := range p.Seams {
		if s.To != p.ID {
			return false
		}
	}
	return true
}

// measured is such a piece as a row: as it is cut, with what its marks say in words.
func measured(part string, p piece.Piece) plan.Cut {
	lo, hi := p.CutLine().Bounds()
	wide, high := hi.X-lo.X, hi.Y-lo.Y
	c := plan.Cut{Part: part, Name: p.ID + ", " + p.Name, Material: p.Material, Length: wide, Width: high, Count: p.Count}
	along := "its length"
	if high > wide {
		c.Length, c.Width, along = high, wide, "its width"
	}
	var notes []string
	if p.Sewn() {
		inner, _ := p.Outline.Bounds()
		notes = append(notes, fmt.Sprintf("seam lines %.0f mm inside all round", inner.X-lo.X))
	}
	c.Note = strings.Join(append(notes, lines(p, lo.Y, along)...), "; ")
	return c
}

// lines says where the lines along a rectangle are drawn, counted from its lower edge.
func lines(p piece.Piece, from float64, along string) []string {
	at := map[string][]string{}
	var labels []string
	for _, m := range p.Marks {
		if m.Kind != piece.LevelLine {
			continue
		}
		if at[m.Label] == nil {
			labels = append(labels, m.Label)
		}
		at[m.Label] = append(at[m.Label], fmt.Sprintf("%.0f", m.Points[0].Y-from))
	}
	var out []string
	for _, label := range labels {
		words := strings.TrimPrefix(label+", lines along "+along, ", ") // some lines have no name
		out = append(out, fmt.Sprintf("%s %s mm above one edge", words, strings.Join(at[label], ", ")))
	}
	return out
}

// area of a row of the cutting table, mm²; 0 for what is sold by length.
func area(c plan.Cut) float64 {
	const tape = 30.0 // mm: what is narrower is a tape or a steel
	if c.Width <= tape {
		return 0
	}
	return c.Length * c.Width * float64(c.Count)
}
