package rest

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"understructure/geometry/measure"
)

// dress is invented.
func dress() Garment {
	return Garment{
		Bodice: measure.Sheet{measure.BustGirth: 840, measure.WaistGirth: 620, measure.BackWaist: 380, measure.SideLength: 195, measure.ShoulderLength: 115, measure.NeckBaseGirth: 365},
		Skirt:  measure.Sheet{measure.WaistGirth: 620, measure.HemGirth: 2900, measure.FrontLength: 1010, measure.SideLength: 1050, measure.BackLength: 1190},
		Sleeve: measure.Sheet{measure.UpperGirth: 310, measure.WristGirth: 200, measure.SleeveLength: 560, measure.UnderLength: 430},
	}
}

// A girth that lies flat is half as wide (derived), and back waist and skirt back make the length, from the neck points
// that lie above the nape.
func TestAGarmentLiesHalfAsWideAsItIsRound(t *testing.T) {
	f, err := Lie(dress())
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(f.Breadth-1450) > 1e-6 {
		t.Errorf("breadth %g mm, want half of the hem, 1450", f.Breadth)
	}
	if want := 380 + 1190 + napeDepth; math.Abs(f.Length-want) > 1e-6 {
		t.Errorf("length %g mm, want %g", f.Length, want)
	}
	if f.Trunk != 420 || math.Abs(f.Waist.X-155) > 1e-6 || math.Abs(f.Waist.Y-1190) > 1e-6 {
		t.Errorf("trunk %g, waist at %v; want 420 and (155, 1190)", f.Trunk, f.Waist)
	}
	lo, hi := f.Sleeve.Bounds()
	if math.Abs(hi.Y-lo.Y-560) > 1e-6 || math.Abs(hi.X-lo.X-155) > 1 {
		t.Errorf("the sleeve lies in %v to %v, want 155 wide and 560 long", lo, hi)
	}
	for _, r := range []interface{ Area() float64 }{f.Front, f.Back, f.Sleeve} {
		if r.Area() <= 0 {
			t.Errorf("an outline of area %g is not counter-clockwise", r.Area())
		}
	}
}

func TestOutlinesDoNotCrossThemselves(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 1))
	for range 300 {
		g := dress()
		for _, s := range []measure.Sheet{g.Bodice, g.Skirt, g.Sleeve} {
			for k := range s {
				s[k] *= 0.8 + 0.4*rnd.Float64()
			}
		}
		f, err := Lie(g)
		if err != nil {
			t.Fatal(err)
		}
		if p, crosses := f.Front.Crossing(); crosses {
			t.Fatalf("front of %v crosses itself at %v", g, p)
		}
		if p, crosses := f.Sleeve.Crossing(); crosses {
			t.Fatalf("sleeve of %v crosses itself at %v", g, p)
		}
	}
}

func TestWhatCannotLieIsSaid(t *testing.T) {
	for _, c := range []struct {
		change func(Garment)
		says   string
	}{
		{func(g Garment) { delete(g.Bodice, measure.BustGirth) }, "bust_girth"},
		{func(g Garment) { g.Skirt[measure.HemGirth] = math.NaN() }, "hem girth"},
		{func(g Garment) { g.Sleeve[measure.SleeveLength] = -3 }, "sleeve length"},
	} {
		g := dress()
		c.change(g)
		if _, err := Lie(g); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("error %v, want it to name %q", err, c.says)
		}
	}
}

// With three sets that change places, n folds hold a length up to n + ⅓ rooms (derived: 3n+1 equal parts, no stretch
// longer than three of them).
func TestFoldsNeeded(t *testing.T) {
	for _, c := range []struct {
		length, room float64
		want         int
	}{{900, 1000, 0}, {1000, 1000, 0}, {1001, 1000, 1}, {4000. / 3, 1000, 1}, {1400, 1000, 2}, {7000. / 3, 1000, 2}, {2340, 1000, 3}} {
		f, err := FoldInto(c.length, c.room)
		if err != nil || f.Folds != c.want {
			t.Errorf("%g into %g: %d folds, %v; want %d", c.length, c.room, f.Folds, err, c.want)
		}
	}
	for _, room := range []float64{0, -1, math.NaN()} {
		if _, err := FoldInto(1000, room); err == nil {
			t.Errorf("a room of %g is not refused", room)
		}
	}
}

// Whatever the length and the room: every stretch fits, their sum is the length, no fold of one set lies where one of
// another does, and one fold fewer would not do.
func TestFoldSetsNeverCoincide(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 9))
	for range 2000 {
		length, room := 100+3000*rnd.Float64(), 150+1500*rnd.Float64()
		f, err := FoldInto(length, room)
		if err != nil {
			t.Fatal(err)
		}
		var all []float64
		for set := range Sets {
			sum := 0.0
			for _, p := range f.Parts(set) {
				sum += p
				if p > room+1e-6 || p <= 0 {
					t.Fatalf("%g into %g: a stretch of %g", length, room, p)
				}
			}
			if math.Abs(sum-length) > 1e-6 {
				t.Fatalf("stretches of %g make %g", length, sum)
			}
			for _, at := range f.Places(set) {
				for _, other := range all {
					if math.Abs(at-other) < f.Pitch()/Sets-1e-6 {
						t.Fatalf("%g into %g: folds at %g and %g", length, room, at, other)
					}
				}
				all = append(all, at)
			}
		}
		if fewer := (Folding{length, f.Folds - 1}); f.Folds > 1 && fewer.Pitch() <= room-1e-6 {
			t.Fatalf("%g into %g: %d folds would do", length, room, fewer.Folds)
		}
	}
}

// A side of 725 mm, half a hem of 1450, past a first fold at 231.7 mm goes back over 531.7 mm in a room of 600 mm: once.
func TestSidesTurnedIn(t *testing.T) {
	in, err := TurnInto(1450, 390, 600)
	if err != nil || in.Folds != 1 {
		t.Errorf("%+v, %v; want one fold a side", in, err)
	}
	for i, want := range []float64{300, 265, 230} {
		if math.Abs(in.At[i]-want) > 1e-9 {
			t.Errorf("set %d folds at %g, want %g", i, in.At[i], want)
		}
	}
	if in, err = TurnInto(500, 420, 600); err != nil || in.Folds != 0 {
		t.Errorf("what is narrow enough is folded %d times, %v", in.Folds, err)
	}
	if _, err = TurnInto(1450, 640, 600); err == nil || !strings.Contains(err.Error(), "640") {
		t.Errorf("a bodice too broad for its box: %v", err)
	}
}
