package torso_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/torso"
)

// natural is a year in which nobody laced.
const natural = 2000

// table holds testdata/ansur/summary.csv by group, measure and statistic: C. C. Gordon and
// others, "2012 Anthropometric Survey of U.S. Army Personnel", NATICK/TR-15/007, 2014.
type table map[[3]string]float64

func ansur(t testing.TB) table {
	t.Helper()
	out := table{}
	for _, row := range rows(t, "../../testdata/ansur/summary.csv") {
		v, err := strconv.ParseFloat(row[4], 64)
		if err != nil {
			t.Fatal(err)
		}
		out[[3]string{row[0], row[1], row[2] + row[3]}] = v
	}
	return out
}

// rows reads a file with one head line.
func rows(t testing.TB, path string) [][]string {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return all[1:]
}

func (a table) of(t testing.TB, group, what, statistic string) float64 {
	t.Helper()
	v, ok := a[[3]string{group, what, statistic}]
	if !ok {
		t.Fatalf("the table has no %s of %s of %s", statistic, what, group)
	}
	return v
}

// groups are the table's groups and who they are to us.
var groups = []struct {
	name, spread string // spread: the group whose deviations hold
	wearer       measure.Wearer
}{{"women", "women", measure.Woman}, {"small_women", "women", measure.Woman}, {"men", "men", measure.Man}}

// places pairs the table's levels with ours.
var places = []struct {
	name                  string
	level                 measure.Level
	girth, breadth, depth measure.Key
}{
	{"chest", measure.Bust, measure.BustGirth, measure.BustBreadth, measure.BustDepth},
	{"waist", measure.Waist, measure.WaistGirth, measure.WaistBreadth, measure.WaistDepth},
	{"hip", measure.Hip, measure.HipGirth, measure.HipBreadth, measure.HipDepth},
}

// mean is the sheet of a group's mean girths and back length.
func (a table) mean(t testing.TB, group string) measure.Sheet {
	s := measure.Sheet{measure.BackWaist: a.of(t, group, "waist_back_length", "mean")}
	for _, p := range places {
		s[p.girth] = a.of(t, group, p.name+"_girth", "mean")
	}
	return s
}

func figure(t testing.TB, s measure.Sheet, w measure.Wearer) torso.Torso {
	t.Helper()
	f, err := torso.Build(s, w, natural, nil)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// box is the breadth and depth of a slice's tape outline, as callippers would find them.
func box(s section.Section) (breadth, depth float64) {
	lo, hi := s.Ring().Bounds()
	return hi.X - lo.X, hi.Y - lo.Y
}

// ellipse is the perimeter of an ellipse (S. Ramanujan, "Modular equations and
// approximations to π", 1914; right to seven places for the ratios of bodies).
func ellipse(breadth, depth float64) float64 {
	a, b := breadth/2, depth/2
	h := (a - b) * (a - b) / ((a + b) * (a + b))
	return math.Pi * (a + b) * (1 + 3*h/(10+math.Sqrt(4-3*h)))
}

// From girths alone: the tape is exact at mean and extreme girths of every group.
func TestTapeIsTheGirthTaken(t *testing.T) {
	a := ansur(t)
	for _, g := range groups {
		for _, statistic := range []string{"mean", "p5", "p95"} {
			if g.name == "small_women" && statistic != "mean" {
				continue // too few persons for percentiles
			}
			s := measure.Sheet{measure.BackWaist: a.of(t, g.name, "waist_back_length", statistic)}
			for _, p := range places {
				s[p.girth] = a.of(t, g.name, p.name+"_girth", statistic)
			}
			f := figure(t, s, g.wearer)
			for _, p := range places {
				slice := f.At(p.level).Section
				if d := slice.Ring().Tape() - s[p.girth]; math.Abs(d) > 0.1 {
					t.Errorf("%s %s %s: the tape is off by %.3f mm", g.name, statistic, p.level, d)
				}
			}
		}
	}
}

// usualDepth is what the table expects of a depth, and its deviation there: for women its own
// regression, for men that of means, deviations and correlation.
func (a table) usualDepth(t testing.TB, group, place string, girth float64) (depth, sd float64) {
	if group == "women" {
		r := place + "_depth_from_girth"
		return a.of(t, group, r, "intercept") + a.of(t, group, r, "girth_slope")*girth, a.of(t, group, r, "residual_sd")
	}
	r := a.of(t, group, place+"_girth", "correlation"+place+"_depth")
	sg, sd := a.of(t, group, place+"_girth", "sd"), a.of(t, group, place+"_depth", "sd")
	return a.of(t, group, place+"_depth", "mean") + r*sd/sg*(girth-a.of(t, group, place+"_girth", "mean")), sd * math.Sqrt(1-r*r)
}

// From girths alone: the depth drawn lies within two deviations of what is usual for the girth.
func TestDepthIsUsualForTheGirth(t *testing.T) {
	a := ansur(t)
	for _, g := range groups {
		f := figure(t, a.mean(t, g.name), g.wearer)
		for _, p := range places {
			_, depth := box(f.At(p.level).Section)
			want, sd := a.usualDepth(t, g.spread, p.name, a.of(t, g.name, p.name+"_girth", "mean"))
			t.Logf("%s %s: depth %.1f, usual %.1f, deviation %.1f: %+.2f of it", g.name, p.name, depth, want, sd, (depth-want)/sd)
			if math.Abs(depth-want) > 2*sd {
				t.Errorf("%s %s: depth %.1f, usual %.1f ± %.1f", g.name, p.name, depth, want, sd)
			}
		}
	}
}

// From girths alone: the outline is as much fuller than the ellipse on its own breadth and
// depth as bodies are. At the chest the table's breadth leaves out soft tissue, so its ratio
// says nothing of the outline there.
func TestOutlinesAreAsFullAsBodies(t *testing.T) {
	a := ansur(t)
	for _, g := range groups {
		f := figure(t, a.mean(t, g.name), g.wearer)
		for _, p := range places[1:] {
			r := p.name + "_girth_over_ellipse"
			mean, sd := a.of(t, g.name, r, "mean"), a.of(t, g.spread, r, "sd")
			breadth, depth := box(f.At(p.level).Section)
			got := f.At(p.level).Girth / ellipse(breadth, depth)
			t.Logf("%s %s: girth over ellipse %.3f, usual %.3f, deviation %.3f: %+.2f of it", g.name, p.name, got, mean, sd, (got-mean)/sd)
			if math.Abs(got-mean) > 2*sd {
				t.Errorf("%s %s: girth over ellipse %.3f, usual %.3f ± %.3f", g.name, p.name, got, mean, sd)
			}
		}
	}
}

// With the table's own breadths and depths, the girth is still honoured; breadth and depth too,
// unless a notice says that no outline has all three, as may be at the chest, where the
// breadth leaves out soft tissue.
func TestGirthIsHonouredBesideBreadthAndDepth(t *testing.T) {
	a := ansur(t)
	for _, g := range groups {
		s := a.mean(t, g.name)
		for _, p := range places {
			s[p.breadth], s[p.depth] = a.of(t, g.name, p.name+"_breadth", "mean"), a.of(t, g.name, p.name+"_depth", "mean")
		}
		f := figure(t, s, g.wearer)
		for _, p := range places {
			l := f.At(p.level)
			if d := l.Section.Ring().Tape() - s[p.girth]; math.Abs(d) > 0.1 {
				t.Errorf("%s %s: the tape is off by %.3f mm", g.name, p.name, d)
			}
			breadth, depth := box(l.Section)
			off := math.Max(math.Abs(breadth-s[p.breadth]), math.Abs(depth-s[p.depth]))
			t.Logf("%s %s: breadth %.1f of %.1f, depth %.1f of %.1f, said %v", g.name, p.name, breadth, s[p.breadth], depth, s[p.depth], said(f, p.level))
			if off > 0.5 && !said(f, p.level) {
				t.Errorf("%s %s: breadth or depth is off by %.1f mm without a word", g.name, p.name, off)
			}
			if p.level != measure.Bust && said(f, p.level) {
				t.Errorf("%s %s: mean girth, breadth and depth are refused", g.name, p.name)
			}
		}
	}
}

func said(f torso.Torso, l measure.Level) bool {
	for _, n := range f.Notices {
		if n.Level == l && n.Message != "" && n.Amount > 0 {
			return true
		}
	}
	return false
}

// 507 adults (G. Heinz and others, Journal of Statistics Education 11(2), 2003; see
// testdata/body): every chest girth is longer than the ellipse on the bone breadth and
// depth, and so is the outline drawn from the girth. From a girth alone, breadth and depth
// are only likely: the outline has room for the bones of at least 19 persons in 20.
func TestOutlinesHoldTheBones(t *testing.T) {
	people := rows(t, "../../testdata/body/body.csv")
	if len(people) != 507 {
		t.Fatalf("%d persons", len(people))
	}
	const chestDepth, chestBreadth, chestGirth, waistGirth, hipGirth, gender = 3, 4, 10, 11, 13, 24
	cramped := 0
	for i, row := range people {
		mm := func(k int) float64 {
			v, err := strconv.ParseFloat(row[k], 64)
			if err != nil {
				t.Fatal(err)
			}
			return v * 10
		}
		bones := ellipse(mm(chestBreadth), mm(chestDepth))
		if mm(chestGirth) <= bones {
			t.Errorf("person %d: chest girth %.0f, ellipse of the bones %.0f: the data are not what they say", i+1, mm(chestGirth), bones)
		}
		w := measure.Woman
		if row[gender] == "1" {
			w = measure.Man
		}
		f := figure(t, measure.Sheet{
			measure.BustGirth: mm(chestGirth), measure.WaistGirth: mm(waistGirth), measure.HipGirth: mm(hipGirth), measure.BackWaist: 420,
		}, w)
		chest := f.At(measure.Bust).Section
		breadth, depth := box(chest)
		if chest.Ring().Tape() < bones {
			t.Errorf("person %d: the outline's tape is %.0f, the ellipse of the bones %.0f", i+1, chest.Ring().Tape(), bones)
		}
		if breadth < mm(chestBreadth) || depth < mm(chestDepth) {
			cramped++
		}
	}
	if cramped > len(people)/20 {
		t.Errorf("%d of %d outlines have no room for the bones", cramped, len(people))
	}
}

// Even the hull of an outline is no shorter than twice the diagonal of its box, and no longer
// than the box's perimeter.
func TestTapeLiesBetweenDiagonalAndBox(t *testing.T) {
	f := figure(t, ansur(t).mean(t, "women"), measure.Woman)
	for _, l := range f.Levels {
		breadth, depth := box(l.Section)
		if girth := plane.Ring(l.Section.Ring()).Tape(); girth < 2*math.Hypot(breadth, depth) || girth > 2*(breadth+depth) {
			t.Errorf("%s: tape %.1f round a box of %.1f by %.1f", l.Name, girth, breadth, depth)
		}
	}
}
