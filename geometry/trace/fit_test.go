package trace_test

import (
	"math"
	"slices"
	"testing"

	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/torso"
	"understructure/geometry/trace"
	"understructure/geometry/unit"
	"understructure/geometry/view"
)

// stand is how high above the floor the waist of the figures here is, mm.
const stand = 1000

// figure is an invented woman's, of 1872.
func figure(t *testing.T, more measure.Sheet, hand measure.Shape) trace.Figure {
	t.Helper()
	sheet := measure.Sheet{measure.BustGirth: 840, measure.WaistGirth: 600, measure.HipGirth: 930, measure.BackWaist: 385}
	for k, v := range more {
		sheet[k] = v
	}
	f, err := torso.Build(sheet, measure.Woman, 1872, hand)
	if err != nil {
		t.Fatal(err)
	}
	return trace.Figure{Torso: f, Waist: stand, Hand: hand, Taken: sheet}
}

// box is the silhouette of something as broad all the way up.
func box(broad float64) []plane.Point {
	return []plane.Point{{X: 30 - broad/2, Y: 300}, {X: 30 - broad/2, Y: 1800}, {X: 30 + broad/2, Y: 1800}, {X: 30 + broad/2, Y: 300}}
}

func at(t *testing.T, all []trace.Proposal, l measure.Level) trace.Proposal {
	t.Helper()
	i := slices.IndexFunc(all, func(p trace.Proposal) bool { return p.Level == l })
	if i < 0 {
		t.Fatalf("nothing is proposed at the %s", l)
	}
	return all[i]
}

// The outline of the figure itself asks for nothing.
func TestTheFiguresOwnSilhouetteFits(t *testing.T) {
	f := figure(t, nil, nil)
	for what, yaw := range map[trace.What]unit.Angle{trace.Breadth: view.Front, trace.Depth: view.LeftSide} {
		line := silhouette(f.Torso.Skin.Lift(0, stand), yaw, false)
		for _, l := range []measure.Level{measure.Bust, measure.Underbust, measure.Waist, measure.HighHip} {
			p := at(t, f.Propose(line, what, 0), l)
			if math.Abs(p.Traced-p.From) > 0.5 || p.Changes() || p.Held() {
				t.Errorf("%s: %+v", what, p)
			}
		}
	}
}

// A figure shaped otherwise and traced gives its shape to the one that it came from, every girth as it was.
func TestASilhouetteIsTakenOver(t *testing.T) {
	plain := figure(t, nil, nil)
	was := plain.Torso.At(measure.Waist).Reading
	broad, deep := was.Breadth-9, at(t, plain.Propose(box(150), trace.Depth, 0), measure.HighHip).From+8
	other := figure(t, nil, measure.Shape{measure.Waist: {Breadth: &broad}, measure.HighHip: {Depth: &deep}})
	for what, yaw := range map[trace.What]unit.Angle{trace.Breadth: view.Front, trace.Depth: view.LeftSide} {
		line := silhouette(other.Torso.Skin.Lift(0, stand), yaw, true)
		changes := slices.DeleteFunc(plain.Propose(line, what, 0), func(p trace.Proposal) bool {
			return p.Level != measure.Waist && p.Level != measure.HighHip
		})
		fitted := figure(t, nil, trace.Apply(nil, changes))
		for _, p := range changes {
			want, got := other.Torso.At(p.Level), fitted.Torso.At(p.Level)
			a, b := want.Reading.Breadth, got.Reading.Breadth
			if what == trace.Depth {
				a, b = want.Reading.Depth, got.Reading.Depth
			}
			if math.Abs(a-b) > 0.5 {
				t.Errorf("%s %s is %.2f mm, want %.2f", p.Level, what, b, a)
			}
			if girth := plain.Torso.At(p.Level).Girth; math.Abs(got.Girth-girth) > 0.1 {
				t.Errorf("%s girth is %.2f mm, was %.2f", p.Level, got.Girth, girth)
			}
		}
	}
}

// The cloth outside is taken off on each side.
func TestWhatLiesOutsideIsTakenOff(t *testing.T) {
	p := at(t, figure(t, nil, nil).Propose(box(230), trace.Breadth, 6), measure.Waist)
	if math.Abs(p.Traced-218) > 1e-9 || math.Abs(p.To-218) > 1e-9 || p.Height != stand {
		t.Errorf("%+v, want 230 less two times 6 mm", p)
	}
	if got := figure(t, nil, nil).Propose(box(230), trace.Breadth, 115); len(got) > 0 {
		t.Errorf("nothing is left, yet %d levels are proposed", len(got))
	}
}

// What callipers took stays, and the difference can be told; other levels and the other way across are free.
func TestWhatWasTakenStays(t *testing.T) {
	f := figure(t, measure.Sheet{measure.WaistBreadth: 210, measure.BustDepth: 230}, nil)
	broad, deep := f.Propose(box(222), trace.Breadth, 0), f.Propose(box(222), trace.Depth, 0)
	for _, p := range []trace.Proposal{at(t, broad, measure.Waist), at(t, deep, measure.Bust)} {
		if !p.Taken || p.Changes() || p.Held() || math.Abs(p.Traced-222) > 1e-9 {
			t.Errorf("%+v", p)
		}
	}
	if p := at(t, broad, measure.Waist); math.Abs(p.From-210) > 0.1 {
		t.Errorf("the waist is %.2f mm broad, want the 210 taken", p.From)
	}
	for _, p := range []trace.Proposal{at(t, deep, measure.Waist), at(t, broad, measure.Bust)} {
		if p.Taken {
			t.Errorf("%s %s was not taken", p.Level, p.What)
		}
	}
}

// No slice of 600 mm round is 320 mm broad: half its girth is the most that any has.
func TestTheGirthHoldsTheSilhouette(t *testing.T) {
	f := figure(t, nil, nil)
	p := at(t, f.Propose(box(320), trace.Breadth, 0), measure.Waist)
	if !p.Held() || p.To >= 300 || p.To <= p.From {
		t.Errorf("%+v", p)
	}
	fitted := figure(t, nil, trace.Apply(nil, []trace.Proposal{p}))
	if l := fitted.Torso.At(measure.Waist); math.Abs(l.Girth-600) > 0.1 || math.Abs(l.Reading.Breadth-p.To) > 1 { // the limits are those of the slice alone
		t.Errorf("the waist becomes %.2f mm round and %.2f broad, want 600 and %.2f", l.Girth, l.Reading.Breadth, p.To)
	}
}

// A silhouette goes as far as it goes, and what the hand had set otherwise stays.
func TestOnlyWhatIsTracedChanges(t *testing.T) {
	height, deep := 60.0, 170.0
	hand := measure.Shape{measure.Waist: {Depth: &deep}, measure.Underbust: {Height: &height}}
	f := figure(t, nil, hand)
	line := []plane.Point{{X: -115, Y: stand - 30}, {X: -115, Y: stand + 30}, {X: 115, Y: stand + 30}, {X: 115, Y: stand - 30}}
	all := f.Propose(line, trace.Breadth, 0)
	if len(all) != 1 || all[0].Level != measure.Waist {
		t.Fatalf("proposed: %+v", all)
	}
	got := trace.Apply(hand, all)
	if a := got[measure.Waist]; a.Depth != &deep || a.Breadth == nil || *a.Breadth != all[0].To || a.Girth != nil {
		t.Errorf("the waist is set to %+v", a)
	}
	if hand[measure.Waist].Breadth != nil || got[measure.Underbust] != hand[measure.Underbust] {
		t.Error("what was set by hand has changed")
	}
}
