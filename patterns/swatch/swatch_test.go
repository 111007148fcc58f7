package swatch

import (
	"image/color"
	"math"
	"testing"

	"understructure/geometry/fit"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/eyetest"
)

// Every clearance has one swatch: the bands follow one another without gap.
func TestBandsFollowOneAnother(t *testing.T) {
	set := Paper.Set()
	end := math.Inf(-1)
	for i, s := range set {
		if s.Band != fit.Band(i) || s.From != end || s.To <= s.From {
			t.Errorf("%v from %g to %g, after %g", s.Band, s.From, s.To, end)
		}
		end = s.To
	}
	if !math.IsInf(end, 1) {
		t.Errorf("the last band ends at %g", end)
	}
	if from, to := set[fit.AsWanted].Girth(); math.Abs(from-2*math.Pi) > 1e-9 || math.Abs(to-16*math.Pi) > 1e-9 {
		t.Errorf("as wanted is %.1f to %.1f mm of girth, want 6.3 to 50.3", from, to)
	}
}

// Too little and too much are hatched in different directions, more is denser, as wanted is plain.
func TestHatchingSaysTheSameAsColour(t *testing.T) {
	set := Paper.Set()
	h := func(b fit.Band) Hatch { return set[b].Hatch }
	if h(fit.AsWanted).Slope != 0 || h(fit.Straining).Slope*h(fit.Slack).Slope != -1 ||
		h(fit.Straining).Slope != h(fit.Touching).Slope || h(fit.Slack).Slope != h(fit.VerySlack).Slope {
		t.Error("the directions do not say which side of as wanted it is")
	}
	if h(fit.Straining).Gap > h(fit.Touching).Gap/2 || h(fit.VerySlack).Gap > h(fit.Slack).Gap/2 {
		t.Error("the gaps do not say how much")
	}
}

func TestPaperIsToldApartByEveryEye(t *testing.T) {
	var colours []color.NRGBA
	for _, s := range Paper.Set() {
		colours = append(colours, s.Colour)
	}
	for _, fault := range eyetest.TooAlike(colours...) {
		t.Error(fault)
	}
}

func TestMix(t *testing.T) {
	a, b := color.NRGBA{0, 100, 200, 255}, color.NRGBA{100, 100, 0, 255}
	if got := Mix(a, b, 0.25); got != (color.NRGBA{25, 100, 150, 255}) {
		t.Errorf("a quarter of the way is %v", got)
	}
}

// The lines end on the edges of the box, slant as they should and lie a gap apart.
func TestLines(t *testing.T) {
	for _, box := range []drawing.Box{{Hi: plane.Point{X: 30, Y: 12}}, {Lo: plane.Point{X: 5, Y: -7}, Hi: plane.Point{X: 11, Y: 20}}} {
		for _, slope := range []int{-1, 1} {
			h := Hatch{Slope: slope, Gap: 4}
			lines := h.Lines(box, 0.3)
			along := math.Sqrt2 * 4 * 0.3 // the gap, along an edge
			if want := (box.Width() + box.Height()) / along; math.Abs(float64(len(lines))-want) > 1 {
				t.Errorf("%d lines, want %.1f", len(lines), want)
			}
			for i, l := range lines {
				for _, p := range l {
					edge := math.Min(math.Min(p.X-box.Lo.X, box.Hi.X-p.X), math.Min(p.Y-box.Lo.Y, box.Hi.Y-p.Y))
					if math.Abs(edge) > 1e-9 {
						t.Errorf("%v is not on the edge of %v", p, box)
					}
				}
				if d := l[1].Sub(l[0]); math.Abs(d.Y-float64(slope)*d.X) > 1e-9 {
					t.Errorf("slope %d: a line runs along %v", slope, d)
				}
				if i > 0 {
					n := plane.Point{X: -float64(slope), Y: 1}.Mul(math.Sqrt2 / 2)
					if d := math.Abs(l[0].Sub(lines[i-1][0]).Dot(n)); math.Abs(d-1.2) > 1e-9 {
						t.Errorf("slope %d: lines are %.3f apart, want 1.2", slope, d)
					}
				}
			}
		}
	}
	if (Hatch{}).Lines(drawing.Box{Hi: plane.Point{X: 1, Y: 1}}, 1) != nil {
		t.Error("no hatching has lines")
	}
}
