package draft

import (
	"context"
	"math"
	"slices"
	"testing"

	"understructure/geometry/cover"
	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/surface"
	"understructure/patterns/piece"
)

// bust is an invented torso: 300 mm from a round hip over a narrow waist to a full bust, left
// fuller than right by the number of millimetres given.
func bust(left float64) surface.Surface {
	s := surface.Surface{Z: surface.Rows(-200, 200, 4)}
	for _, z := range s.Z {
		f := 1 - 0.22*math.Exp(-z*z/6000)
		r := section.Of(section.Halves{
			Right: 165 * f, Left: 165*f + left, Front: 115 * f, Back: 105 * f, FrontFullness: 2.2, BackFullness: 2.4,
		}.Ring())
		s.R = append(s.R, r)
	}
	return s
}

var levels = []Line{{Name: "bust", Height: 110}, {Name: "waist"}, {Name: "high hip", Height: -90}}

func covered(t *testing.T, left float64) []piece.Piece {
	t.Helper()
	c := cover.Over(bust(left), 1, -150, 150, 110, 0, -90)
	pieces, err := Cover(context.Background(), c, left == 0, 4, levels)
	if err != nil {
		t.Fatal(err)
	}
	return pieces
}

func TestCoverFillsItsSpace(t *testing.T) {
	for _, left := range []float64{0, 12} {
		s, area := bust(left), 0.0
		for _, p := range covered(t, left) {
			area += p.Area()
			if p.Strain > coverStrain || p.Thickness != 1 || p.Layer != 4 || p.Count != 1 {
				t.Errorf("%s: strain %.4f, %g mm, layer %d, cut %d", p.ID, p.Strain, p.Thickness, p.Layer, p.Count)
			}
			if len(p.Position) != len(p.Outline) {
				t.Errorf("%s has %d corners at %d places", p.ID, len(p.Outline), len(p.Position))
			}
			if at, met := p.Outline.Crossing(); met {
				t.Errorf("%s crosses itself at %v", p.ID, at)
			}
		}
		if off := area/s.Area(-150, 150) - 1; math.Abs(off) > 0.02 {
			t.Errorf("panels have %+.2f %% of the skin's area", 100*off)
		}
	}
}

// Both edges of a seam are equally long, and every panel is sewn to something on both sides.
func TestCoverSeamsFit(t *testing.T) {
	for _, left := range []float64{0, 12} {
		pieces := covered(t, left)
		length := map[[2]string]float64{}
		for _, p := range pieces {
			if len(p.Seams) < 2 {
				t.Errorf("%s is sewn along %d edges", p.ID, len(p.Seams))
			}
			for _, s := range p.Seams {
				if s.Kind != "sewn" {
					t.Errorf("%s: a seam is %q", p.ID, s.Kind)
				}
				length[[2]string{p.ID, s.To}] += s.Length
			}
		}
		for ends, l := range length {
			if back := length[[2]string{ends[1], ends[0]}]; !(math.Abs(l/back-1) <= 1e-6) {
				t.Errorf("%s to %s: %.3f and %.3f mm", ends[0], ends[1], l, back)
			}
		}
	}
}

// Along a seam the notches of both panels lie at the same lengths from its lower end.
func TestNotchesMeet(t *testing.T) {
	pieces := covered(t, 12)
	at := map[[2]string][]float64{}
	for _, p := range pieces {
		for _, s := range p.Seams {
			at[[2]string{p.ID, s.To}] = notchesAlong(p, s)
		}
	}
	seen := 0
	for ends, mine := range at {
		other := at[[2]string{ends[1], ends[0]}]
		if len(mine) != len(other) {
			t.Fatalf("%v: %d and %d notches", ends, len(mine), len(other))
		}
		for i := range mine {
			if math.Abs(mine[i]-other[i]) > 0.1 {
				t.Errorf("%v: notches at %.2f and %.2f mm", ends, mine[i], other[i])
			}
		}
		seen += len(mine)
	}
	if seen < 12 {
		t.Errorf("only %d notches", seen)
	}
}

// notchesAlong are the distances of a piece's notches from the lower end of a seam, rising.
func notchesAlong(p piece.Piece, s piece.Seam) []float64 {
	line := slices.Clone(s.Points)
	if line[0].Y > line[len(line)-1].Y {
		slices.Reverse(line)
	}
	var out []float64
	along := 0.0
	for i := 1; i < len(line); i++ {
		along += line[i].Dist(line[i-1])
		for _, m := range p.Marks {
			if m.Kind == piece.Notch && i+1 < len(line) && m.Points[0].Dist(line[i]) < 1e-9 {
				out = append(out, along)
			}
		}
	}
	return out
}

// The line to cut lies 20 mm outside the seam line, and notches between the two.
func TestCoverIsCutOutsideItsSeams(t *testing.T) {
	for _, p := range covered(t, 0) {
		if !p.Sewn() {
			t.Fatalf("%s has no allowance", p.ID)
		}
		cut := p.CutLine()
		for _, q := range cut {
			far := math.Inf(1)
			for i := range p.Outline {
				far = math.Min(far, q.Dist(plane.Nearest(q, p.Outline[i], p.Outline[(i+1)%len(p.Outline)])))
			}
			if far < CoverAllowance-1e-3 {
				t.Errorf("%s is cut %.2f mm outside its seam line", p.ID, far)
			}
		}
		for _, m := range p.Marks {
			if m.Kind == piece.Notch && (p.Outline.Contains(m.Points[1]) || !cut.Contains(m.Points[1])) {
				t.Errorf("%s: the notch at %v points inward", p.ID, m.Points[0])
			}
		}
	}
}
