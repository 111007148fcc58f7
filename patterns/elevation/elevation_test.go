package elevation

import (
	"math"
	"testing"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/plan"
	"understructure/patterns/plantest"
)

func box(w, h float64) drawing.Box { return drawing.Box{Hi: plane.Point{X: w, Y: h}} }

// block is a box of 200 × 100 × 400 mm that stands 30 mm to the figure's right and 20 mm to its front.
func block() plan.Plan {
	ring := plane.Ring{{X: -70, Y: -30}, {X: 130, Y: -30}, {X: 130, Y: 70}, {X: -70, Y: 70}}
	p := plan.Plan{Levels: []plan.Level{{Name: "waist", Height: 1000}}}
	for z := 800.0; z <= 1200; z += 10 {
		p.Surface.Heights = append(p.Surface.Heights, z)
		p.Surface.Built = append(p.Surface.Built, ring)
	}
	return p
}

func TestSilhouettes(t *testing.T) {
	p := block()
	for side, want := range map[string][2]float64{Front: {-130, 70}, Side: {-30, 70}, Back: {-70, 130}} {
		all := silhouettes(p.Surface.Heights, p.Surface.Built, across[side])
		if len(all) != 1 {
			t.Fatalf("%s: %d silhouettes, want 1", side, len(all))
		}
		b := drawing.Empty().Round(all[0]...)
		if b.Lo.X != want[0] || b.Hi.X != want[1] || b.Lo.Y != 800 || b.Hi.Y != 1200 {
			t.Errorf("%s: box %v, want x from %g to %g, y from 800 to 1200", side, b, want[0], want[1])
		}
	}
	p.Surface.Built[20] = nil
	if n := len(silhouettes(p.Surface.Heights, p.Surface.Built, across[Front])); n != 2 {
		t.Errorf("a height without a section leaves %d silhouettes, want 2", n)
	}
}

// Front and side are drawn to one scale, without distortion.
func TestOneScale(t *testing.T) {
	ratio := map[string]float64{}
	height := map[string]float64{}
	for _, side := range []string{Front, Side} {
		var r plantest.Recorder
		Draw(&r, block(), side, box(80, 100))
		for _, l := range r.Lines {
			if l.Closed {
				b := drawing.Empty().Round(l.Points...)
				ratio[side], height[side] = b.Width()/b.Height(), b.Height()
			}
		}
	}
	if math.Abs(ratio[Front]-0.5) > 1e-9 || math.Abs(ratio[Side]-0.25) > 1e-9 || math.Abs(height[Front]-height[Side]) > 1e-9 {
		t.Errorf("ratios %v, heights %v; want ½ and ¼ at one height", ratio, height)
	}
}

func TestNothingOverlaps(t *testing.T) {
	for _, side := range []string{Front, Side} {
		var r plantest.Recorder
		p := plantest.Plan()
		p.Levels[3].Height = p.Levels[2].Height - 4 // two levels close together
		Draw(&r, p, side, box(85, 98))
		for _, f := range r.Faults(box(85, 98)) {
			t.Errorf("%s: %s", side, f)
		}
	}
	var r plantest.Recorder
	Section(&r, plantest.Plan(), "bust", box(42, 36))
	for _, f := range r.Faults(box(42, 36)) {
		t.Error(f)
	}
}

func TestMissingThingsDrawNothing(t *testing.T) {
	var r plantest.Recorder
	Draw(&r, plan.Plan{}, Front, box(80, 100))
	Section(&r, plan.Plan{}, "waist", box(80, 100))
	Section(&r, block(), "elbow", box(80, 100))
	if len(r.Lines)+len(r.Words) != 0 {
		t.Errorf("drew %d lines and %d words of nothing", len(r.Lines), len(r.Words))
	}
}
