package rest

import (
	"math"
	"math/rand/v2"
	"testing"
)

var cloth = Cloth{Thickness: 8, Pad: 65}

// One fold across, one at each side: a layer is two thicknesses and a pad high, 81 mm; two of them, a pad between and
// 20 mm above and below make 267 (derived).
func TestHeightOfABox(t *testing.T) {
	f, err := Lie(dress())
	if err != nil {
		t.Fatal(err)
	}
	p, err := f.Box(1500, 800, cloth)
	if err != nil {
		t.Fatal(err)
	}
	if p.Across.Folds != 1 || p.Sides.Folds != 1 || !p.SleevesOn || math.Abs(p.Height-267) > 1e-9 {
		t.Errorf("%+v; want a fold across, one a side and 267 mm", p)
	}
	if w := f.Whole(cloth); w.Height != 48 || w.Breadth != 1490 {
		t.Errorf("unfolded %+v, want 48 high and 1490 broad", w)
	}
}

// Whatever a garment measures: its box holds it, a bigger one never needs fewer folds in the same box, and with the
// same folds it never gets a smaller box.
func TestBiggerGarmentsNeverGetSmallerBoxes(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 2))
	for range 1000 {
		f, err := Lie(dress())
		if err != nil {
			t.Fatal(err)
		}
		f.Length, f.Breadth, f.Body, f.Trunk = 300+1800*rnd.Float64(), 900+900*rnd.Float64(), 500+380*rnd.Float64(), 300+190*rnd.Float64()
		big, more := f, 1+0.5*rnd.Float64()
		big.Length, big.Breadth, big.Body, big.Trunk = f.Length*more, f.Breadth*more, f.Body*more, f.Trunk*more
		p, err := f.Box(1500, 800, cloth)
		if err != nil {
			t.Fatal(err)
		}
		for set := range Sets {
			for _, part := range p.Across.Parts(set) {
				if part > p.Length-2*Bed+1e-6 {
					t.Fatalf("%+v: a stretch of %g", p, part)
				}
			}
		}
		if p.Breadth < f.Trunk+2*Bed-1e-6 {
			t.Fatalf("%+v folds a bodice of %g", p, f.Trunk)
		}
		same, err := big.Into(p.Length, math.Max(p.Breadth, big.Trunk+100), cloth)
		if err != nil {
			t.Fatal(err)
		}
		if same.Across.Folds < p.Across.Folds {
			t.Fatalf("bigger by %g and folded %d times, not %d", more, same.Across.Folds, p.Across.Folds)
		}
		if b, err := big.Box(1500, 800, cloth); err != nil || b.Across.Folds == p.Across.Folds && b.Sides.Folds == p.Sides.Folds && b.SleevesOn == p.SleevesOn &&
			(b.Length < p.Length || b.Height < p.Height || (p.Sides.Folds > 0) && b.Breadth < p.Breadth) {
			t.Fatalf("bigger by %g: %+v after %+v, %v", more, b, p, err)
		}
	}
}
