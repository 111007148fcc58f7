package pipeline

import (
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"understructure/app/record"
	"understructure/geometry/fit"
	"understructure/geometry/measure"
	"understructure/geometry/section"
	"understructure/geometry/torso"
	"understructure/patterns/plan"
)

// mounted is the job of a demonstration record with its mount built, pieces not cut.
func mounted(t testing.TB, name string, change func(*record.Record)) (*job, plan.Plan) {
	t.Helper()
	r, err := record.Load("../../assets/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	if change != nil {
		change(&r)
	}
	j, _, err := start(r, nil)
	if err != nil {
		t.Fatal(err)
	}
	if err := j.build(); err != nil {
		t.Fatal(err)
	}
	return j, j.plan()
}

func row(p plan.Plan, name measure.Level) plan.Level {
	for _, l := range p.Levels {
		if l.Name == string(name) {
			return l
		}
	}
	return plan.Level{}
}

// exact is a mount without any error but the tape's, a slip of the hand of 3 mm, and what was drawn.
func exact(r *record.Record) {
	zero, tape := 0.0, 3.0
	r.Mount.TapeError, r.Mount.HeightError, r.Mount.CuttingError, r.Mount.CoverSpread = &tape, &zero, &zero, &zero
	r.Mount.Wadding = []record.Wadding{{Thickness: 6, Spread: &zero}}
}

// At the waist, where everything is taken and nothing hangs on a height, garment and form err by one reading each:
// 3·√2 mm and Φ(−clearance/σ) (derived). Without tape error the chance is 0, and 1 where the form is too large.
func TestChanceAtTheWaist(t *testing.T) {
	_, p := mounted(t, "demo-1872-bodice", exact)
	w := row(p, measure.Waist)
	if math.Abs(*w.ClearanceSD-3*math.Sqrt2) > 1e-9 {
		t.Errorf("sd %.9f, want 3·√2", *w.ClearanceSD)
	}
	if want := math.Erfc(*w.Clearance/6) / 2; math.Abs(*w.StrainChance-want) > 1e-12 {
		t.Errorf("chance %.9f, want %.9f", *w.StrainChance, want)
	}
	if want := 2.3263478740 * 3 * math.Sqrt2; math.Abs(*w.EaseForOnePercent-want) > 1e-6 {
		t.Errorf("ease for 1 %% %.6f, want %.6f", *w.EaseForOnePercent, want)
	}
	for by, want := range map[float64]float64{0: 0, 120: 1} {
		_, p := mounted(t, "demo-1872-bodice", func(r *record.Record) {
			exact(r)
			*r.Mount.TapeError = 0
			r.Form.Bodice = maps.Clone(r.Form.Bodice)
			for k, share := range map[measure.Key]float64{measure.WaistGirth: 1, measure.WaistBreadth: 0.3, measure.WaistDepth: 0.3} {
				r.Form.Bodice[k] += share * by
			}
		})
		if w := row(p, measure.Waist); *w.StrainChance != want || by == 0 && *w.ClearanceSD != 0 {
			t.Errorf("without error, the form %g mm larger: chance %g, sd %g", by, *w.StrainChance, *w.ClearanceSD)
		}
		if want == 1 && p.Doubt.ChanceAnywhere != 1 {
			t.Errorf("it strains for sure, and anywhere by %g", p.Doubt.ChanceAnywhere)
		}
	}
}

// In slices no form errs; the cut of one slice and every layer that lies there do (J. Steiner: 2π a millimetre of radius).
func TestChanceInSlices(t *testing.T) {
	spread := 1.0
	j, p := mounted(t, "demo-1872-bodice", func(r *record.Record) {
		exact(r)
		r.Mount.Build, r.Mount.CuttingError, r.Mount.CoverSpread = "slices", &spread, &spread
		r.Mount.Wadding = []record.Wadding{{Thickness: 6, Spread: &spread}}
	})
	v := 3.*3 + math.Pow(2*math.Pi, 2) + math.Pow(2*math.Pi, 2)
	for _, l := range j.mount.Layers {
		v += math.Pow(2*math.Pi*l.ShareAt(j.row(0)), 2)
	}
	got := *row(p, measure.Waist).ClearanceSD
	if got*got < v-1e-9 || got*got > v*1.1 { // and a little for the edges of layers
		t.Errorf("variance %.3f, want %.3f", got*got, v)
	}
}

// A second reading that agrees makes the waist surer; one that lies above says that the smaller, which counts, is too small,
// and makes strain less likely still, but not as sure.
func TestReadingsTakenTwice(t *testing.T) {
	with := func(readings ...float64) plan.Level {
		_, p := mounted(t, "demo-1872-bodice", func(r *record.Record) {
			exact(r)
			r.Garment.Readings.Bodice = record.Readings{measure.WaistGirth: readings}
		})
		return row(p, measure.Waist)
	}
	once, same, above, stale := with(), with(620, 620), with(620, 632), with(640, 650)
	if want := 9 + 9*4/5./2; math.Abs(*same.ClearanceSD**same.ClearanceSD-want) > 1e-9 {
		t.Errorf("two that agree: variance %.4f, want %.4f", *same.ClearanceSD**same.ClearanceSD, want)
	}
	if !(*same.StrainChance < *once.StrainChance && *above.StrainChance < *once.StrainChance && *above.ClearanceSD > *same.ClearanceSD) {
		t.Errorf("once %.5f, twice the same %.5f, another above %.5f", *once.StrainChance, *same.StrainChance, *above.StrainChance)
	}
	if *stale.StrainChance != *once.StrainChance {
		t.Error("readings of a value since replaced count")
	}
}

// A tape that slips 2 mm where the girth changes by 2 mm a millimetre errs by 4 mm beside its own 3 (Pythagoras); what slips
// where it does not change, and a slope, do not.
func TestATapeSlips(t *testing.T) {
	slip := 2.0
	j, _ := mounted(t, "demo-1872-bodice", func(r *record.Record) { exact(r); r.Mount.HeightError = &slip })
	for _, c := range []struct {
		s    torso.Sensitivity
		want float64
	}{
		{torso.Sensitivity{Key: measure.HighHipGirth, Taken: true, Value: 800, Steep: -2}, 5},
		{torso.Sensitivity{Key: measure.WaistGirth, Taken: true, Value: 620}, 3},
		{torso.Sensitivity{Key: measure.ShoulderSlope, Taken: true, Value: 28}, 2},
	} {
		if got := j.told("garment.bodice.", c.s, nil).Known; math.Abs(got.SD-c.want) > 1e-9 || math.Abs(got.Once-c.want) > 1e-9 {
			t.Errorf("%s errs by %+v, want %g", c.s.Key, got, c.want)
		}
	}
}

// What a level costs where the figure is steeper on one side agrees with 200 000 heights drawn (seeded): the mean, and with the
// straight line through both the spread.
func TestAFullestLevelIsMissedEitherWay(t *testing.T) {
	const n, σ = 200000, 3.0
	for _, slope := range []torso.Slope{{Above: -1.25}, {Above: 1, Below: -2}, {Above: 0.7, Below: 0.7}} {
		g := rand.New(rand.NewPCG(5, 5))
		var lost []float64
		for range n {
			z := σ * g.NormFloat64()
			lost = append(lost, z*map[bool]float64{true: slope.Above, false: slope.Below}[z > 0])
		}
		mean, sd, _ := moments(lost)
		s := turning([]torso.Slope{slope}, []float64{σ * σ}, []float64{1})[0]
		said := math.Hypot(s.Known.SD, σ*(slope.Above+slope.Below)/2)
		if math.Abs(s.Known.Off-mean) > 4*sd/math.Sqrt(n) || math.Abs(said-sd) > 0.01*sd {
			t.Errorf("%+v: %.3f ± %.3f, drawn %.3f ± %.3f", slope, s.Known.Off, said, mean, sd)
		}
	}
}

// What was not taken errs by the spread of people: 51 mm at a woman's hip (ANSUR II, Gordon et al., NATICK/TR-15/007, 2014; derived).
func TestWhatWasNotTakenIsInDoubt(t *testing.T) {
	_, p := mounted(t, "demo-three-values", nil)
	if sd := *row(p, measure.Hip).ClearanceSD; sd < 51 || sd > 70 {
		t.Errorf("hip in doubt by %.1f mm", sd)
	}
	if hip := p.Drawn["garment.bodice.hip_girth"]; hip.Spread < 51 || hip.Spread > 51.2 || strings.Contains(hip.Source, "memory") {
		t.Errorf("the plan says of the hip drawn: %+v", hip)
	}
	if underarm := p.Drawn["garment.bodice.underarm_girth"]; !(underarm.Spread > 0) || !strings.Contains(underarm.Source, "spread from memory") {
		t.Errorf("the plan says of the underarm drawn: %+v", underarm)
	}
	if first := p.Doubt.Remeasure[0]; first.Key != "garment.bodice.hip_girth" || first.Taken || !(first.ChanceAfter < p.Doubt.ChanceAnywhere) {
		t.Errorf("to be measured first: %+v", first)
	}
}

// The chance anywhere is at least that of each level and at most their sum; a larger ease makes it smaller; what is named helps.
func TestDoubtOfEveryDemonstration(t *testing.T) {
	for _, name := range []string{"demo-1872-bodice", "demo-boy-1895", "demo-three-values", "demo-1834-full-sleeves"} {
		_, p := mounted(t, name, nil)
		most, sum := 0.0, 0.0
		for _, l := range p.Levels {
			most, sum = math.Max(most, *l.StrainChance), sum+*l.StrainChance
			if !(*l.ClearanceSD > 0) || *l.EaseForOnePercent > p.Doubt.EaseForAll+0.02 {
				t.Errorf("%s, %s: %g, %g of %g", name, l.Name, *l.ClearanceSD, *l.EaseForOnePercent, p.Doubt.EaseForAll)
			}
		}
		if d := p.Doubt; d.ChanceAnywhere < most || d.ChanceAnywhere > sum || len(d.Remeasure) == 0 {
			t.Errorf("%s: anywhere %g, levels %g to %g, %d to measure", name, d.ChanceAnywhere, most, sum, len(d.Remeasure))
		}
		for i, m := range p.Doubt.Remeasure {
			if m.ChanceAfter >= p.Doubt.ChanceAnywhere || !(m.Share > 0 && m.Share < 1) || i > 0 && m.ChanceAfter < p.Doubt.Remeasure[i-1].ChanceAfter {
				t.Errorf("%s: %+v", name, p.Doubt.Remeasure)
			}
		}
		_, looser := mounted(t, name, func(r *record.Record) { r.Mount.Ease = record.Ease{All: &p.Doubt.EaseForAll} })
		if looser.Doubt.ChanceAnywhere > 0.0101 {
			t.Errorf("%s: with the ease for all of %.1f mm the chance is %.4f", name, p.Doubt.EaseForAll, looser.Doubt.ChanceAnywhere)
		}
	}
}

// The doubt of a mount agrees with mounts drawn one by one: true readings by chance about those taken, garment and form
// built from them by the real functions, layers, cover and edges by their errors on what was planned. The chance of each
// level lies within four standard deviations of a count; the spread of its clearance within a fifth, for the
// formulas are of first order and shapes follow readings a little otherwise (see package torso).
func TestDoubtAgainstFiguresDrawnByChance(t *testing.T) {
	const n = 400
	for name, seed := range map[string]uint64{"demo-1872-bodice": 1, "demo-boy-1895": 2} {
		j, p := mounted(t, name, nil)
		var clearances [9][]float64
		g := rand.New(rand.NewPCG(seed, 1872))
		anywhere := 0.0
		for range n {
			c := j.byChance(t, g)
			for l := range c {
				clearances[l] = append(clearances[l], c[l])
			}
			if slices.Min(c) < 0 {
				anywhere += 1. / n
			}
		}
		if p := p.Doubt.ChanceAnywhere; math.Abs(anywhere-p) > 4*math.Sqrt(p*(1-p)/n) {
			t.Errorf("%s: %.3f of the mounts strain somewhere, said %.3f", name, anywhere, p)
		}
		for i, l := range p.Levels {
			mean, sd, strained := moments(clearances[i])
			chance := *l.StrainChance
			t.Logf("%s %-13s clearance %6.1f ± %4.1f, drawn %6.1f ± %4.1f; chance %.3f, drawn %.3f", name, l.Name, *l.Clearance, *l.ClearanceSD, mean, sd, chance, strained)
			if math.Abs(sd/(*l.ClearanceSD)-1) > 0.2 {
				t.Errorf("%s, %s: the clearance spreads by %.2f mm, said %.2f", name, l.Name, sd, *l.ClearanceSD)
			}
			if math.Abs(strained-chance) > 4*math.Sqrt(chance*(1-chance)/n)+1./n {
				t.Errorf("%s, %s: %.3f of the mounts strain, said %.3f", name, l.Name, strained, chance)
			}
		}
	}
}

// byChance is the clearance at every level of one mount as planned, on a form and under a garment whose readings erred.
func (j *job) byChance(t *testing.T, g *rand.Rand) []float64 {
	draw := func(sources []fit.Source, out []float64) {
		for _, s := range sources {
			e := s.Known.SD * g.NormFloat64()
			for i := range out {
				out[i] += s.Effect[i] * e
			}
		}
	}
	out := make([]float64, len(j.garment.Levels))
	garment, rest := j.truly(t, g, "garment.bodice.", j.garment, j.bodice, j.record.Object.Year)
	draw(append(j.made(), rest...), out)
	var form torso.Torso
	if j.form != nil {
		form, rest = j.truly(t, g, ofForm, *j.form, measure.Trusted(j.record.Form.Bodice), modern)
		draw(rest, out)
		form.Skin = form.Skin.Lift(j.bare.Point(0, section.Front).Y-j.form.Skin.Point(0, section.Front).Y, j.raised)
	}
	for i, l := range j.garment.Levels {
		inside, built := garment.Skin.At(l.Height), j.mount.Built.At(l.Height)
		settles := l.Name == measure.NeckBase || l.Name == measure.Shoulder
		if settles {
			inside = garment.Levels[i].Section
		}
		out[i] += inside.Tape() - built.Tape()
		if j.form == nil {
			continue
		}
		bare, planned := form.Skin.At(l.Height), j.bare.At(l.Height)
		if settles {
			bare, planned = form.Levels[i].Section, j.form.Levels[i].Section
		}
		out[i] -= bare.Tape() - planned.Tape()
	}
	return out
}

// truly is a figure built from true readings that lie about those taken, and from other values about those drawn; what
// no sheet can hold, heights of levels that no length was taken to, is left over as sources.
func (j *job) truly(t *testing.T, g *rand.Rand, path string, f torso.Torso, s measure.Sheet, year int) (torso.Torso, []fit.Source) {
	t.Helper()
	s = maps.Clone(s)
	var rest []fit.Source
	sources := j.figureSources(path, f, j.readings(path), j.lift(path), j.sign(path))
	for _, each := range sources[:len(sources)-len(f.Levels)] { // what turning costs comes out by itself
		k := measure.Key(strings.TrimPrefix(each.Key, path))
		v, known := s[k]
		if d, drawn := f.Drawn[k]; drawn {
			v, known = d.Value, true
		}
		if !known {
			rest = append(rest, each)
			continue
		}
		s[k] = v + each.Known.Off + each.Known.SD*g.NormFloat64()
	}
	out, err := torso.Build(s, j.record.Object.Wearer, year, j.hand(path))
	if err != nil {
		t.Fatal(err)
	}
	return out, rest
}

func (j *job) readings(path string) record.Readings {
	if path == ofForm {
		return j.record.Form.Readings
	}
	return j.record.Garment.Readings.Bodice
}

func (j *job) lift(path string) float64 {
	if path == ofForm {
		return j.raised
	}
	return 0
}

func (j *job) sign(path string) float64 {
	if path == ofForm {
		return -1
	}
	return 1
}

func (j *job) hand(path string) measure.Shape {
	if path == ofForm {
		return nil
	}
	return j.record.Mount.Shape
}

const ofForm = "form.bodice."

func moments(c []float64) (mean, sd, strained float64) {
	n := float64(len(c))
	for _, x := range c {
		mean += x / n
		if x < 0 {
			strained += 1 / n
		}
	}
	for _, x := range c {
		sd += (x - mean) * (x - mean) / (n - 1)
	}
	return mean, math.Sqrt(sd), strained
}

func BenchmarkDoubt(b *testing.B) {
	j, p := mounted(b, "demo-1872-bodice", nil)
	for b.Loop() {
		j.doubt(p.Levels)
	}
}
