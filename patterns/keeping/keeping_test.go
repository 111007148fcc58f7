package keeping

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"understructure/geometry/measure"
	"understructure/geometry/rest"
	"understructure/patterns/leaf"
	"understructure/patterns/plan"
	"understructure/patterns/plantest"
)

// dress is a plan of an invented dress: hem 2900 mm, back 380 and skirt 1190 mm long.
func dress(strength string, kg float64) plan.Plan {
	p := plan.Plan{Object: plan.Object{Number: "1", Title: "Dress, invented", Strength: strength}, Taken: map[string]plan.Value{}}
	if kg > 0 {
		p.Object.MassKg = &kg
	}
	for part, s := range map[string]measure.Sheet{
		"bodice": {measure.BustGirth: 840, measure.WaistGirth: 620, measure.BackWaist: 380, measure.ShoulderLength: 115, measure.ShoulderSlope: 24, measure.NeckBaseGirth: 365},
		"skirt":  {measure.WaistGirth: 620, measure.HemGirth: 2900, measure.FrontLength: 1010, measure.SideLength: 1050, measure.BackLength: 1190},
		"sleeve": {measure.UpperGirth: 310, measure.WristGirth: 200, measure.SleeveLength: 560},
	} {
		for k, v := range s {
			p.Taken["garment."+part+"."+string(k)] = plan.Value{Value: v}
		}
	}
	return p
}

func without(p plan.Plan, parts ...string) plan.Plan {
	for k := range p.Taken {
		for _, part := range parts {
			if strings.HasPrefix(k, "garment."+part) {
				delete(p.Taken, k)
			}
		}
	}
	return p
}

// scaled is a garment of other measures.
func scaled(p plan.Plan, by float64) plan.Plan {
	for k, v := range p.Taken {
		if !strings.HasSuffix(k, "deg") {
			v.Value *= by
			p.Taken[k] = v
		}
	}
	return p
}

var garments = map[string]plan.Plan{
	"fair":         dress("fair", 2.4),
	"weak":         dress("weak", 5),
	"sound":        dress("sound", 0.9),
	"unknown":      dress("", 0),
	"bodice":       without(dress("sound", 0.4), "skirt"),
	"three values": without(dress("", 0), "skirt", "sleeve"),
	"small":        scaled(dress("fair", 0.3), 0.5),
	"large":        scaled(dress("fair", 9), 1.6),
	"long title": func() plan.Plan {
		p := dress("fair", 2)
		p.Object.Number, p.Object.Title = strings.Repeat("1872.", 40), strings.Repeat("very long title ", 30)
		return p
	}(),
}

func drawn(t *testing.T, p plan.Plan) (*sheet, [2]plantest.Recorder) {
	t.Helper()
	s, err := newSheet(p)
	if err != nil {
		t.Fatal(err)
	}
	var r [2]plantest.Recorder
	for i, page := range []leaf.Page{s.first, s.second} {
		page(&r[i])
		leaf.Footing(&r[i], "Storage sheet – "+p.Object.Number+" "+p.Object.Title, i+1, 2)
	}
	return s, r
}

func TestNothingOverlapsOnAStorageSheet(t *testing.T) {
	for name, p := range garments {
		_, pages := drawn(t, p)
		for i := range pages {
			for _, f := range pages[i].Faults(leaf.Paper) {
				t.Errorf("%s, page %d: %s", name, i+1, f)
			}
			for _, q := range pages[i].Beyond(leaf.Paper.Grow(-8)) {
				t.Errorf("%s, page %d: a line leaves the page at %v", name, i+1, q)
			}
		}
	}
}

// What is printed of folds is what the lying length gives: 1588 mm in 4 parts of 397 (derived).
func TestFoldPlacesArePrinted(t *testing.T) {
	s, pages := drawn(t, garments["fair"])
	if s.packed.Across.Folds != 1 || s.flat.Length != 1588 {
		t.Fatalf("%d folds of %g mm, want 1 of 1588", s.packed.Across.Folds, s.flat.Length)
	}
	said := words(pages[0])
	for _, want := range []string{"397", "794", "1191", "A1", "B1", "C1", "1450 × 1588", "arsenic"} {
		if !strings.Contains(said+words(pages[1]), want) {
			t.Errorf("%q is not on the sheet", want)
		}
	}
}

func words(r plantest.Recorder) string {
	var b strings.Builder
	for _, w := range r.Words {
		fmt.Fprintln(&b, w.Text)
	}
	return b.String()
}

// Weak cloth has thicker pads than fair cloth, and that than sound cloth; it is neither hung nor rolled.
func TestWeakClothIsSpared(t *testing.T) {
	last := 0.0
	for _, strength := range []string{"sound", "fair", "weak"} {
		s, err := newSheet(dress(strength, 0.3))
		if err != nil {
			t.Fatal(err)
		}
		if s.cloth.Pad <= last || s.cloth.Pad < strengths[strength].pad || rest.Bend(s.cloth.Thickness, s.cloth.Pad) > mostBend {
			t.Errorf("%s: a pad of %g mm after %g", strength, s.cloth.Pad, last)
		}
		last = s.cloth.Pad
	}
	_, weak := drawn(t, garments["weak"])
	_, sound := drawn(t, garments["sound"])
	if said := words(weak[1]); !strings.Contains(said, "Not this one") || !strings.Contains(said, "Not for cloth as weak") {
		t.Error("weak cloth may be hung or rolled")
	}
	if said := words(sound[1]); !strings.Contains(said, "The hanger is") || strings.Contains(said, "Not this one") {
		t.Error("sound cloth may not be hung")
	}
	if said := words(weak[0]); !strings.Contains(said, "Two people") {
		t.Error("5 kg are for one person")
	}
}

// Twice the weight on the same cloth is twice the thickness, but for the tissue: 1.2 kg on 1 m² at 250 kg/m³ are 4.8 mm (derived).
func TestThicknessFromWeight(t *testing.T) {
	p := dress("fair", 1)
	s, err := newSheet(p)
	if err != nil {
		t.Fatal(err)
	}
	want := math.Ceil(1/(s.flat.Area*1e-6)/250*1000 + 2)
	if s.cloth.Thickness != want {
		t.Errorf("%g mm thick, want %g", s.cloth.Thickness, want)
	}
}

func TestTheSameSheetTwice(t *testing.T) {
	var a, b bytes.Buffer
	if err := Write(&a, garments["fair"]); err != nil {
		t.Fatal(err)
	}
	if err := Write(&b, dress("fair", 2.4)); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Error("the sheet is not the same twice")
	}
	if err := Write(&a, plan.Plan{}); err == nil || !strings.Contains(err.Error(), "bust_girth") {
		t.Errorf("a plan without measurements: %v", err)
	}
}

func BenchmarkWrite(b *testing.B) {
	for b.Loop() {
		var out bytes.Buffer
		if err := Write(&out, garments["fair"]); err != nil {
			b.Fatal(err)
		}
	}
}
