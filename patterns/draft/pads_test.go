package draft

import (
	"math"
	"strings"
	"testing"

	"understructure/geometry/pads"
	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/patterns/piece"
)

func TestPadPieces(t *testing.T) {
	wedge, err := pads.Shoulder{Length: 120, Form: 0.3, Wanted: 0.55, Neck: 360, Wadding: 6}.Wedge()
	if err != nil {
		t.Fatal(err)
	}
	round, err := pads.Mound{Width: 120, Height: 110, Projection: 30, Wadding: 6}.Stack()
	if err != nil {
		t.Fatal(err)
	}
	fill, _, err := pads.Fills(850)
	if err != nil {
		t.Fatal(err)
	}
	pieces := append(Pad(wedge, SlopingShoulder, 6, 1), Pad(round, BustPad, 6, 1)...)
	pieces = append(pieces, Fill(fill, ShoulderFill, 6, 1)...)
	sound(t, pieces)
	if len(wedge.Sheets) < 3 || len(round.Sheets) < 3 {
		t.Fatalf("%d triangles and %d rounds", len(wedge.Sheets), len(round.Sheets))
	}
	last := 0.0
	for i, p := range pieces {
		if p.ID[0] != 'K' || p.Count != 2 || !strings.Contains(p.Material, "wadding 6 mm") {
			t.Errorf("%s: cut %d of %s", p.ID, p.Count, p.Material)
		}
		if p.Layer == 1 {
			last = 0
		}
		if p.Area() <= last {
			t.Errorf("%s is not larger than the one before", p.ID)
		}
		last = p.Area()
		thin := p.Marks[0]
		if thin.Kind != piece.Feather {
			t.Fatalf("%s is not thinned", p.ID)
		}
		if wide := i >= len(wedge.Sheets); wide != (thin.Points[0] == thin.Points[len(thin.Points)-1]) {
			t.Errorf("%s is thinned along %d points", p.ID, len(thin.Points))
		}
		for _, m := range p.Marks {
			for _, q := range m.Points {
				if m.Kind == piece.Up && !p.Outline.Contains(q) {
					t.Errorf("%s: the arrow leaves the piece at %v", p.ID, q)
				}
			}
		}
	}
}

func TestNeckDiscPiece(t *testing.T) {
	base := section.Of(section.Halves{Right: 56, Left: 56, Front: 60, Back: 60, FrontFullness: 2, BackFullness: 2}.Ring())
	d, err := pads.Neck(base, 1, 32, plane.Point{})
	if err != nil {
		t.Fatal(err)
	}
	p := NeckDisc(d, 9)
	sound(t, []piece.Piece{p})
	if p.ID[0] != 'D' || len(p.Holes) != 1 || math.Abs(p.Area()-math.Pi*(55*59-16*16)) > 40 {
		t.Errorf("%s: %d holes, %.0f mm²", p.ID, len(p.Holes), p.Area())
	}
}
