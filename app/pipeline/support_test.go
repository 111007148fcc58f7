package pipeline_test

import (
	"context"
	"errors"
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"understructure/app/pipeline"
	"understructure/app/record"
	"understructure/geometry/measure"
	"understructure/patterns/plan"
)

func published(t *testing.T, name string) record.Record {
	t.Helper()
	r, err := record.Load("../../testdata/published/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func planned(t *testing.T, r record.Record, cut bool) plan.Plan {
	t.Helper()
	p, err := run(r, cut)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.3f, want %.3f within %g", what, got, want, within)
	}
}

// What museums publish of whole dresses, mm. A hem of 366.0 cm is 116.5 cm across when round, one of 518 cm 164.9 (derived).
func TestPublishedSkirts(t *testing.T) {
	for name, c := range map[string]struct {
		source         string
		diameter, back float64
		years          string
		trained        bool
	}{
		"va-o368547-1851":         {"Victoria and Albert Museum O368547, c. 1851: nape to hem 142.5 less 40.0 to the waist", 1165, 1025, "1847–55", false},
		"va-o13837-1845":          {"Victoria and Albert Museum O13837, c. 1845: 33 + 104 does not close on 134, the smaller is trusted", 0, 1010, "1837–46", false},
		"unh-683-1858":            {"University of New Hampshire, Bowen collection 683, 1853–63", 1196.5, 1168, "1856–59", false},
		"mcny-62-190-1-1866":      {"Museum of the City of New York 62.190.1, 1866–67", 1648.8, 1803, "1865–68", true},
		"glasgow-e-1992-6-5-1866": {"Glasgow Museums E.1992.6.5, 1866–67: nothing is published of its skirt that a record can hold", 0, 0, "", false},
	} {
		p := planned(t, published(t, name), false)
		if c.years == "" {
			if p.Skirt != nil {
				t.Errorf("%s: a skirt", name)
			}
			continue
		}
		s := p.Skirt
		if s == nil {
			t.Fatalf("%s has no skirt: %+v", name, p.Warnings)
		}
		near(t, name+" back", s.Falls[3].Length, c.back, 1e-6)
		if s.Silhouette.Years != c.years || s.Trained != c.trained {
			t.Errorf("%s: %s, trained %v", name, s.Silhouette.Years, s.Trained)
		}
		switch {
		case c.diameter == 0 && s.Hem.Diameter != nil:
			t.Errorf("%s: a hem that was not taken is %.1f mm across", name, *s.Hem.Diameter)
		case c.diameter > 0:
			near(t, name+" hem across", *s.Hem.Diameter, c.diameter, 1)
		}
	}
}

// A skirt that finds its stand from the silhouette hangs the same when that stand is what is fixed.
func TestStandAndSilhouetteAgree(t *testing.T) {
	for _, name := range []string{"va-o368547-1851", "unh-683-1858", "mcny-62-190-1-1866"} {
		r := published(t, name)
		found := planned(t, r, false)
		if found.Skirt.Hold != record.HoldSilhouette {
			t.Fatalf("%s holds the %s", name, found.Skirt.Hold)
		}
		r.Mount.Skirt.StandHeight = &found.StandHeight
		fixed := planned(t, r, false)
		near(t, name+" stand", fixed.StandHeight, found.StandHeight, 1e-9)
		if fixed.Skirt.Hold != record.HoldStand {
			t.Errorf("%s holds the %s", name, fixed.Skirt.Hold)
		}
		for i, f := range fixed.Skirt.Falls {
			near(t, name+" "+f.Name+" reach", f.Reach, found.Skirt.Falls[i].Reach, 0.5)
		}
		if level(fixed, measure.Waist).Height != fixed.StandHeight {
			t.Errorf("%s: the waist is not where the stand holds it", name)
		}
	}
}

// A higher stand draws the hem in, a larger gap lifts it: arithmetic of a cone.
func TestAHigherStandDrawsTheHemIn(t *testing.T) {
	r := published(t, "va-o368547-1851")
	before := planned(t, r, false)
	higher := before.StandHeight + 15
	r.Mount.Skirt.StandHeight = &higher
	after := planned(t, r, false)
	if after.Skirt.Hem.Support >= before.Skirt.Hem.Support {
		t.Errorf("%.1f mm round at the hem, %.1f before", after.Skirt.Hem.Support, before.Skirt.Hem.Support)
	}
	r.Mount.Skirt.StandHeight = nil
	gap := 60.0
	r.Mount.Skirt.FloorGap = &gap
	lifted := planned(t, r, false)
	near(t, "lifted by", lifted.StandHeight-before.StandHeight, 50, 1)
	near(t, "the same reach", lifted.Skirt.Hem.Support, before.Skirt.Hem.Support, 1)
}

// begins are the short letters of the pieces and long strips that are not of the mount itself.
func begins(p plan.Plan) string {
	seen := map[string]bool{}
	for _, q := range p.Pieces {
		if !strings.ContainsRune("LCSD", rune(q.ID[0])) {
			seen[q.ID[:1]] = true
		}
	}
	for _, c := range p.Cuts {
		if name, _, ok := strings.Cut(c.Name, ", "); ok && len(name) > 2 && name[1] >= '0' && name[1] <= '9' && name[0] != 'H' {
			seen[name[:1]] = true
		}
	}
	return strings.Join(slices.Sorted(maps.Keys(seen)), "")
}

// P is cut of cloth, N of net, B a bustle; A is a sleeve's, K a pad.
func TestSupportsAsAskedFor(t *testing.T) {
	demo, err := record.Load("../../assets/demo-1872-bodice.json")
	if err != nil {
		t.Fatal(err)
	}
	for word, want := range map[string]string{
		"": "ABNP", record.TubeOnly: "AP", record.Legs: "AP", record.Petticoat: "AP", record.Hoops: "AP", record.Net: "ANP",
		record.Bustle: "ABP", record.BustleFrame: "ABP", record.NoSupport: "A",
	} {
		r := demo
		r.Mount.Skirt.Support = word
		p := planned(t, r, true)
		if got := begins(p); got != want {
			t.Errorf("%q is made of %s, want %s", word, got, want)
		}
		if p.Skirt == nil || len(p.Skirt.Heights) == 0 {
			t.Errorf("%q: the skirt does not hang", word)
		}
	}
	for word, want := range map[string]string{record.Arm: "A", record.Tube: "A", record.Puff: "", record.NoSupport: ""} {
		r := demo
		r.Mount.Skirt.Support, r.Mount.Sleeves.Support = record.NoSupport, word
		if got := begins(planned(t, r, true)); got != want {
			t.Errorf("sleeves by %q are made of %q, want %q", word, got, want)
		}
	}
	r := demo
	r.Mount.Skirt.Support, r.Mount.Sleeves.Support = record.NoSupport, record.NoSupport
	thick := 25.0
	r.Mount.Pads = record.Pads{Bust: record.Pad{Asked: true}, Hip: record.Pad{Asked: true, Projection: &thick}, Fill: true}
	p := planned(t, r, true)
	if got := begins(p); got != "K" {
		t.Errorf("pads are made of %q", got)
	}
	if p.Stock["mount.pads.bust"].Value <= 0 || p.Stock["mount.pads.hip"].Value != 0 {
		t.Errorf("stock %+v, %+v", p.Stock["mount.pads.bust"], p.Stock["mount.pads.hip"])
	}
}

// A steel is its hoop and 15 cm (Interpret and Display Historic Dress, chapter 8); what is plain and longer than a
// metre is cut by measure.
func TestCuttingTable(t *testing.T) {
	p := planned(t, published(t, "va-o368547-1851"), true)
	hoops := p.Skirt.Hoops
	girth := hoops[len(hoops)-1].Girth
	found := false
	for _, c := range p.Cuts {
		if c.Name == "hem steel of the base petticoat" {
			found = true
			near(t, c.Name, c.Length, girth+150, 1e-6)
		}
		if c.Count < 1 || c.Material == "" || !(c.Length >= 0) || c.Part != "skirt" && c.Part != "sleeves" {
			t.Errorf("%+v", c)
		}
	}
	if !found {
		t.Errorf("no hem steel among %d rows", len(p.Cuts))
	}
	for _, q := range p.Pieces {
		lo, hi := q.CutLine().Bounds()
		if len(q.Outline) == 4 && math.Max(hi.X-lo.X, hi.Y-lo.Y) > 1000 {
			t.Errorf("%s is a plain strip %.0f by %.0f", q.ID, hi.X-lo.X, hi.Y-lo.Y)
		}
	}
	steel := 0.0
	for _, c := range p.Cuts {
		if c.Material == "hoop steel, covered" {
			steel += c.Length * float64(c.Count) / 1000
		}
	}
	i := slices.IndexFunc(p.Materials, func(m plan.Material) bool { return m.Name == "hoop steel, covered" })
	if i < 0 {
		t.Fatal("no steel in the shopping list")
	}
	near(t, "metres of steel", p.Materials[i].Quantity, steel, 0.001)
}

// A train draws the weight back, and the base must reach as much farther.
func TestATrainStandsOnAWiderBase(t *testing.T) {
	r := published(t, "mcny-62-190-1-1866")
	kg := 2.7 // a velvet dress of 1882 (New York Times, 1883)
	r.Garment.MassKg = &kg
	trained := planned(t, r, true).Standing
	r.Garment.Skirt = maps.Clone(r.Garment.Skirt)
	r.Garment.Skirt[measure.BackLength] = r.Garment.Skirt[measure.FrontLength]
	level := planned(t, r, true).Standing
	if !(trained.Under.Y < -100 && trained.Under.Y < level.Under.Y-50) {
		t.Errorf("the weight lies at %v with a train, %v without", trained.Under, level.Under)
	}
	for name, s := range map[string]plan.Standing{"trained": trained, "level": level} {
		aside := math.Hypot(s.Under.X, s.Under.Y)
		near(t, name+" base for the tilt", s.TiltBase, aside+s.CentreHeight*math.Tan(10*math.Pi/180), 1e-6) // IEC 60335-1
		near(t, name+" base", s.Base, math.Max(s.TiltBase, s.PushBase), 1e-6)
		if s.SquareBase < 2*s.CentreHeight*math.Tan(10*math.Pi/180) || s.MassKg < kg {
			t.Errorf("%s: %+v", name, s)
		}
	}
}

// Skirts that cannot hang are said, and leave the mount.
func TestASkirtThatCannotHangIsSaid(t *testing.T) {
	for name, c := range map[string]struct {
		readings measure.Sheet
		key      string
	}{
		"no length":    {measure.Sheet{measure.HemGirth: 2900}, "garment.skirt.front_length"},
		"a narrow hem": {measure.Sheet{measure.HemGirth: 900, measure.FrontLength: 1000, measure.BackLength: 1900}, "garment.skirt.hem_girth"},
	} {
		r := published(t, "glasgow-e-1992-6-5-1866")
		r.Garment.Skirt = c.readings
		p := planned(t, r, true)
		if p.Skirt != nil || len(p.Pieces) < 10 {
			t.Errorf("%s: a skirt, or no mount", name)
		}
		w, ok := warning(p, "skirt-cannot-hang", "")
		if !ok || w.Key != c.key {
			t.Errorf("%s: %+v, want it at %s", name, w, c.key)
		}
	}
}

// A bodice whose hip only statistics know is no larger there than the skirt that goes over it.
func TestTheSkirtsHipGoverns(t *testing.T) {
	r := published(t, "unh-683-1858")
	drawn := *level(planned(t, r, false), measure.Hip).GarmentGirth
	r.Garment.Skirt = maps.Clone(r.Garment.Skirt)
	r.Garment.Skirt[measure.HipGirth] = math.Round(drawn - 40)
	p := planned(t, r, false)
	near(t, "hip", *level(p, measure.Hip).GarmentGirth, math.Round(drawn-40), 0.1)
	if _, ok := warning(p, "skirt-hip-governs", measure.Hip); !ok || p.Strains() {
		t.Errorf("strains %v: %+v", p.Strains(), p.Warnings)
	}
}

func TestSupportsAreAStageOfTheWork(t *testing.T) {
	r := published(t, "va-o368547-1851")
	var stages []string
	last := -1.0
	if _, err := pipeline.Run(context.Background(), r, func(stage string, done float64) {
		stages = append(stages, stage)
		if done < last {
			t.Errorf("%s goes back to %g", stage, done)
		}
		last = done
	}); err != nil {
		t.Fatal(err)
	}
	if !slices.Contains(stages, "supports") {
		t.Errorf("stages %v", stages)
	}
	ctx, cancel := context.WithCancel(context.Background())
	_, err := pipeline.Run(ctx, r, func(stage string, _ float64) {
		if stage == "supports" {
			cancel()
		}
	})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("called off, it ends with %v", err)
	}
}
