package elevation

import (
	"fmt"
	"math"
	"testing"

	"understructure/geometry/plane"
	"understructure/geometry/space"
	"understructure/patterns/drawing"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
	"understructure/patterns/plantest"
)

// padded is a mount with so many layers, each of one patch in front and one behind.
func padded(layers int) plan.Plan {
	p := plantest.Plan()
	p.Layers, p.Pieces = nil, nil
	for n := 1; n <= layers; n++ {
		p.Layers = append(p.Layers, plan.Layer{Number: n, Material: "wadding 6 mm", Thickness: 6, Pieces: 2})
		for _, y := range []float64{120, -120} {
			p.Pieces = append(p.Pieces, piece.Piece{ID: fmt.Sprintf("L%02d-%g", n, y), Material: "wadding 6 mm", Layer: n,
				Position: []space.Point{{X: -40, Y: y, Z: 1100}, {X: 40, Y: y, Z: 1100}, {X: 40, Y: y, Z: 1200}, {X: -40, Y: y, Z: 1200}}})
		}
	}
	return p
}

// sliced is a pile of so many round slices of 50 mm, each a little smaller above than below.
func sliced(n int) plan.Plan {
	p := plan.Plan{Build: "slices"}
	for k := 1; k <= n; k++ {
		r := 150 - float64(k)
		q := piece.Piece{ID: fmt.Sprintf("S%02d", k), Material: "plank 50 mm", Layer: k, Thickness: 50, Outline: disc(r), Holes: []plane.Ring{disc(16).Reverse()},
			Marks:    []piece.Mark{{Kind: piece.InnerOutline, Label: "top face", Points: disc(r - 5)}, {Kind: piece.Pin, Label: fmt.Sprintf("to %d", k+1), Points: []plane.Point{{X: 60}}}},
			Position: []space.Point{{X: r, Z: 700 + 50*float64(k)}}}
		p.Pieces = append([]piece.Piece{q}, p.Pieces...) // whatever order they come in
		p.Layers = append(p.Layers, plan.Layer{Number: k, Material: q.Material, Thickness: 50, Pieces: 1})
	}
	return p
}

func disc(r float64) plane.Ring {
	var out plane.Ring
	for i := range 48 {
		s, c := math.Sincos(2 * math.Pi * float64(i) / 48)
		out = append(out, plane.Point{X: r * c, Y: r * s})
	}
	return out
}

func times(r plantest.Recorder, text string) int {
	n := 0
	for _, w := range r.Words {
		if w.Text == text {
			n++
		}
	}
	return n
}

func clean(t *testing.T, r plantest.Recorder, page drawing.Box) {
	t.Helper()
	for _, f := range r.Faults(page) {
		t.Error(f)
	}
	for _, l := range r.Lines {
		for _, p := range l.Points {
			if !page.Grow(0.5).Contains(p) {
				t.Fatalf("a line leaves the box at %v", p)
			}
		}
	}
}

func TestEveryLayerIsDrawnApartOnce(t *testing.T) {
	for _, n := range []int{1, 3, 8, 13} {
		p := padded(n)
		l := LayersOf(p, 177, 80)
		var all plantest.Recorder
		for row := range l.Rows() {
			var r plantest.Recorder
			l.Draw(&r, row, box(177, l.Height()))
			clean(t, r, box(177, l.Height()))
			all.Words, all.Fills = append(all.Words, r.Words...), append(all.Fills, r.Fills...)
		}
		for k := 1; k <= n; k++ {
			if got := times(all, fmt.Sprint(k)); got != 1 {
				t.Errorf("%d layers: the number %d stands %d times", n, k, got)
			}
		}
		if l.Count() != n || times(all, "wadding 6 mm") != n || times(all, "2 pieces") != n {
			t.Errorf("%d layers: %d are drawn, %d with their thickness", n, l.Count(), times(all, "wadding 6 mm"))
		}
		if l.Height() > 80 {
			t.Errorf("%d layers: a row takes %g mm, more than 80", n, l.Height())
		}
	}
}

// Each patch is seen from one of the two sides, and from one alone.
func TestAPieceIsSeenFromOneSide(t *testing.T) {
	for _, q := range padded(1).Pieces {
		out := facing(q.Position)
		if out.Dot(plane.Point{Y: q.Position[0].Y}) <= 0 || math.Abs(out.X) > 1e-6 {
			t.Errorf("the piece at y = %g faces %v", q.Position[0].Y, out)
		}
		if front, back := out.Dot(threeQuarter[0][1]) > 0, out.Dot(threeQuarter[1][1]) > 0; front == back || front != (q.Position[0].Y > 0) {
			t.Errorf("the piece at y = %g is seen from the front %v and from the back %v", q.Position[0].Y, front, back)
		}
	}
}

func TestEverySliceIsDrawnApart(t *testing.T) {
	for _, n := range []int{1, 5, 18, 30} {
		s := StackOf(sliced(n), 85, 112)
		var r plantest.Recorder
		s.Draw(&r, box(85, s.Height()))
		clean(t, r, box(85, s.Height()))
		last := math.Inf(-1)
		for k := 1; k <= n; k++ {
			if got := times(r, fmt.Sprint(k)); got != 1 {
				t.Errorf("%d slices: the number %d stands %d times", n, k, got)
			}
			for _, w := range r.Words {
				if w.Text == fmt.Sprint(k) {
					if w.At.Y <= last {
						t.Errorf("%d slices: %d does not stand above %d", n, k, k-1)
					}
					last = w.At.Y
				}
			}
			if got := times(r, fmt.Sprintf("at %d", 700+50*k)); got != 1 {
				t.Errorf("%d slices: the height of %d stands %d times", n, k, got)
			}
		}
		if s.Count() != n || times(r, "50.0 mm") != n {
			t.Errorf("%d slices: %d drawn, %d thicknesses", n, s.Count(), times(r, "50.0 mm"))
		}
	}
}

// All three views have one scale, and stand within the box that was asked for, on the floor where there is a skirt.
func TestViews(t *testing.T) {
	dress := plantest.Plan()
	dress.Skirt = &plan.Skirt{Heights: []float64{10, 500, 1050}, Garment: []plane.Ring{disc(420), disc(300), disc(100)}, Support: []plane.Ring{disc(380), disc(280), disc(98)},
		Hoops: []plan.Hoop{{Height: 30, Right: 380, Left: 380, Front: 380, Back: 380, Steel: true}}}
	for name, c := range map[string]struct {
		plan  plan.Plan
		words []string
	}{
		"a bodice": {plantest.Plan(), []string{"front", "side", "back", "form", "built", "wanted", "garment inside", "waist", "1060"}},
		"a dress":  {dress, []string{"front", "side", "back", "skirt support", "skirt as it hangs", "stand height 1052"}},
	} {
		v := ViewsOf(c.plan, 177, 104)
		if v.Height() > 104 {
			t.Errorf("%s takes %g mm, more than 104", name, v.Height())
		}
		var r plantest.Recorder
		v.Draw(&r, box(177, v.Height()))
		clean(t, r, box(177, v.Height()))
		for _, w := range c.words {
			if times(r, w) != 1 {
				t.Errorf("%s: %q stands %d times", name, w, times(r, w))
			}
		}
	}
}

// The bar has the length that it says, and the key stands clear of it.
func TestTheBarIsTrue(t *testing.T) {
	for _, scale := range scales {
		var r plantest.Recorder
		used := bar(&r, scale, plane.Point{})
		var says float64
		if _, err := fmt.Sscanf(r.Words[0].Text, "%g mm", &says); err != nil {
			t.Fatal(err)
		}
		if got := r.Lines[2].Points[1].X * scale; math.Abs(got-says) > 1e-9 {
			t.Errorf("scale 1 : %g: a bar of %g mm says %g", scale, got, says)
		}
		if scale >= 2 && scale <= 100 && used > barStrip {
			t.Errorf("scale 1 : %g: the bar takes %g mm, more than %g", scale, used, barStrip)
		}
	}
}

// Where the mount is larger round than the garment it is hatched, in black and white too.
func TestStrainIsHatched(t *testing.T) {
	lines := func(p plan.Plan) int {
		v := ViewsOf(p, 177, 104)
		var r plantest.Recorder
		v.Draw(&r, box(177, v.Height()))
		return len(r.Lines)
	}
	tight := plantest.Plan()
	tight.Surface.Garment = append([]plane.Ring{}, tight.Surface.Garment...)
	for i := 20; i < 30; i++ {
		tight.Surface.Garment[i] = tight.Surface.Form[i]
	}
	if loose, strained := lines(plantest.Plan()), lines(tight); strained < loose+3*5 {
		t.Errorf("%d lines without strain, %d with it", loose, strained)
	}
}

func TestSectionsHaveOneScale(t *testing.T) {
	p := plantest.Plan()
	s := SectionsOf(p, 5, 177)
	var wide []float64
	for row := range s.Rows() {
		var r plantest.Recorder
		s.Draw(&r, row, box(177, s.Height()))
		clean(t, r, box(177, s.Height()))
		for _, l := range r.Lines {
			if l.Closed && l.Pen.Width == 0.32 { // the garment
				b := drawing.Empty().Round(l.Points...)
				wide = append(wide, b.Width()*s.Scale())
			}
		}
	}
	n := 0
	for _, l := range p.Levels {
		i, _ := Nearest(p, l.Name)
		if len(p.Surface.Garment[i]) == 0 {
			continue
		}
		lo, hi := p.Surface.Garment[i].Bounds()
		if n >= len(wide) || math.Abs(wide[n]-(hi.X-lo.X)) > 1e-6 {
			t.Errorf("%s is drawn at another scale", l.Name)
		}
		n++
	}
}

func TestNothingApartOfNothing(t *testing.T) {
	var r plantest.Recorder
	ViewsOf(plan.Plan{}, 177, 100).Draw(&r, box(177, 100))
	StackOf(plan.Plan{}, 85, 100).Draw(&r, box(85, 100))
	if len(r.Lines)+len(r.Words) != 0 || ViewsOf(plan.Plan{}, 177, 100).Height() != 0 || StackOf(plan.Plan{}, 85, 100).Height() != 0 || LayersOf(plan.Plan{}, 177, 80).Rows() != 0 || SectionsOf(plan.Plan{}, 5, 177).Rows() != 0 {
		t.Error("something is drawn of nothing")
	}
}
