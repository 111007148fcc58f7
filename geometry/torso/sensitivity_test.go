package torso_test

import (
	"maps"
	"math"
	"math/rand/v2"
	"testing"

	"understructure/geometry/measure"
	"understructure/geometry/torso"
)

// What the tapes are said to hang on agrees with figures built anew from sheets in which one reading is larger by its error
// and in which it is smaller: in all, what errors of 3 mm and 2 degrees do to the tape at each level is said within a
// fifth and a millimetre, at the across-chest, where the armscye cuts the outline, not a third too little and not more
// than the error of a tape too much. The formulas are of first order and leave out what hardly counts.
func TestSensitivitiesAgainstFiguresBuiltAnew(t *testing.T) {
	compared := 0
	for _, p := range anyone(3, 30) {
		f := p.built(t)
		said, built := make([]float64, len(f.Levels)), make([]float64, len(f.Levels))
		// A tape would not tell underarm and bust apart.
		honoured := len(f.Notices) == 0 && f.At(measure.Underarm).Height-f.At(measure.Bust).Height > 20
		all, _ := f.Sensitivities(heightsOf(f))
		for _, s := range all {
			if !s.Taken {
				continue
			}
			by := 3.0
			if s.Key == measure.ShoulderSlope {
				by = 2
			}
			up, down := p.with(s.Key, by).built(t), p.with(s.Key, -by).built(t)
			honoured = honoured && len(up.Notices)+len(down.Notices) == 0
			for i, l := range f.Levels {
				a, b := up.Skin.At(l.Height), down.Skin.At(l.Height)
				if l.Name == measure.NeckBase || l.Name == measure.Shoulder {
					a, b = up.Levels[i].Section, down.Levels[i].Section
				}
				said[i] = math.Hypot(said[i], by*s.Tape[i])
				built[i] = math.Hypot(built[i], (a.Tape()-b.Tape())/2)
			}
		}
		for i, l := range f.Levels {
			if !honoured { // readings that contradict one another are not honoured one by one
				break
			}
			compared++
			less, more := 0.2*built[i]+1, 0.2*built[i]+1
			if l.Name == measure.AcrossChest {
				less, more = built[i]/3, 3.5
			}
			if said[i] < built[i]-less || said[i] > built[i]+more {
				t.Errorf("%s, %s: readings shake the tape by %.2f mm, said %.2f", p.wearer, l.Name, built[i], said[i])
			}
		}
	}
	if compared < 100 {
		t.Errorf("only %d compared", compared)
	}
	t.Logf("%d compared", compared)
}

// everything is an invented sheet with every reading that a girth or a height hangs on.
var everything = measure.Sheet{
	measure.BustGirth: 840, measure.UnderbustGirth: 740, measure.WaistGirth: 620, measure.HighHipGirth: 800, measure.HipGirth: 950,
	measure.UnderarmGirth: 835, measure.NeckBaseGirth: 365, measure.ShoulderLength: 115, measure.ShoulderSlope: 28,
	measure.BackWaist: 380, measure.FrontWaist: 335, measure.NeckToBustPoint: 280, measure.SideLength: 190, measure.WaistToHighHip: 80, measure.WaistToHip: 180,
}

// someone is a sheet, for whom, and when.
type someone struct {
	sheet  measure.Sheet
	wearer measure.Wearer
	year   int
}

// anyone are sheets in which every reading is up to a twelfth larger or smaller than in everything, and those that a
// figure can do without are missing by a third of the times.
func anyone(seed uint64, n int) []someone {
	g := rand.New(rand.NewPCG(seed, 1872))
	all := []someone{{everything, measure.Woman, 1872}}
	for i := range n {
		p := someone{measure.Sheet{}, []measure.Wearer{measure.Woman, measure.Man, measure.Child}[i%3], []int{0, 1850, 2000, 1790}[i%4]}
		for _, m := range measure.Keys {
			needed := m.Key == measure.BustGirth || m.Key == measure.WaistGirth || m.Key == measure.BackWaist
			if v, ok := everything[m.Key]; ok && (needed || g.IntN(3) > 0) {
				p.sheet[m.Key] = v * (1 + (2*g.Float64()-1)/12)
			}
		}
		all = append(all, p)
	}
	return all
}

func (p someone) built(t testing.TB) torso.Torso {
	t.Helper()
	f, err := torso.Build(p.sheet, p.wearer, p.year, nil)
	if err != nil {
		t.Fatalf("%s %v: %v", p.wearer, p.sheet, err)
	}
	return f
}

// with is someone with one reading larger.
func (p someone) with(k measure.Key, by float64) someone {
	p.sheet = maps.Clone(p.sheet)
	p.sheet[k] += by
	return p
}

// ANSUR II (Gordon et al., NATICK/TR-15/007, 2014): women's buttock circumference has a standard deviation of 75.9 mm and
// correlates with chest circumference by 0.74, so that 51.1 mm are left (derived); a girth that was taken
// leaves no spread.
func TestSpreadOfWhatWasDrawn(t *testing.T) {
	few := someone{measure.Sheet{measure.BustGirth: 813, measure.WaistGirth: 687, measure.BackWaist: 400}, measure.Woman, 2000}
	said := map[measure.Key]torso.Sensitivity{}
	f := few.built(t)
	all, slopes := f.Sensitivities(heightsOf(f))
	for _, s := range all {
		said[s.Key] = s
	}
	if s := said[measure.HipGirth]; s.Taken || s.Guessed || math.Abs(s.SD-51.1) > 0.1 {
		t.Errorf("hip: %+v", s)
	}
	if s := said[measure.BustGirth]; !s.Taken || s.SD != 0 || s.Tape[8] < 0.6 {
		t.Errorf("a drawn hip does not follow the bust: %+v", s)
	}
	for _, k := range []measure.Key{measure.NeckBaseGirth, measure.UnderarmGirth, measure.HighHipGirth, measure.NeckToBustPoint, measure.ShoulderSlope, ""} {
		if s := said[k]; s.Taken || !(s.SD > 0) {
			t.Errorf("%q was not taken, yet has no spread: %+v", k, s)
		}
	}
	// Below the hip the figure is upright, above it narrower; the neck is looked at as if upright.
	if hip, neck := slopes[8], slopes[0]; hip.Below != 0 || hip.Above > -0.5 || neck != (torso.Slope{}) {
		t.Errorf("slopes at hip %+v and neck %+v", hip, neck)
	}
}

func BenchmarkSensitivities(b *testing.B) {
	f := someone{everything, measure.Woman, 1872}.built(b)
	at := heightsOf(f)
	for b.Loop() {
		f.Sensitivities(at)
	}
}

func heightsOf(f torso.Torso) []float64 {
	var out []float64
	for _, l := range f.Levels {
		out = append(out, l.Height)
	}
	return out
}
