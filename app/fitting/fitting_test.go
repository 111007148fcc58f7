package fitting_test

import (
	"context"
	"fmt"
	"math"
	"math/rand"
	"reflect"
	"strings"
	"testing"

	"understructure/app/fitting"
	"understructure/app/pipeline"
	"understructure/app/record"
	"understructure/assets"
	"understructure/geometry/measure"
	"understructure/patterns/plan"
)

// demo is one of the program's own records.
func demo(t testing.TB, name string) record.Record {
	t.Helper()
	f, err := assets.Demos.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r, err := record.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// dress has few readings and simple numbers.
func dress() record.Record {
	ease := 15.0
	return record.Record{
		Unit:   "cm",
		Object: record.Object{Year: 1872, Wearer: measure.Woman},
		Garment: record.Garment{Bodice: measure.Sheet{
			measure.BustGirth: 840, measure.WaistGirth: 620, measure.BackWaist: 380,
		}},
		Mount: record.Mount{Build: "slices", Ease: record.Ease{All: &ease}},
	}
}

func mm(v float64) *float64 { return &v }

// seen is what was seen at one fitting.
func seen(s ...record.Seen) record.Fitting { return record.Fitting{On: "2026-03-02", Seen: s} }

func waist(what string, by float64) record.Seen {
	return record.Seen{What: what, Level: measure.Waist, By: &by}
}

func (s built) at(girth float64) record.Seen { s.Built = &girth; return record.Seen(s) }

type built record.Seen

// with is a record after fittings.
func with(r record.Record, fs ...record.Fitting) record.Record {
	r.Fittings = append(r.Fittings, fs...)
	return r
}

func bodice(t *testing.T, r record.Record, k measure.Key) float64 {
	t.Helper()
	v, ok := fitting.Apply(r).Record.Garment.Bodice[k]
	if !ok {
		t.Fatalf("no %s after the fitting", k)
	}
	return v
}

// The rows are arithmetic on the rules in the package comment (derived), with 15 mm of ease on a
// waist read as 620 mm.
func TestWhatAFindingMakesOfTheWaist(t *testing.T) {
	fails, tight, slack := built(waist(record.FailsToMeet, 20)), built(waist(record.Tight, 5)), built(waist(record.Slack, 10))
	for name, c := range map[string]struct {
		fittings []record.Fitting
		inside   float64
	}{
		"fails to meet, built noted":         {[]record.Fitting{seen(fails.at(603))}, 583},
		"fails to meet, built not noted":     {[]record.Fitting{seen(record.Seen(fails))}, 585},
		"fails to meet, gap not taken":       {[]record.Fitting{seen(built{What: record.FailsToMeet, Level: measure.Waist}.at(603))}, 593},
		"tight":                              {[]record.Fitting{seen(tight.at(603))}, 613},
		"slack":                              {[]record.Fitting{seen(slack.at(603))}, 628},
		"slack, amount not taken":            {[]record.Fitting{seen(built{What: record.Slack, Level: measure.Waist}.at(603))}, 623},
		"a pull on a mount larger than it":   {[]record.Fitting{seen(tight.at(640))}, 620},
		"two findings of one mount":          {[]record.Fitting{seen(tight.at(603), slack.at(603))}, 623},
		"the later of two":                   {[]record.Fitting{seen(fails.at(603)), seen(slack.at(566))}, 591},
		"the later of two, built not noted":  {[]record.Fitting{seen(record.Seen(fails)), seen(record.Seen(slack))}, 595},
		"another level":                      {[]record.Fitting{seen(record.Seen{What: record.Tight, Level: measure.Bust, By: mm(5)})}, 620},
		"less than any garment has":          {[]record.Fitting{seen(built(waist(record.FailsToMeet, 900)).at(603))}, 300},
		"more than any garment has":          {[]record.Fitting{seen(built(waist(record.Slack, 1000)).at(2400))}, 2000},
		"seen at one side":                   {[]record.Fitting{seen(built{What: record.Tight, Level: measure.Waist, Where: "back", By: mm(5)}.at(603))}, 613},
		"fails to meet in front, ease round": {[]record.Fitting{seen(built{What: record.FailsToMeet, Level: measure.Waist, Where: "front", By: mm(20)}.at(603))}, 583},
	} {
		if got := bodice(t, with(dress(), c.fittings...), measure.WaistGirth); math.Abs(got-c.inside) > 1e-9 {
			t.Errorf("%s: %.1f mm inside, want %.1f", name, got, c.inside)
		}
	}
}

// The waist that is built after a fitting: that before, less gap and ease, and less what whole sheets
// leave (5 mm).
func TestTheBuiltWaistFollowsTheFitting(t *testing.T) {
	for name, gap := range map[string]float64{"demo-three-values.json": 20, "demo-1872-bodice.json": 5} {
		r := demo(t, name)
		before := level(t, run(t, r), measure.Waist)
		after := run(t, with(r, seen(built(waist(record.FailsToMeet, gap)).at(*before.BuiltGirth))))
		l := level(t, after, measure.Waist)
		want := *before.BuiltGirth - gap - before.Ease
		if got := *l.BuiltGirth; got > want+0.1 || got < want-5 {
			t.Errorf("%s: waist built %.1f mm, want %.1f or up to 5 less", name, got, want)
		}
		if v := after.Taken["garment.bodice.waist_girth"]; v.Source != "fitting 2026-03-02" || math.Abs(v.Value-(want+before.Ease)) > 1e-9 {
			t.Errorf("%s: taken says %v", name, v)
		}
		if !warned(after, "fitting-girth") || !warned(after, "fitting-against-tape") {
			t.Errorf("%s: nothing is said of the fitting: %v", name, after.Warnings)
		}
	}
}

func run(t *testing.T, r record.Record) plan.Plan {
	t.Helper()
	p, err := pipeline.Shape(context.Background(), r)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func level(t *testing.T, p plan.Plan, name measure.Level) plan.Level {
	t.Helper()
	for _, l := range p.Levels {
		if l.Name == string(name) {
			return l
		}
	}
	t.Fatalf("no level %s", name)
	return plan.Level{}
}

func warned(p plan.Plan, code string) bool {
	for _, w := range p.Warnings {
		if w.Code == code {
			return true
		}
	}
	return false
}

func TestNothingSeenChangesNothing(t *testing.T) {
	for _, name := range []string{"demo-three-values.json", "demo-1872-bodice.json", "demo-boy-1895.json"} {
		for _, r := range []record.Record{demo(t, name), with(demo(t, name), record.Fitting{On: "2026-03-02", Note: "all well"})} {
			a := fitting.Apply(r)
			if !reflect.DeepEqual(a.Record, r) || len(a.Notices) > 0 || len(a.Values) > 0 {
				t.Errorf("%s: nothing was seen, yet %v and %v", name, a.Notices, a.Values)
			}
		}
		plain, noted := run(t, demo(t, name)), run(t, with(demo(t, name), record.Fitting{Note: "all well"}))
		if !reflect.DeepEqual(plain, noted) {
			t.Errorf("%s: a note changes the plan", name)
		}
	}
}

func TestTheRecordItselfStays(t *testing.T) {
	whole := with(demo(t, "demo-1872-bodice.json"), everything(603))
	before := with(demo(t, "demo-1872-bodice.json"), everything(603))
	fitting.Apply(whole)
	if !reflect.DeepEqual(whole, before) {
		t.Error("the record that was given has changed")
	}
}

// everything is one fitting with each fault at each level and side.
func everything(girth float64) record.Fitting {
	f := record.Fitting{On: "2026-03-02"}
	for _, what := range record.Faults {
		for _, l := range append([]measure.Level{""}, measure.Levels...) {
			for _, where := range append([]string{""}, record.Wheres...) {
				s := record.Seen{What: what, Level: l, Where: where, By: mm(4), Built: &girth}
				if s.Level != "" && record.OfHem(what) || s.Level == "" && record.OfGirth(what) {
					continue
				}
				f.Seen = append(f.Seen, s)
			}
		}
	}
	return f
}

func TestSidesMoveTheirArcs(t *testing.T) {
	full := dress()
	full.Garment.Bodice[measure.WaistFrontArc], full.Garment.Bodice[measure.WaistLeftArc] = 330, 310
	full.Garment.Bodice[measure.WaistDepth] = 190
	tight := func(where string) record.Fitting {
		return seen(record.Seen{What: record.Tight, Level: measure.Waist, Where: where, By: mm(10)})
	}
	for _, c := range []struct {
		where              string
		front, left, depth float64
	}{
		// 610/620 of each, 10 mm less on the side that was tight, half of that on the arcs it lies half in (derived)
		{"", 330 * 610.0 / 620, 310 * 610.0 / 620, 190 * 610.0 / 620},
		{"front", 320, 305, 190 - 20/math.Pi},
		{"back", 330, 305, 190 - 20/math.Pi},
		{"left", 325, 300, 190},
		{"right", 325, 310, 190},
	} {
		r := with(full, tight(c.where))
		for k, want := range map[measure.Key]float64{measure.WaistFrontArc: c.front, measure.WaistLeftArc: c.left, measure.WaistDepth: c.depth} {
			if got := bodice(t, r, k); math.Abs(got-want) > 1e-9 {
				t.Errorf("tight at the %q: %s is %.2f, want %.2f", c.where, k, got, want)
			}
		}
	}
	if _, there := fitting.Apply(with(dress(), tight(""))).Record.Garment.Bodice[measure.WaistFrontArc]; there {
		t.Error("tight all round gives a front arc that was not taken")
	}
	front, left := bodice(t, with(dress(), tight("front")), measure.WaistFrontArc), bodice(t, with(dress(), tight("left")), measure.WaistLeftArc)
	if drawn := 0.5 * 620.0; math.Abs(front+10-drawn) > 0.05*620 || math.Abs(left-(310-10)) > 0.01 {
		t.Errorf("of arcs not taken the front is %.1f mm, the left %.1f; want about 300, and 300", front, left)
	}
}

func TestLevelsThatNoTapeReads(t *testing.T) {
	s := record.Seen{What: record.FailsToMeet, Level: measure.Underarm, By: mm(12), Built: mm(800)}
	a := fitting.Apply(with(dress(), seen(s)))
	if got := a.Record.Mount.Shape[measure.Underarm].Girth; got == nil || *got != 788 {
		t.Errorf("underarm girth %v, want 788 inside", got)
	}
	if v := a.Values["mount.shape.underarm.girth"]; v.Value != 788 || v.Source != "fitting 2026-03-02" {
		t.Errorf("values say %v", v)
	}
	s.Built = nil
	figure := run(t, dress())
	want := *level(t, figure, measure.Underarm).GarmentGirth - 15 - 12
	if got := fitting.Apply(with(dress(), seen(s))).Record.Mount.Shape[measure.Underarm].Girth; got == nil || math.Abs(*got-want) > 0.1 {
		t.Errorf("underarm girth %v, want %.1f by the figure", got, want)
	}
}

func TestAGirthSetByHand(t *testing.T) {
	r := dress()
	r.Mount.Shape = measure.Shape{measure.Waist: {Girth: mm(600), Breadth: mm(200)}}
	for _, c := range []struct {
		name     string
		seen     record.Seen
		girth    float64
		breadth  float64
		objected bool
	}{
		{"tried on as set", built(waist(record.Slack, 10)).at(583), 608, 200 * 608.0 / 600, false},
		{"built not noted", waist(record.Tight, 10), 590, 200 * 590.0 / 600, false},
		{"set since, large enough", built(waist(record.Slack, 10)).at(620), 600, 200, true},
		{"set since, too large", built(waist(record.FailsToMeet, 10)).at(560), 550, 200 * 550.0 / 600, false},
	} {
		a := fitting.Apply(with(r, seen(c.seen)))
		s := a.Record.Mount.Shape[measure.Waist]
		if math.Abs(*s.Girth-c.girth) > 1e-9 || math.Abs(*s.Breadth-c.breadth) > 1e-9 {
			t.Errorf("%s: girth %.1f, breadth %.1f, want %.1f and %.1f", c.name, *s.Girth, *s.Breadth, c.girth, c.breadth)
		}
		if got := noticed(a, "fitting-by-hand"); got != c.objected {
			t.Errorf("%s: said of it %v", c.name, got)
		}
	}
}

func noticed(a fitting.Applied, code string) bool {
	for _, n := range a.Notices {
		if n.Code == code {
			return true
		}
	}
	return false
}

func TestASkirtsWaistGoesWithTheBodices(t *testing.T) {
	r := dress()
	r.Garment.Skirt = measure.Sheet{measure.WaistGirth: 615, measure.HipGirth: 1280}
	r.Garment.Bodice[measure.HipGirth] = 950
	a := fitting.Apply(with(r, seen(waist(record.Slack, 10), record.Seen{What: record.Tight, Level: measure.Hip, By: mm(10)})))
	g := a.Record.Garment
	if g.Bodice[measure.WaistGirth] != 630 || g.Skirt[measure.WaistGirth] != 625 { // each 10 more
		t.Errorf("waists %v and %v", g.Bodice[measure.WaistGirth], g.Skirt[measure.WaistGirth])
	}
	if g.Bodice[measure.HipGirth] != 940 || g.Skirt[measure.HipGirth] != 1280 {
		t.Errorf("hips %v and %v: the skirt's fullness is no contradiction", g.Bodice[measure.HipGirth], g.Skirt[measure.HipGirth])
	}
}

func TestFittingAgainstTape(t *testing.T) {
	for _, c := range []struct {
		seen record.Seen
		code string
	}{
		{built(waist(record.Slack, 2)).at(605), ""},              // 622 against 620
		{built(waist(record.Slack, 13)).at(603), "against-tape"}, // 631 against 620: more than 9 mm
		{built(waist(record.Slack, 30)).at(603), "beyond-tape"},  // 633 mm of mount in 620
		{waist(record.FailsToMeet, 20), "against-tape"},
	} {
		a := fitting.Apply(with(dress(), seen(c.seen)))
		for _, code := range []string{"against-tape", "beyond-tape"} {
			if got := noticed(a, "fitting-"+code); got != (code == c.code) {
				t.Errorf("%s %.0f: %s said %v", c.seen.What, *c.seen.By, code, got)
			}
		}
	}
}

func TestShoulders(t *testing.T) {
	r := dress()
	r.Garment.Bodice[measure.ShoulderLength], r.Garment.Bodice[measure.ShoulderSlope] = 115, 28
	shoulder := func(what, where string, by *float64) record.Fitting {
		return seen(record.Seen{What: what, Where: where, By: by})
	}
	ten := math.Atan(10.0/115) * 180 / math.Pi // 4.97 degrees
	for _, c := range []struct {
		fitting record.Fitting
		want    float64
	}{
		{shoulder(record.TooSquare, "", mm(10)), 28 + ten},
		{shoulder(record.TooSquare, "", nil), 28 + ten},
		{shoulder(record.TooSloping, "", mm(10)), 28 - ten},
		{shoulder(record.TooSquare, "left", mm(10)), 28 + ten},
		{shoulder(record.TooSloping, "left", mm(10)), 28},
		{shoulder(record.TooSquare, "", mm(1000)), 60}, // the most that a record can hold
	} {
		if got := bodice(t, with(r, c.fitting), measure.ShoulderSlope); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s %q: %.2f degrees, want %.2f", c.fitting.Seen[0].What, c.fitting.Seen[0].Where, got, c.want)
		}
	}
	drawn := run(t, dress()).Drawn["garment.bodice.shoulder_slope_deg"].Value
	if got := bodice(t, with(dress(), shoulder(record.TooSquare, "", nil)), measure.ShoulderSlope); got < drawn+3 || got > drawn+8 {
		t.Errorf("from %.1f degrees drawn to %.1f", drawn, got)
	}
}

func TestHems(t *testing.T) {
	r := dress()
	r.Garment.Bodice[measure.WaistHeight], r.Garment.Bodice[measure.NapeToHem] = 1030, 1570
	r.Garment.Skirt = measure.Sheet{measure.FrontLength: 1010, measure.BackLength: 1190}
	for _, c := range []struct {
		what, where                string
		height, front, back, whole float64
	}{
		{record.HemShort, "", 1020, 1000, 1180, 1560},
		{record.HemLong, "", 1040, 1020, 1200, 1580},
		{record.HemShort, "front", 1030, 1000, 1190, 1570},
		{record.HemLong, "back", 1030, 1010, 1200, 1580},
		{record.HemShort, "left", 1030, 1010, 1190, 1570},
	} {
		g := fitting.Apply(with(r, seen(record.Seen{What: c.what, Where: c.where, By: mm(10)}))).Record.Garment
		got := [4]float64{g.Bodice[measure.WaistHeight], g.Skirt[measure.FrontLength], g.Skirt[measure.BackLength], g.Bodice[measure.NapeToHem]}
		if want := [4]float64{c.height, c.front, c.back, c.whole}; got != want {
			t.Errorf("%s %q: height, front, back, nape to hem %v, want %v", c.what, c.where, got, want)
		}
	}
	bare := dress()
	stand := run(t, bare).StandHeight
	if got := run(t, with(bare, seen(record.Seen{What: record.HemShort, By: mm(10)}))).StandHeight; math.Abs(got-(stand-10)) > 0.1 {
		t.Errorf("without any length the stand goes from %.1f to %.1f mm, want 10 lower", stand, got)
	}
	if !noticed(fitting.Apply(with(bare, seen(record.Seen{What: record.HemShort, Where: "front"}))), "fitting-unknown") {
		t.Error("a front length that was not taken is not asked for")
	}
}

func TestLimpIsFilledOutOfTheEase(t *testing.T) {
	limp := func(l measure.Level, by *float64) record.Seen {
		return record.Seen{What: record.Limp, Level: l, By: by}
	}
	ease := func(l measure.Level, s ...record.Seen) float64 {
		e := fitting.Apply(with(dress(), seen(s...))).Record.Mount.Ease
		if v, ok := e.ByLevel[l]; ok {
			return v
		}
		return *e.All
	}
	for _, c := range []struct {
		at   measure.Level
		seen []record.Seen
		want float64
	}{
		{measure.Bust, []record.Seen{limp(measure.Bust, nil)}, 10},
		{measure.Waist, []record.Seen{limp(measure.Bust, nil)}, 15},
		{measure.Shoulder, []record.Seen{limp("", nil)}, 10},
		{measure.Bust, []record.Seen{limp("", nil)}, 10},
		{measure.Bust, []record.Seen{limp(measure.Bust, mm(100))}, 7.5}, // half of it stays
		{measure.Bust, []record.Seen{limp(measure.Bust, nil), limp(measure.Bust, nil)}, 7.5},
	} {
		if got := ease(c.at, c.seen...); got != c.want {
			t.Errorf("%v: ease at the %s is %.1f, want %.1f", c.seen, c.at, got, c.want)
		}
	}
	later := fitting.Apply(with(dress(), seen(limp(measure.Bust, nil)), seen(record.Seen{What: record.Tight, Level: measure.Bust, By: mm(5), Built: mm(830)})))
	if got := later.Record.Mount.Ease.ByLevel[measure.Bust]; got != 15 {
		t.Errorf("what pulls is still filled: ease %.1f", got)
	}
	if got := later.Record.Garment.Bodice[measure.BustGirth]; got != 840 {
		t.Errorf("bust %.1f, want 830 − 5 + 15", got)
	}
}

func TestTheLogInWords(t *testing.T) {
	f := seen(built(waist(record.FailsToMeet, 20)).at(603), record.Seen{What: record.HemShort, Where: "left"}, record.Seen{What: record.Limp})
	f.By, f.Note = "A. Maker", "Toile only."
	got := fitting.Log(with(dress(), f))
	want := []fitting.Entry{{On: "2026-03-02", By: "A. Maker", Note: "Toile only.", Seen: []string{
		"Waist fails to meet by 20 mm; tried on a mount of 603 mm.", "Hem short, left.", "Limp.",
	}}}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("the log says %v", got)
	}
}

// A level of which two fittings speak with what was built noted is as the later one has it.
func TestLaterOutweighsEarlier(t *testing.T) {
	rnd := rand.New(rand.NewSource(7))
	levels := []measure.Level{measure.Bust, measure.Waist, measure.Hip, measure.Underarm, measure.Shoulder}
	for range 100 {
		draw := func() record.Seen {
			return record.Seen{
				What: record.Faults[rnd.Intn(3)], Level: levels[rnd.Intn(len(levels))],
				By: mm(float64(rnd.Intn(40))), Built: mm(500 + 300*rnd.Float64()),
			}
		}
		first, last := draw(), draw()
		last.Level = first.Level
		alone := fitting.Apply(with(dress(), seen(last)))
		both := fitting.Apply(with(dress(), seen(first), seen(last)))
		if !close(alone.Record, both.Record, first.Level) {
			t.Errorf("%v, then %v: %v; the later alone: %v", first, last, both.Record.Garment.Bodice, alone.Record.Garment.Bodice)
		}
	}
}

// close compares the girths that two records have at a level.
func close(a, b record.Record, l measure.Level) bool {
	girth := func(r record.Record) float64 {
		if g := r.Mount.Shape[l].Girth; g != nil {
			return *g
		}
		return r.Garment.Bodice[measure.Key(string(l)+"_girth")]
	}
	return math.Abs(girth(a)-girth(b)) < 1e-9 && girth(a) > 0
}

// Whatever was seen, a record comes out that can be written and read again, and never a panic.
func TestAnythingCanBeSeen(t *testing.T) {
	rnd := rand.New(rand.NewSource(8))
	pick := func(words []string) string { return words[rnd.Intn(len(words))] }
	maybe := func(v float64) *float64 {
		if rnd.Intn(3) == 0 {
			return nil
		}
		return &v
	}
	for i := range 120 {
		r := demo(t, []string{"demo-three-values.json", "demo-1872-bodice.json", "demo-boy-1895.json"}[i%3])
		for range 1 + rnd.Intn(3) {
			var f record.Fitting
			for range 1 + rnd.Intn(6) {
				s := record.Seen{What: pick(record.Faults), Where: pick(append([]string{"", ""}, record.Wheres...)), By: maybe(1000 * math.Pow(rnd.Float64(), 4)), Built: maybe(100 + 2400*rnd.Float64())}
				if !record.OfHem(s.What) {
					s.Level = measure.Levels[rnd.Intn(len(measure.Levels))]
				}
				f.Seen = append(f.Seen, s)
			}
			if err := f.Check("mm"); err != nil {
				t.Fatal(err)
			}
			r.Fittings = append(r.Fittings, f)
		}
		a := fitting.Apply(r)
		var text strings.Builder
		if err := record.Encode(&text, a.Record); err != nil {
			t.Fatalf("%v: %v", r.Fittings, err)
		}
		if _, err := record.Decode(strings.NewReader(text.String())); err != nil {
			t.Errorf("%v: %v", r.Fittings, err)
		}
		if again := fitting.Apply(r); !reflect.DeepEqual(a, again) {
			t.Error("the same record gives another answer")
		}
	}
}

func ExampleApply() {
	gap, tried := 20.0, 603.0
	r := dress()
	r.Fittings = []record.Fitting{{On: "2026-03-02", Seen: []record.Seen{{
		What: record.FailsToMeet, Level: measure.Waist, By: &gap, Built: &tried,
	}}}}
	a := fitting.Apply(r)
	fmt.Printf("inside %.0f mm, %s\n", a.Record.Garment.Bodice[measure.WaistGirth], a.Values["garment.bodice.waist_girth"].Source)
	// Output: inside 583 mm, fitting 2026-03-02
}

// Where no tape goes a fitting shapes the figure itself.
func TestTheBuiltUnderarmFollowsTheFitting(t *testing.T) {
	r := demo(t, "demo-three-values.json")
	before := level(t, run(t, r), measure.Underarm)
	s := record.Seen{What: record.Tight, Level: measure.Underarm, By: mm(12), Built: before.BuiltGirth}
	after := level(t, run(t, with(r, seen(s))), measure.Underarm)
	if want := *before.BuiltGirth - 12; *after.BuiltGirth > want+0.1 || *after.BuiltGirth < want-5 {
		t.Errorf("underarm built %.1f mm, want %.1f or up to 5 less", *after.BuiltGirth, want)
	}
}

// A stand that the maker has set is moved by what was seen, as one that follows from the tape is.
func TestAHemMovesTheStandThatWasChosen(t *testing.T) {
	r := dress()
	chosen := 1015.0
	r.Mount.Skirt.StandHeight = &chosen
	got := fitting.Apply(with(r, seen(record.Seen{What: record.HemLong, By: mm(20)})))
	if h := got.Record.Mount.Skirt.StandHeight; *h != 1035 || *r.Mount.Skirt.StandHeight != 1015 || got.Values["mount.skirt.stand_height"].Value != 1035 {
		t.Errorf("the stand is at %g, the record's at %g", *h, *r.Mount.Skirt.StandHeight)
	}
}
