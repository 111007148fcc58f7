package torso

import (
	"math"
	"testing"

	"understructure/geometry/measure"
	"understructure/geometry/section"
)

// small is the mean of the 94 smallest women of ANSUR II (chest < 860, waist < 720 mm;
// Gordon et al., NATICK/TR-15/007, 2014): the wearers nearest to those of historic dress.
var small = measure.Sheet{measure.BustGirth: 813, measure.WaistGirth: 687, measure.HipGirth: 898, measure.BackWaist: 400}

func build(t testing.TB, s measure.Sheet, w measure.Wearer, year int) Torso {
	t.Helper()
	f, err := Build(s, w, year, nil)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func TestThreeValuesMakeAFigure(t *testing.T) {
	f := build(t, measure.Sheet{measure.BustGirth: 813, measure.WaistGirth: 687, measure.BackWaist: 400}, measure.Woman, 1872)
	for _, l := range f.Levels {
		t.Logf("%-13s %7.1f girth %7.1f breadth %6.1f depth %6.1f", l.Name, l.Height, l.Girth, l.Section[0]+l.Section[128], l.Section[64]+l.Section[192])
	}
	t.Logf("%+v %+v", f.Lengths, f.Notices)
	t.Logf("armscye %.1f", loopLength(f.Armscye))
	for _, c := range []struct {
		level measure.Level
		want  float64
	}{{measure.Bust, 813}, {measure.Waist, 687}} {
		if got := f.At(c.level).Girth; math.Abs(got-c.want) > 0.05 {
			t.Errorf("%s %.3f, want %.1f", c.level, got, c.want)
		}
	}
}

// long is an invented sheet with every length along the skin.
var long = measure.Sheet{
	measure.BustGirth: 820, measure.WaistGirth: 590, measure.HipGirth: 920, measure.BackWaist: 385,
	measure.FrontWaist: 330, measure.NeckToBustPoint: 255, measure.SideLength: 195, measure.WaistToHip: 180,
	measure.WaistToHighHip: 85, measure.NeckBaseGirth: 350, measure.ShoulderLength: 125, measure.AcrossBack: 320, measure.AcrossFront: 300,
}

func TestLengthsComeOutAsTaken(t *testing.T) {
	f := build(t, long, measure.Woman, 1872)
	for _, l := range f.Lengths {
		t.Logf("%+v", l)
		if math.Abs(l.Taken-l.Built) > 0.1 {
			t.Errorf("%s: taken %.1f, built %.2f", l.Key, l.Taken, l.Built)
		}
	}
	for _, n := range f.Notices {
		t.Errorf("notice: %s", n.Message)
	}
}

// Every level below the armscye has readings of its own, and what is taken there is built.
func TestLevelsBetweenHaveReadings(t *testing.T) {
	s := measure.Sheet{
		measure.BustGirth: 820, measure.WaistGirth: 590, measure.BackWaist: 385, measure.UnderarmGirth: 790,
		measure.UnderbustGirth: 690, measure.UnderbustBreadth: 250, measure.UnderbustDepth: 180,
		measure.HighHipGirth: 780, measure.HighHipBreadth: 285, measure.HighHipDepth: 195,
	}
	f := build(t, s, measure.Woman, 1872)
	for _, c := range []struct {
		level                 measure.Level
		girth, breadth, depth float64
	}{{measure.Underarm, 790, 0, 0}, {measure.Underbust, 690, 250, 180}, {measure.HighHip, 780, 285, 195}} {
		l := f.At(c.level)
		lo, hi := l.Section.Ring().Bounds()
		if !l.Taken || math.Abs(l.Girth-c.girth) > 0.1 {
			t.Errorf("%s: girth %.2f, want %.0f", c.level, l.Girth, c.girth)
		}
		if c.breadth > 0 && (math.Abs(hi.X-lo.X-c.breadth) > 0.1 || math.Abs(hi.Y-lo.Y-c.depth) > 0.1) {
			t.Errorf("%s: %.2f by %.2f, want %.0f by %.0f", c.level, hi.X-lo.X, hi.Y-lo.Y, c.breadth, c.depth)
		}
	}
	for k := range s {
		if d, ok := f.Drawn[k]; ok {
			t.Errorf("%s was taken, yet drawn: %v", k, d)
		}
	}
}

// A column drawn alone is the stack's own, to the last bit.
func TestColumnIsTheStacks(t *testing.T) {
	d, err := newDraft(long, measure.Woman, 1872, nil)
	if err != nil {
		t.Fatal(err)
	}
	d.solveHeights()
	l := d.stack()
	for j := range section.Directions {
		alone, whole := d.column(j), l.column(j)
		for _, z := range l.z {
			if a, w := alone.At(z), whole.At(z); a != w {
				t.Fatalf("direction %d at %.1f mm: %v, want %v", j, z, a, w)
			}
		}
	}
}

func BenchmarkBuild(b *testing.B) {
	for _, c := range []struct {
		name  string
		sheet measure.Sheet
	}{{"girths", small}, {"lengths", long}} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				build(b, c.sheet, measure.Woman, 1872)
			}
		})
	}
}
