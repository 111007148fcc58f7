package draft

import (
	"math"
	"strings"
	"testing"

	"understructure/geometry/measure"
	"understructure/geometry/sleeve"
	"understructure/patterns/piece"
)

// inside is an invented sleeve; full has an upper girth of 750 mm.
func inside(t *testing.T, full bool) sleeve.Sleeve {
	t.Helper()
	sh := measure.Sheet{measure.SleeveLength: 560, measure.UnderLength: 430, measure.UpperGirth: 310, measure.ElbowGirth: 270, measure.WristGirth: 200}
	if full {
		sh[measure.UpperGirth] = 750
	}
	s, err := sleeve.Of(sleeve.Taken{Sheet: sh, Armscye: 345, Bust: 840, Year: 1895})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func armOf(t *testing.T, s sleeve.Sleeve) (sleeve.Arm, []piece.Piece) {
	t.Helper()
	a, err := s.Arm(sleeve.Usual(15))
	if err != nil {
		t.Fatal(err)
	}
	w, err := a.Sewn()
	if err != nil {
		t.Fatal(err)
	}
	return a, Arm(w, 3)
}

// seamsMatch holds every sewn seam against its other side.
func seamsMatch(t *testing.T, pieces []piece.Piece) {
	t.Helper()
	length := map[[2]string]float64{}
	for _, p := range pieces {
		for _, s := range p.Seams {
			length[[2]string{p.ID, s.To}] += s.Length
		}
	}
	for ends, l := range length {
		if back := length[[2]string{ends[1], ends[0]}]; !(math.Abs(l/back-1) <= 0.0005) {
			t.Errorf("%s to %s: %.3f and %.3f mm", ends[0], ends[1], l, back)
		}
	}
}

// sound holds pieces to what every template promises.
func sound(t *testing.T, pieces []piece.Piece) {
	t.Helper()
	seen := map[string]bool{}
	for _, p := range pieces {
		if seen[p.ID] || p.Count < 1 || p.Name == "" || p.Material == "" {
			t.Errorf("%q: count %d, name %q, material %q", p.ID, p.Count, p.Name, p.Material)
		}
		seen[p.ID] = true
		if at, met := p.Outline.Crossing(); met || p.Outline.Area() <= 0 {
			t.Errorf("%s meets itself at %v, area %.0f", p.ID, at, p.Outline.Area())
		}
		if at, met := p.CutLine().Crossing(); met || p.CutLine().Area() < p.Outline.Area() {
			t.Errorf("%s: the line to cut meets itself at %v", p.ID, at)
		}
		for _, m := range p.Marks {
			if m.Kind == piece.Notch && p.Outline.Contains(m.Points[1]) {
				t.Errorf("%s: the notch at %v points inward", p.ID, m.Points[0])
			}
		}
	}
}

func labels(p piece.Piece) string {
	var all []string
	for _, m := range p.Marks {
		all = append(all, string(m.Kind)+" "+m.Label)
	}
	return strings.Join(all, "; ")
}

func TestArmPieces(t *testing.T) {
	_, pieces := armOf(t, inside(t, false))
	if len(pieces) != 3 {
		t.Fatalf("%d pieces, want over-arm, under-arm, disc", len(pieces))
	}
	sound(t, pieces)
	seamsMatch(t, pieces)
	for i, want := range [][]string{{"level elbow", "up grain", "middle of the box pleat", "allowance"}, {"level elbow", "open for the filling", "allowance"}, {"up front"}} {
		for _, w := range want {
			if got := labels(pieces[i]); !strings.Contains(got, w) {
				t.Errorf("%s has %s, want %q", pieces[i].ID, got, w)
			}
		}
		if pieces[i].Count != 2 || pieces[i].Layer != 3 {
			t.Errorf("%s: cut %d, layer %d", pieces[i].ID, pieces[i].Count, pieces[i].Layer)
		}
	}
	if elbow := notches(pieces[0]); elbow != 2 {
		t.Errorf("%d notches on the over-arm, want one at each end of the elbow", elbow)
	}
	if n := notches(pieces[1]); n != 5 {
		t.Errorf("%d notches on the under-arm, want two at the elbow and three at the head", n)
	}
}

func notches(p piece.Piece) int {
	n := 0
	for _, m := range p.Marks {
		if m.Kind == piece.Notch {
			n++
		}
	}
	return n
}

func TestTubePiece(t *testing.T) {
	pieces := Tube(inside(t, false).Tube(sleeve.Usual(15)), 1)
	sound(t, pieces)
	if s := pieces[0].Seams; len(s) != 2 || s[0].To != pieces[0].ID || math.Abs(s[0].Length-s[1].Length) > 1e-9 || s[0].Length < 400 {
		t.Errorf("seams %+v", s)
	}
	if notches(pieces[0]) != 2 {
		t.Errorf("%d notches", notches(pieces[0]))
	}
}

// A strip is as long as its fullness wants and twice as deep as it stands out, with its turnings.
func TestPuffPieces(t *testing.T) {
	s := inside(t, true)
	a, _ := armOf(t, s)
	p := s.Puff(a, sleeve.Usual(15))
	pieces := Puff(p, 4)
	sound(t, pieces)
	if len(pieces) != len(p.Frills) || len(pieces) < 4 {
		t.Fatalf("%d pieces of %d frills", len(pieces), len(p.Frills))
	}
	for i, f := range p.Frills {
		_, hi := pieces[i].Outline.Bounds()
		if math.Abs(hi.X-f.Length-20) > 1e-9 || math.Abs(hi.Y-2*f.Deep-20) > 1e-9 {
			t.Errorf("%s is %v for %+v", pieces[i].ID, hi, f)
		}
	}
}
