package torso_test

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"understructure/geometry/measure"
	"understructure/geometry/section"
	"understructure/geometry/torso"
)

// lady is an invented sheet with girths, back and waist alone; maid has every length besides.
var (
	lady = person{measure.Sheet{measure.BustGirth: 840, measure.WaistGirth: 600, measure.HipGirth: 930, measure.BackWaist: 385}, measure.Woman, 1872}
	maid = person{measure.Sheet{
		measure.BustGirth: 820, measure.WaistGirth: 590, measure.HipGirth: 920, measure.BackWaist: 385,
		measure.FrontWaist: 330, measure.NeckToBustPoint: 255, measure.SideLength: 195, measure.WaistToHip: 180,
		measure.WaistToHighHip: 85, measure.NeckBaseGirth: 350, measure.ShoulderLength: 125, measure.ShoulderSlope: 24,
		measure.AcrossBack: 320, measure.AcrossFront: 300,
	}, measure.Woman, 1872}
)

func to(mm float64) *float64 { return &mm }

func TestAnEmptyShapeChangesNothing(t *testing.T) {
	for _, p := range append(people(1, 12), lady, maid) {
		f := p.figure(t, nil)
		for _, hand := range []measure.Shape{{}, {measure.Waist: {}, measure.Shoulder: {}}} {
			g := p.figure(t, hand)
			if !reflect.DeepEqual(f.Skin, g.Skin) || !reflect.DeepEqual(f.Levels, g.Levels) || !reflect.DeepEqual(f.Notices, g.Notices) || !reflect.DeepEqual(f.Armscye, g.Armscye) {
				t.Errorf("%s %v: the shape %v changes the figure", p.wearer, p.sheet, hand)
			}
		}
	}
}

// A level as deep as it is broad, with the girth of that circle, is nearly that circle. A neck's
// usual outline is an ellipse, so that it is the circle itself; a waist stays a body's, convex, and of all
// outlines with its girth it holds nearly the most (the isoperimetric inequality, 4πA ≤ g²), more than it
// held before.
func TestPulledToACircle(t *testing.T) {
	for _, level := range []measure.Level{measure.NeckBase, measure.Waist} {
		was := lady.figure(t, nil).At(level)
		g := was.Girth
		f := lady.figure(t, measure.Shape{level: {Breadth: to(g / math.Pi), Depth: to(g / math.Pi)}})
		l := f.At(level)
		if len(f.Notices) > 0 {
			t.Errorf("%s: notices: %v", level, f.Notices)
		}
		near(t, "girth", l.Reading.Girth, g)
		near(t, "breadth", l.Reading.Breadth, g/math.Pi)
		near(t, "depth", l.Reading.Depth, g/math.Pi)
		hull := l.Section.Ring().Hull()
		round, before := 4*math.Pi*hull.Area()/(l.Girth*l.Girth), 4*math.Pi*was.Section.Area()/(g*g)
		if least := map[measure.Level]float64{measure.NeckBase: 0.999, measure.Waist: 0.98}[level]; round < least || round > 1 || round < before-1e-3 {
			t.Errorf("%s: holds %.4f of its girth's circle, before %.4f", level, round, before)
		}
		if a := l.Section.Area(); hull.Area()-a > 1e-3*a {
			t.Errorf("%s: the outline has hollows of %.0f mm²", level, hull.Area()-a)
		}
	}
}

// near is a tenth of a millimetre: what is set by hand is exact.
func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 0.1) {
		t.Errorf("%s is %.2f mm, want %.2f", what, got, want)
	}
}

// Girths typed where no tape takes one, and where one does.
func TestGirthsByHand(t *testing.T) {
	for _, l := range measure.Levels {
		for _, p := range []person{lady, maid} {
			was := p.figure(t, nil).At(l)
			want := was.Girth + 12
			now := p.figure(t, measure.Shape{l: {Girth: to(want)}}).At(l)
			near(t, string(l)+" girth", now.Girth, want)
			if !now.Taken {
				t.Errorf("%s: a girth set by hand counts as drawn", l)
			}
		}
	}
}

// A girth typed at the underarm is the same as one taken there.
func TestUnderarmGirthByHandIsATapes(t *testing.T) {
	taken := person{measure.Sheet{measure.UnderarmGirth: 800}, measure.Woman, 1872}
	for k, v := range lady.sheet {
		taken.sheet[k] = v
	}
	if a, b := taken.figure(t, nil), lady.figure(t, measure.Shape{measure.Underarm: {Girth: to(800)}}); !reflect.DeepEqual(a.Skin, b.Skin) {
		t.Error("the figures differ")
	}
}

// Where girth, breadth and depth cannot be had together the girth stands; the notice says
// what is built instead, and by how much it misses.
func TestTheGirthStands(t *testing.T) {
	for _, c := range []struct {
		hand           measure.Adjustment
		breadth, depth float64 // as derived below
	}{
		// A slice with a box of 300 by 260 mm has at least 2·hypot(300, 260) = 794 mm round: more than 600.
		{measure.Adjustment{Breadth: to(300), Depth: to(260)}, 0, 0},
		// One of 120 by 100 mm has at most 440 mm round: less than 600.
		{measure.Adjustment{Breadth: to(120), Depth: to(100)}, 0, 0},
		// No slice is more than half its girth broad.
		{measure.Adjustment{Breadth: to(320)}, 0, 0},
	} {
		f := lady.figure(t, measure.Shape{measure.Waist: c.hand})
		l := f.At(measure.Waist)
		near(t, "girth", l.Girth, 600)
		if len(f.Notices) != 1 || f.Notices[0].Code != "hand-beyond-girth" || f.Notices[0].Level != measure.Waist {
			t.Errorf("notices: %+v", f.Notices)
			continue
		}
		miss := math.Abs(l.Reading.Breadth - *c.hand.Breadth)
		if c.hand.Depth != nil {
			miss = math.Max(miss, math.Abs(l.Reading.Depth-*c.hand.Depth))
			if asked, got := *c.hand.Breadth / *c.hand.Depth, l.Reading.Breadth/l.Reading.Depth; math.Abs(asked-got) > 0.01 {
				t.Errorf("breadth over depth asked for %.3f, built %.3f", asked, got)
			}
		}
		if math.Abs(f.Notices[0].Amount-miss) > 1e-9 || miss < 1 {
			t.Errorf("off by %.2f mm, but the notice says %.2f: %s", miss, f.Notices[0].Amount, f.Notices[0].Message)
		}
	}
}

// What the hand sets overrules what was taken, which gives way as little as it must, and that is said.
func TestTheHandOverrulesATape(t *testing.T) {
	p := person{measure.Sheet{measure.WaistBreadth: 215, measure.WaistDepth: 165}, measure.Woman, 1872}
	for k, v := range lady.sheet {
		p.sheet[k] = v
	}
	near(t, "breadth taken", p.figure(t, nil).At(measure.Waist).Reading.Breadth, 215)

	f := p.figure(t, measure.Shape{measure.Waist: {Breadth: to(222)}})
	near(t, "breadth", f.At(measure.Waist).Reading.Breadth, 222)
	near(t, "depth taken", f.At(measure.Waist).Reading.Depth, 165) // there is room for both
	if len(f.Notices) > 0 {
		t.Errorf("notices: %+v", f.Notices)
	}

	// 2·hypot(255, 165) = 607 mm is the least round a box of that breadth and the depth taken.
	f = p.figure(t, measure.Shape{measure.Waist: {Breadth: to(255)}})
	l := f.At(measure.Waist)
	near(t, "breadth", l.Reading.Breadth, 255)
	near(t, "girth", l.Girth, 600)
	if len(f.Notices) != 1 || f.Notices[0].Code != "hand-overrules-reading" || f.Notices[0].Key != measure.WaistDepth ||
		math.Abs(f.Notices[0].Amount-(165-l.Reading.Depth)) > 1e-9 || l.Reading.Depth >= 165 {
		t.Errorf("depth %.1f, notices %+v", l.Reading.Depth, f.Notices)
	}
}

// The slice moves forward past its seams by as much as its front arc asks for, and keeps its outline.
func TestFrontArcMovesTheSliceForward(t *testing.T) {
	was := lady.figure(t, nil).At(measure.Waist)
	now := lady.figure(t, measure.Shape{measure.Waist: {FrontArc: to(was.Reading.FrontArc + 20)}}).At(measure.Waist)
	near(t, "front arc", now.Reading.FrontArc, was.Reading.FrontArc+20)
	near(t, "girth", now.Girth, was.Girth)
	near(t, "breadth", now.Reading.Breadth, was.Reading.Breadth)
	near(t, "depth", now.Reading.Depth, was.Reading.Depth)
	near(t, "side seam", now.Seam, was.Seam)
	// Where the sides are upright each side gains what the slice moves: 20 mm are two times 10.
	if moved := now.Section[section.Front] - was.Section[section.Front]; math.Abs(moved-10) > 1 {
		t.Errorf("the front moves %.2f mm forward, want about 10", moved)
	}
}

// Whatever the heights, the levels keep their order, and a wish that was limited is told.
func TestLevelsKeepTheirOrder(t *testing.T) {
	for _, hand := range []measure.Shape{
		{measure.Bust: {Height: to(900)}}, {measure.Bust: {Height: to(-90)}}, {measure.Hip: {Height: to(40)}}, {measure.HighHip: {Height: to(-2000)}},
		{measure.Underarm: {Height: to(100)}, measure.Bust: {Height: to(200)}}, {measure.Shoulder: {Height: to(0)}, measure.AcrossChest: {Height: to(500)}},
		{measure.NeckBase: {Height: to(50)}, measure.Underbust: {Height: to(300)}}, {measure.NeckBase: {Height: to(5000)}},
		{measure.Waist: {Height: to(10)}},
	} {
		for _, p := range append(people(2, 6), lady, maid) {
			f := p.figure(t, hand)
			for i := 1; i < len(f.Levels); i++ {
				if gap := f.Levels[i-1].Height - f.Levels[i].Height; gap < 0.01*p.sheet[measure.BackWaist] {
					t.Errorf("%v: %s stands %.1f mm above %s", hand, f.Levels[i-1].Name, gap, f.Levels[i].Name)
				}
			}
			for l, a := range hand {
				told := false
				for _, n := range f.Notices {
					told = told || n.Code == "hand-beyond-neighbours" && n.Level == l && math.Abs(n.Amount-math.Abs(*a.Height-f.At(l).Height)) < 1e-9
				}
				if off := math.Abs(*a.Height - f.At(l).Height); (off > 0.1) != told {
					t.Errorf("%s set to %g stands at %.1f, told %v", l, *a.Height, f.At(l).Height, told)
				}
			}
		}
	}
}

func TestImpossibleShapesAreRefused(t *testing.T) {
	for want, hand := range map[string]measure.Shape{
		"girth of the waist":     {measure.Waist: {Girth: to(-1)}},
		"breadth of the bust":    {measure.Bust: {Breadth: to(math.NaN())}},
		"depth of the hip":       {measure.Hip: {Depth: to(0)}},
		"height of the hip":      {measure.Hip: {Height: to(math.Inf(-1))}},
		"front arc of the waist": {measure.Waist: {FrontArc: to(math.Inf(1))}},
		"left arc of the waist":  {measure.Waist: {LeftArc: to(-5)}},
		`no level "knee"`:        {"knee": {Height: to(-400)}},
	} {
		if _, err := torso.Build(lady.sheet, lady.wearer, lady.year, hand); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("want an error that names %q, got %v", want, err)
		}
	}
}
