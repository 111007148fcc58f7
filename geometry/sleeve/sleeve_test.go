package sleeve

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"understructure/geometry/curve"
	"understructure/geometry/measure"
)

// sheet is the sleeve of an invented day dress.
func sheet() measure.Sheet {
	return measure.Sheet{
		measure.SleeveLength: 560, measure.UnderLength: 430,
		measure.UpperGirth: 310, measure.ElbowGirth: 270, measure.WristGirth: 200,
	}
}

func mustSleeve(t *testing.T, taken Taken) Sleeve {
	t.Helper()
	s, err := Of(taken)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func mustArm(t *testing.T, s Sleeve, o Options) Arm {
	t.Helper()
	a, err := s.Arm(o)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func mustSewn(t *testing.T, a Arm) Sewn {
	t.Helper()
	w, err := a.Sewn()
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s = %.9g, want %.9g within %.2g", what, got, want, within)
	}
}

// Readings are honoured; what was not taken is listed with its source.
func TestTakenAndDrawn(t *testing.T) {
	whole := mustSleeve(t, Taken{Sheet: sheet(), Armscye: 345, Bust: 840, Wearer: measure.Woman})
	if len(whole.Drawn) != 0 {
		t.Errorf("drawn though all was taken: %v", whole.Drawn)
	}
	near(t, "upper girth", whole.Girth(0), 310, 1e-9)
	near(t, "elbow girth", whole.Girth(whole.Elbow), 270, 1e-9)
	near(t, "end girth", whole.Girth(430), 200, 1e-9)
	near(t, "cap", whole.Cap(), 130, 1e-9)
	for _, k := range []measure.Key{measure.SleeveLength, measure.UnderLength, measure.UpperGirth, measure.ElbowGirth, measure.WristGirth} {
		some := sheet()
		delete(some, k)
		s := mustSleeve(t, Taken{Sheet: some, Armscye: 345, Bust: 840, Wearer: measure.Woman})
		if d, ok := s.Drawn[k]; !ok || d.Source == "" || !(d.Value > 0) || len(s.Drawn) != 1 {
			t.Errorf("without %s: drawn %v", k, s.Drawn)
		}
	}
}

// Cotton dress of about 1851, Victoria and Albert Museum O368547: cuff 160, sleeve 605, armscye 350.
func TestPublishedSleeve(t *testing.T) {
	s := mustSleeve(t, Taken{Sheet: measure.Sheet{measure.SleeveLength: 605, measure.WristGirth: 160}, Armscye: 350, Bust: 885, Wearer: measure.Woman, Year: 1851})
	a := mustArm(t, s, Usual(10))
	near(t, "girth at the wrist", a.Girth[0], s.Girth(s.Under-10)-10, 1e-9)
	if upper := a.Girth[len(a.Girth)-1]; upper < 160 || upper > 350-10 {
		t.Errorf("upper arm %.0f mm", upper)
	}
}

func TestRefusals(t *testing.T) {
	for name, c := range map[string]struct {
		taken Taken
		want  string
	}{
		"nothing":         {Taken{}, "nothing was taken"},
		"a negative":      {Taken{Sheet: measure.Sheet{measure.WristGirth: -3}}, "wrist_girth -3 mm"},
		"not a number":    {Taken{Sheet: measure.Sheet{measure.WristGirth: math.NaN()}}, "wrist_girth NaN mm"},
		"under above all": {Taken{Sheet: measure.Sheet{measure.SleeveLength: 300, measure.UnderLength: 310}}, "under_length 310 mm"},
	} {
		if _, err := Of(c.taken); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
	s := mustSleeve(t, Taken{Sheet: sheet(), Armscye: 345})
	for name, o := range map[string]Options{"bend": {Bend: 2}, "ease": {Ease: math.NaN()}, "end": {Short: 400}} {
		if _, err := s.Arm(o); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Nothing on an arm is larger than any place of the sleeve above it, whatever was taken.
func TestArmPassesEverywhere(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 5))
	keys := []measure.Key{measure.SleeveLength, measure.UnderLength, measure.UpperGirth, measure.ElbowGirth, measure.WristGirth}
	least := []float64{150, 0, 120, 110, 90}
	most := []float64{650, 0, 900, 700, 900}
	for range 300 {
		taken := Taken{Sheet: measure.Sheet{}, Armscye: 200 + 200*rng.Float64(), Bust: 500 + 600*rng.Float64(), Year: 1780 + rng.IntN(150)}
		taken.Wearer = []measure.Wearer{measure.Woman, measure.Man, measure.Child}[rng.IntN(3)]
		for i, k := range keys {
			if k != measure.UnderLength && rng.Float64() < 0.7 {
				taken.Sheet[k] = least[i] + (most[i]-least[i])*rng.Float64()
			}
		}
		if len(taken.Sheet) == 0 {
			continue
		}
		s := mustSleeve(t, taken)
		a := mustArm(t, s, Usual(15))
		for i, at := range a.At {
			for z := -s.Cap(); z <= at; z += 5 {
				if g := math.Min(s.Girth(z), s.Armscye); a.Girth[i] >= g {
					t.Fatalf("%v: arm %.1f mm at %.0f, sleeve %.1f at %.0f", taken, a.Girth[i], at, g, z)
				}
			}
		}
		tube := s.Tube(Usual(15))
		for z := 0.0; z < tube.Under; z += 10 {
			if g := tube.Upper + (tube.End-tube.Upper)*z/tube.Under; g > s.passes(z, Usual(15))+1e-6 {
				t.Fatalf("%v: tube %.1f mm at %.0f, %.1f pass", taken, g, z, s.passes(z, Usual(15)))
			}
		}
	}
}

// A tight upper sleeve over a wide lower one leaves the lower one slack, and says so.
func TestNarrowPlaceAboveWideOne(t *testing.T) {
	wide := sheet()
	wide[measure.UpperGirth], wide[measure.ElbowGirth], wide[measure.WristGirth] = 220, 300, 280
	s := mustSleeve(t, Taken{Sheet: wide, Armscye: 345, Bust: 840})
	a := mustArm(t, s, Usual(10))
	for i := range a.At {
		if a.Girth[i] > 210+1e-9 {
			t.Errorf("%.0f mm at %.0f, 210 pass", a.Girth[i], a.At[i])
		}
	}
	if len(a.Notices) != 1 || a.Notices[0].Code != "sleeve-not-filled" || !strings.Contains(a.Notices[0].Message, "220 mm above") {
		t.Errorf("notices %v", a.Notices)
	}
	if full := mustArm(t, mustSleeve(t, Taken{Sheet: sheet(), Armscye: 345}), Usual(15)); len(full.Notices) != 0 {
		t.Errorf("a plain sleeve: %v", full.Notices)
	}
}

// Sewn edges are equally long, the girths at end, elbow and head are as wanted, no piece meets
// itself, and the over-arm is the larger; for many sleeves, seeded.
func TestSewnArms(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 13))
	for n := range 24 {
		sh := measure.Sheet{
			measure.SleeveLength: 380 + 270*rng.Float64(), measure.UpperGirth: 180 + 250*rng.Float64(), measure.WristGirth: 110 + 120*rng.Float64(),
		}
		s := mustSleeve(t, Taken{Sheet: sh, Armscye: 260 + 160*rng.Float64(), Bust: 840, Year: 1880})
		a := mustArm(t, s, Options{Ease: 12, Short: 10, Bend: MostBend * rng.Float64()})
		w := mustSewn(t, a)
		for _, edge := range []string{FrontSeam, BackSeam, HeadFront, HeadBack} {
			near(t, edge, curve.Length(w.Over.Edge(edge))/curve.Length(w.Under.Edge(edge)), 1, 1e-6)
		}
		for _, edge := range []string{OverEnd, UnderEnd} {
			piece := w.Over
			if edge == UnderEnd {
				piece = w.Under
			}
			near(t, edge, curve.Length(piece.Edge(edge))/curve.Length(w.Disc.Edge(edge)), 1, 1e-9)
		}
		last := len(a.At) - 1
		most := 0.03 // what soft cloth takes up in the hand
		if s.Passage(0) < s.Girth(0) {
			most = 0.06 // an arm that is held back by its armscye and tapers at once below
		}
		near(t, "girth at the end", curve.Length(w.Over.Edge(OverEnd))+curve.Length(w.Under.Edge(UnderEnd)), a.Girth[0], 2e-4*a.Girth[0])
		if w.Over.Elbow != nil {
			row := 0
			for a.At[row] != a.Elbow {
				row++
			}
			near(t, "girth at the elbow", curve.Length(w.Over.Elbow)+curve.Length(w.Under.Elbow), a.Girth[row], 2e-4*a.Girth[row])
		}
		for _, p := range []Panel{w.Over, w.Under, w.Disc} {
			if at, met := p.Outline().Crossing(); met || p.Outline().Area() <= 0 {
				t.Errorf("arm %d: a piece meets itself at %v", n, at)
			}
			if p.Strain > most {
				t.Errorf("arm %d, bent by %.2f: strain %.4f", n, a.Bend, p.Strain)
			}
		}
		lo, hi := w.Over.Outline().Bounds()
		near(t, "length of the over-arm", hi.Y-lo.Y, a.At[0]-a.At[last]+a.Head, 0.13*a.At[0]) // it bends
		if w.Over.Outline().Area() <= w.Under.Outline().Area() {
			t.Errorf("arm %d: the over-arm is not the larger", n)
		}
	}
}

// A straight arm of one girth is two rectangles with a head of half an ellipse.
func TestStraightArmIsExact(t *testing.T) {
	sh := measure.Sheet{measure.SleeveLength: 500, measure.UnderLength: 400, measure.UpperGirth: 300, measure.ElbowGirth: 300, measure.WristGirth: 300}
	s := mustSleeve(t, Taken{Sheet: sh, Armscye: 345})
	w := mustSewn(t, mustArm(t, s, Options{}))
	near(t, "strain", math.Max(w.Over.Strain, w.Under.Strain), 0, 1e-7)
	near(t, "under-arm", w.Under.Outline().Area(), 300*(1-overShare)*400, 0.01*300)
	wide := 300 * overShare
	head := math.Pi / 4 * wide * 100 * math.Sin(2*math.Pi/(2*headSteps)) / (2 * math.Pi / (2 * headSteps)) // of the polygon
	near(t, "over-arm", w.Over.Outline().Area(), wide*400+head, 0.02*300)
	_, hi := w.Over.Outline().Bounds()
	near(t, "over-arm's height", hi.Y, 500, 1e-6)
}

func TestSuggested(t *testing.T) {
	for length, want := range map[float64]Support{120: PlainTube, 250: PlainTube, 460: SoftArm, 600: SoftArm} {
		if got := mustSleeve(t, Taken{Sheet: measure.Sheet{measure.SleeveLength: length}}).Suggested(); got != want {
			t.Errorf("a sleeve of %.0f mm: %s, want %s", length, got, want)
		}
	}
}

// A head that is too high to be pleated is lowered, and that is said.
func TestHighHeadIsLowered(t *testing.T) {
	sh := measure.Sheet{measure.SleeveLength: 600, measure.UnderLength: 350, measure.UpperGirth: 200, measure.WristGirth: 150}
	w := mustSewn(t, mustArm(t, mustSleeve(t, Taken{Sheet: sh, Armscye: 400}), Usual(10)))
	near(t, "pleat in lengths of the edge", curve.Length(w.Over.Edge(Pleat))/(curve.Length(w.Under.Edge(HeadFront))+curve.Length(w.Under.Edge(HeadBack))), mostPleat, 1e-6)
	if len(w.Notices) != 1 || w.Notices[0].Code != "arm-head-low" {
		t.Errorf("notices %v", w.Notices)
	}
}

// The statistics are those of ANSUR II and of 507 adults, read from the tables beside the tests.
func TestStatistics(t *testing.T) {
	for who, b := range map[string]body{"women": women, "men": men} {
		for measure, got := range map[string]float64{"sleeve_outseam": b.outseam, "biceps_girth_flexed": b.upper, "wrist_girth": b.wrist} {
			near(t, who+" "+measure, got, ansurMean(t, who, measure), 0.05)
		}
	}
	near(t, "women's chest", womensChest, ansurMean(t, "women", "chest_girth"), 0.05)
	near(t, "men's chest", mensChest, ansurMean(t, "men", "chest_girth"), 0.05)
	near(t, "elbow between wrist and upper arm", forearm, forearmShare(t), 0.02)
}

func BenchmarkSewnArm(b *testing.B) {
	s, err := Of(Taken{Sheet: sheet(), Armscye: 345})
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		a, err := s.Arm(Usual(15))
		if err != nil {
			b.Fatal(err)
		}
		if _, err := a.Sewn(); err != nil {
			b.Fatal(err)
		}
	}
}
