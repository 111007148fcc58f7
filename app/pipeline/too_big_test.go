package pipeline_test

import (
	"math"
	"strings"
	"testing"

	"understructure/app/record"
	"understructure/geometry/measure"
	"understructure/patterns/plan"
)

// demonstration is the shipped record with the form's readings changed.
func demonstration(t *testing.T, change map[measure.Key]float64) plan.Plan {
	t.Helper()
	r, err := record.Load("../../assets/demo-1872-bodice.json")
	if err != nil {
		t.Fatal(err)
	}
	for k, by := range change {
		r.Form.Bodice[k] += by
	}
	p, err := run(r, false)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func level(p plan.Plan, name measure.Level) plan.Level {
	for _, l := range p.Levels {
		if l.Name == string(name) {
			return l
		}
	}
	return plan.Level{}
}

func warning(p plan.Plan, code string, at measure.Level) (plan.Warning, bool) {
	for _, w := range p.Warnings {
		if w.Code == code && w.Level == string(at) {
			return w, true
		}
	}
	return plan.Warning{}, false
}

// A form that is 3 cm larger round the waist than the garment cannot be padded to fit: a
// padded form is never smaller than the bare one. The maker must hear how much has to go and
// where, before anything is dressed. Common practice, no published source.
func TestAFormTooBigAtTheWaistIsNamed(t *testing.T) {
	fits := demonstration(t, nil)
	if fits.Strains() {
		t.Fatal("the demonstration strains")
	}
	garment, form := *level(fits, measure.Waist).GarmentGirth, *level(fits, measure.Waist).FormGirth
	by := garment - form + 30
	// Breadth and depth grow with the girth.
	p := demonstration(t, map[measure.Key]float64{measure.WaistGirth: by, measure.WaistBreadth: by / 3.2, measure.WaistDepth: by / 3.2})
	if !p.Strains() {
		t.Error("a form 3 cm too big does not strain")
	}
	l := level(p, measure.Waist)
	if got := *l.Clearance; got > -25 || got < -45 {
		t.Errorf("clearance %.1f, want some -30 less the cover", got)
	}
	w, ok := warning(p, "form-too-big", measure.Waist)
	if !ok {
		t.Fatal("nothing is said of the form")
	}
	// Too big for the wanted tape: 3 cm, the ease and 2π times the cover.
	if want := 30 + l.Ease + 2*math.Pi; math.Abs(w.Amount-want) > 8 {
		t.Errorf("amount %.1f, want about %.1f", w.Amount, want)
	}
	for _, word := range []string{"mm at the right side", "mm at the left side"} {
		if !strings.Contains(w.Message, word) {
			t.Errorf("%q does not say how much %s", w.Message, word)
		}
	}
	if w, ok := warning(p, "strain", measure.Waist); !ok || math.Abs(w.Amount+*l.Clearance) > 0.1 {
		t.Errorf("strain is not said with its amount: %+v", w)
	}
	if reduced := demonstration(t, map[measure.Key]float64{measure.WaistGirth: -10, measure.WaistBreadth: -3, measure.WaistDepth: -3}); reduced.Strains() {
		t.Error("the reduced form strains")
	} else if w, ok := warning(reduced, "form-too-big", measure.Waist); ok {
		t.Errorf("the reduced form is said to be too big: %s", w.Message)
	}
}

// Shoulders that are too broad stand out of the garment at the sides, where it has no give. Common practice, no published source.
func TestShouldersTooBroadAreNamed(t *testing.T) {
	p := demonstration(t, map[measure.Key]float64{measure.ShoulderLength: 30, measure.AcrossBack: 50, measure.AcrossFront: 50})
	w, ok := warning(p, "form-too-big", measure.Shoulder)
	if !ok {
		t.Fatalf("nothing is said of the shoulders: %+v", p.Warnings)
	}
	for _, word := range []string{"mm at the right side", "mm at the left side"} {
		if !strings.Contains(w.Message, word) {
			t.Errorf("%q does not say how much %s", w.Message, word)
		}
	}
	if !p.Strains() {
		t.Error("shoulders 3 cm too long on each side do not strain")
	}
}
