package skirt

import (
	"math"
	"strings"
	"testing"

	"understructure/geometry/measure"
	"understructure/geometry/section"
)

// readings are waist, hip and hem girth and the lengths in front, at the side and behind, in cm; 0 was not taken.
func readings(cm ...float64) measure.Sheet {
	s := measure.Sheet{}
	for i, k := range []measure.Key{measure.WaistGirth, measure.HipGirth, measure.HemGirth, measure.FrontLength, measure.SideLength, measure.BackLength} {
		if i < len(cm) && cm[i] > 0 {
			s[k] = cm[i] * 10
		}
	}
	return s
}

// all is the same profile all round.
func all(p Profile, reach Reach, spread float64) Silhouette {
	return Silhouette{Front: p, Side: p, Back: p, Reach: reach, Spread: spread}
}

// post is a round body of the given waist, mm, without hips.
func post(waist float64) Body { return Body{Waist: Round(waist).Section()} }

// torso is an invented small woman's waist and hip.
func torso() Body {
	return Body{Waist: Oval{105, 105, 95, 90}.Section(), Hip: Oval{160, 160, 110, 130}.Section(), HipDepth: 190}
}

func hung(t *testing.T, g Garment, b Body, w Wish) Skirt {
	t.Helper()
	s, err := Hang(g, b, w)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// A cotton dress of about 1851 (V&A O368547): waist 71.0, hem 366.0, from waist to hem 102.5 at
// centre back. Held out to its whole hem it is a cone 116.5 cm across at the hem.
func TestDressOf1851(t *testing.T) {
	s := hung(t, Garment{Readings: readings(71, 0, 366, 0, 0, 102.5)}, post(710), Wish{Gap: 10})
	if got := 2 * s.Back.Reach(); math.Abs(got-1165) > 1 {
		t.Errorf("%.1f mm across at the hem, want 1165", got)
	}
	out := (3660 - 710) / (2 * math.Pi) // derived: Pythagoras
	if want := 10 + math.Sqrt(1025*1025-out*out); math.Abs(s.Stand-want) > 0.5 {
		t.Errorf("stand %.2f, want %.2f", s.Stand, want)
	}
	last := s.Girths[len(s.Girths)-1]
	if last.Tape > 3660+1e-6 || last.Tape < 3659.8 || last.Fullness() > 0.2 || math.Abs(last.Gather()-1) > 1e-4 {
		t.Errorf("hem %+v", last)
	}
}

// Cones and frusta come out exactly both ways: the stand from the hem, and the hem from the stand.
func TestFrustaBothWays(t *testing.T) {
	for _, c := range []struct{ waist, hem, length float64 }{{710, 3660, 1025}, {600, 2400, 990}, {900, 900, 700}, {320, 1500, 300}, {1200, 4000, 1100}} {
		g := Garment{Readings: measure.Sheet{measure.WaistGirth: c.waist, measure.HemGirth: c.hem, measure.FrontLength: c.length, measure.SideLength: c.length, measure.BackLength: c.length}}
		body := post(c.waist)
		found := hung(t, g, body, Wish{Gap: 20})
		out := found.Front.Foot - body.Waist[section.Front]
		want := (c.hem - c.waist) / (2 * math.Pi)
		if math.Abs(out-want) > 1e-3 {
			t.Errorf("%v: leans out by %.6f, want %.6f", c, out, want)
		}
		if want := math.Sqrt(c.length*c.length-out*out) + 20; math.Abs(found.Stand-want) > 1e-6 {
			t.Errorf("%v: stand %.9f, want %.9f", c, found.Stand, want)
		}
		again := hung(t, g, body, Wish{Gap: 20, Stand: found.Stand})
		if math.Abs(again.Front.Foot-found.Front.Foot) > 1e-3 || again.Front.Train > 1e-3 {
			t.Errorf("%v: at that stand the hem reaches %.6f, want %.6f", c, again.Front.Foot, found.Front.Foot)
		}
		for k, row := range found.Cloth { // straight all the way down
			p := row[section.Front]
			if want := body.Waist[section.Front] - p.Z/(found.Stand-20)*out; math.Abs(p.Y-want) > 1e-6 {
				t.Fatalf("%v: row %d lies at %.9f, want %.9f", c, k, p.Y, want)
			}
		}
	}
}

// A dome that leans level at the waist is a quarter of a circle: 2/π of its length down and
// as far out (derived).
func TestDomeIsAQuarterCircle(t *testing.T) {
	length := 1000.0
	m := meridian{length: length, waist: 100, profile: Profile{Dome: 1}}
	m.set(length)
	radius := 2 / math.Pi * length
	if got := m.reach(1) - 100; math.Abs(got-radius) > 1e-9 {
		t.Errorf("reaches out %.6f, want %.6f", got, radius)
	}
	if got := m.drop(1); math.Abs(got-radius) > 0.1 {
		t.Errorf("hangs down %.6f, want %.6f", got, radius)
	}
	for _, p := range m.line(1, false) { // about the centre of the circle
		if r := math.Hypot(p.X-100, p.Y+radius); math.Abs(r-radius) > 0.1 {
			t.Errorf("%v lies %.4f from the middle, want %.4f", p, r, radius)
		}
	}
}

// A dress in two pieces of 1866–67 (Museum of the City of New York 62.190.1): front 106.7, back
// 180.3, hem 518, skirt waist 55.2. The back is 73.6 cm longer: a train.
func TestTrainOf1866(t *testing.T) {
	sil, _, _ := Silhouettes().At(measure.Woman, "dress", 1866)
	s := hung(t, Garment{Readings: readings(55.2, 0, 518, 106.7, 0, 180.3)}, post(540), Wish{Gap: 10, Silhouette: sil})
	if !s.Trained || s.Back.Train < 400 || s.Front.Train != 0 || s.Right.Train > 50 {
		t.Errorf("front %+v, right %+v, back %+v", s.Front, s.Right, s.Back)
	}
	if got := s.Stand - 10; got > 1067 || got < 950 {
		t.Errorf("the front hangs %.0f mm down", got)
	}
	if math.Abs(s.Back.Drop-s.Stand) > 1e-6 {
		t.Errorf("the train starts %.3f mm below the waist, which stands at %.3f", s.Back.Drop, s.Stand)
	}
	standing := s.Girths[s.standing-1].Tape
	if want := sil.Spread * 5180; math.Abs(standing/want-1) > 0.05 {
		t.Errorf("it stands %.0f mm round, the silhouette asks for %.0f", standing, want)
	}
}

// Over hips a straight skirt hangs from them, and a narrow hem draws it in.
func TestTubes(t *testing.T) {
	s := hung(t, Garment{Readings: readings(62, 100, 105, 70, 70, 70)}, torso(), Wish{Gap: 300, Silhouette: all(Profile{Cone: 1}, Reach{1, 1, 1}, 0.9)})
	hip := torso().Hip
	for j, r := range s.Section(-190) {
		if r < hip[j]-1 {
			t.Fatalf("direction %d: %.2f inside the hip, %.2f", j, r, hip[j])
		}
	}
	hobble := hung(t, Garment{Readings: readings(62, 95, 80, 100, 100, 100)}, torso(), Wish{Gap: 10})
	if hem := hobble.Girths[len(hobble.Girths)-1]; hem.Tape > 800.5 {
		t.Errorf("a hem of 80 cm is %.1f mm round", hem.Tape)
	}
}

// Where the garment is not cut wide enough for a dome, the dome gives way; straight breadths have room for it.
func TestDomeNeedsBreadths(t *testing.T) {
	dome := all(Profile{Dome: 1}, Reach{1, 1, 1}, 0.95)
	gored := hung(t, Garment{Readings: readings(71, 0, 366, 102.5)}, post(710), Wish{Gap: 10, Silhouette: dome})
	straight := hung(t, Garment{Readings: readings(71, 0, 366, 102.5), Cut: Straight}, post(710), Wish{Gap: 10, Silhouette: dome})
	if noticed(gored, "profile-drawn-in") == noticed(straight, "profile-drawn-in") {
		t.Errorf("drawn in: gored %v, straight %v", noticed(gored, "profile-drawn-in"), noticed(straight, "profile-drawn-in"))
	}
	z := -200.0
	a, b := gored.Section(z), straight.Section(z)
	if a.Tape() > b.Tape()-50 {
		t.Errorf("200 mm below the waist: gored %.0f, straight %.0f", a.Tape(), b.Tape())
	}
}

func noticed(s Skirt, code string) bool {
	for _, n := range s.Notices {
		if n.Code == code {
			return true
		}
	}
	return false
}

// On too low a stand the hem lies on the floor; much lower, and there is no girth for what lies there.
func TestLowStands(t *testing.T) {
	g := Garment{Readings: readings(71, 0, 366, 102.5, 102.5, 102.5)}
	s := hung(t, g, post(700), Wish{Gap: 10, Stand: 850})
	if !noticed(s, "hem-on-floor") || s.Front.Train < 5 {
		t.Errorf("notices %v, front %+v", s.Notices, s.Front)
	}
	if _, err := Hang(g, post(700), Wish{Gap: 10, Stand: 450}); err == nil || !strings.Contains(err.Error(), "hem_girth is 3660 mm, want at least") {
		t.Errorf("at 450 mm: %v", err)
	}
}

// What was not taken is drawn, and listed.
func TestDrawn(t *testing.T) {
	sil, _, _ := Silhouettes().At(measure.Woman, "dress", 1872)
	s := hung(t, Garment{Readings: readings(0, 0, 0, 100)}, torso(), Wish{Gap: 10, Silhouette: sil})
	for _, k := range []measure.Key{measure.WaistGirth, measure.HemGirth, measure.SideLength, measure.BackLength} {
		if d, ok := s.Drawn[k]; !ok || d.Value <= 0 || d.Source == "" {
			t.Errorf("%s: %+v", k, d)
		}
	}
	if s.Back.Length < s.Front.Length+20 || !noticed(s, "hem-not-taken") {
		t.Errorf("back %.0f, front %.0f, %v", s.Back.Length, s.Front.Length, s.Notices)
	}
	if !math.IsInf(s.Girths[len(s.Girths)-1].Garment, 1) {
		t.Error("a hem that was not taken limits nothing")
	}
}

func TestRefusals(t *testing.T) {
	good := readings(71, 0, 366, 102.5)
	with := func(k measure.Key, v float64) measure.Sheet {
		s := measure.Sheet{k: v}
		for key, value := range good {
			if key != k {
				s[key] = value
			}
		}
		return s
	}
	bad := section.Section{}
	for name, c := range map[string]struct {
		g    Garment
		b    Body
		w    Wish
		says string
	}{
		"no length":        {Garment{Readings: readings(71, 0, 366)}, post(700), Wish{}, "front_length"},
		"nothing":          {Garment{}, post(700), Wish{}, "front_length"},
		"length of 2 mm":   {Garment{Readings: with(measure.FrontLength, 2)}, post(700), Wish{}, "front_length is 2 mm, want 80 to 2000"},
		"hem not a number": {Garment{Readings: with(measure.HemGirth, math.NaN())}, post(700), Wish{}, "hem_girth is NaN mm, want 300 to 12000"},
		"a bodice's key":   {Garment{Readings: with(measure.BustGirth, 880)}, post(700), Wish{}, "bust_girth"},
		"cut":              {Garment{Readings: good, Cut: "wide"}, post(700), Wish{}, `cut is "wide"`},
		"hip depth":        {Garment{Readings: good, HipDepth: -5}, post(700), Wish{}, "hip depth is -5 mm"},
		"no body":          {Garment{Readings: good}, Body{Waist: bad}, Wish{}, "waist lies 0 mm"},
		"no hip":           {Garment{Readings: good}, Body{Waist: post(700).Waist, Hip: bad, HipDepth: 200}, Wish{}, "hip lies 0 mm"},
		"deep hip":         {Garment{Readings: good}, Body{Waist: post(700).Waist, HipDepth: math.Inf(1)}, Wish{}, "hip depth is +Inf"},
		"stand":            {Garment{Readings: good}, post(700), Wish{Stand: 5000}, "waist_height is 5000 mm, want 0 to 1700"},
		"stand too low":    {Garment{Readings: good}, torso(), Wish{Stand: 100}, "waist_height is 100 mm, want at least 200"},
		"gap":              {Garment{Readings: good}, post(700), Wish{Gap: -1}, "gap is -1 mm"},
		"ease":             {Garment{Readings: good}, post(700), Wish{Ease: math.NaN()}, "ease is NaN mm"},
		"train":            {Garment{Readings: good}, post(700), Wish{Train: "long"}, `train is "long"`},
		"spread":           {Garment{Readings: good}, post(700), Wish{Silhouette: all(Profile{Cone: 1}, Reach{1, 1, 1}, 1.5)}, "silhouette.spread is 1.5, want 0.05 to 1"},
		"reach":            {Garment{Readings: good}, post(700), Wish{Silhouette: all(Profile{Cone: 1}, Reach{1, -1, 1}, 1)}, "silhouette.reach.side is -1"},
		"profile":          {Garment{Readings: good}, post(700), Wish{Silhouette: all(Profile{Cone: 2}, Reach{1, 1, 1}, 1)}, "silhouette.front has the shares"},
		"nothing to go by": {Garment{Readings: readings(71, 0, 0, 102.5)}, post(700), Wish{}, "hem_girth was not taken"},
		"contradiction":    {Garment{Readings: readings(71, 0, 100, 100, 100, 700)}, post(700), Wish{}, "hem_girth is 1000 mm, want at least"},
	} {
		if _, err := Hang(c.g, c.b, c.w); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want it to say %q", name, err, c.says)
		}
	}
}
