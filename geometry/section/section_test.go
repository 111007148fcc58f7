package section

import (
	"fmt"
	"math"
	"testing"

	"understructure/geometry/plane"
)

// waist is the usual woman's waist of package torso.
func waist() Usual {
	return Usual{
		Body:  Shaped(Profile{1.0201, -0.039, 0.0153, 0.0352, -0.0266, 0.0049, -0.0057, 0.0018, -0.0014}, 280, 200),
		Ratio: 0.1, Fullness: 0.08, Lean: 0.05, Balance: 0.03, Seam: 0.026,
	}
}

func TestFitHonoursEveryReading(t *testing.T) {
	for _, r := range []Readings{
		{Girth: 820},
		{Girth: 820, Breadth: 280},
		{Girth: 820, Breadth: 280, Depth: 216},
		{Girth: 820, Breadth: 280, Depth: 216, FrontArc: 430},
		{Girth: 820, Breadth: 280, Depth: 216, FrontArc: 420, LeftArc: 402},
		{Girth: 1300, FrontArc: 670},
		{Girth: 560, Depth: 150},
	} {
		h, err := Fit(r, waist())
		if err != nil {
			t.Fatalf("%+v: %v", r, err)
		}
		girth, front, left := h.Arcs()
		for _, c := range []struct {
			what      string
			got, want float64
		}{
			{"girth", girth, r.Girth}, {"breadth", h.Breadth, r.Breadth}, {"depth", h.Depth, r.Depth},
			{"front arc", front, r.FrontArc}, {"left arc", left, r.LeftArc},
		} {
			if c.want != 0 && math.Abs(c.got-c.want) > 0.011 {
				t.Errorf("%+v: %s %.4f", r, c.what, c.got)
			}
		}
	}
}

// A slice drawn in directions keeps the tape of the ring that it was drawn from.
func TestDirectionsKeepTheTape(t *testing.T) {
	h, err := Fit(Readings{Girth: 820}, waist())
	if err != nil {
		t.Fatal(err)
	}
	s := Of(h.Ring())
	if d := s.Tape() - 820; math.Abs(d) > 0.1 {
		t.Errorf("tape in %d directions is off by %.3f mm", Directions, d)
	}
	ring := s.Ring()
	if d := ring.Tape() - s.Tape(); math.Abs(d) > 1e-9 {
		t.Errorf("two ways to the hull differ by %g mm", d)
	}
	if p, ok := ring.Crossing(); ok {
		t.Errorf("outline crosses itself at %v", p)
	}
}

// Steiner: the parallel of a convex outline at distance d is 2πd longer (5 mm: 31.4 mm).
func TestParallelIsSteiner(t *testing.T) {
	s := Of(Halves{Right: 150, Left: 140, Front: 110, Back: 95, FrontFullness: 2.4, BackFullness: 2.2}.Ring())
	for _, d := range []float64{5, 12.7, -5} {
		p := s.Parallel(d)
		if got, want := p.Tape()-s.Tape(), 2*math.Pi*d; math.Abs(got-want) > 0.005*math.Abs(want) {
			t.Errorf("parallel at %g mm adds %.3f, want %.3f", d, got, want)
		}
	}
}

// The perimeter of an ellipse is 4a·E(m), m = 1 − b²/a². For b/a = 0.8 Ramanujan's series
// is right to nine places (S. Ramanujan, "Modular equations and approximations to π", 1914);
// E(0.36) = 1.41808 (tables of M. Abramowitz, I. Stegun, "Handbook of Mathematical
// Functions", 1964, 17.3; from memory to five places).
func TestEllipse(t *testing.T) {
	a, b := 100.0, 80.0
	ring := Halves{Right: a, Left: a, Front: b, Back: b, FrontFullness: 2, BackFullness: 2}.Ring()
	k := 3 * (a - b) * (a - b) / ((a + b) * (a + b))
	want := math.Pi * (a + b) * (1 + k/(10+math.Sqrt(4-k)))
	if got := ring.Tape(); math.Abs(got-want) > 0.01 || math.Abs(got-4*a*1.41808) > 0.02 {
		t.Errorf("girth %.4f, Ramanujan %.4f", got, want)
	}
	round := Shaped(Profile{1}, 2*a, 2*b)
	girth, front, left := round.Arcs()
	if math.Abs(girth-want) > 0.1 || math.Abs(front-girth/2) > 1e-6 || math.Abs(left-girth/2) > 1e-6 {
		t.Errorf("a stretched circle has girth %.4f, front %.4f, left %.4f; want %.4f and halves", girth, front, left, want)
	}
}

func TestOfSquare(t *testing.T) {
	s := Of(plane.Ring{{X: 50, Y: 50}, {X: -50, Y: 50}, {X: -50, Y: -50}, {X: 50, Y: -50}})
	if s[Right] != 50 || s[Front] != 50 || s[Left] != 50 || s[Back] != 50 {
		t.Errorf("sides at %v %v %v %v", s[Right], s[Front], s[Left], s[Back])
	}
	if d := s[Directions/8] - 50*math.Sqrt2; math.Abs(d) > 1e-9 {
		t.Errorf("corner off by %g", d)
	}
}

// One direction drawn alone is what the whole slice has there, to the last bit.
func TestTowardIsTheSliceInOneDirection(t *testing.T) {
	for _, h := range []Halves{
		{Right: 150, Left: 140, Front: 110, Back: 95, FrontFullness: 2.8, BackFullness: 2, Y: 12},
		{Right: 55, Left: 55, Front: 50, Back: 50, FrontFullness: 2, BackFullness: 2, Y: -49},
		{Right: 170, Left: 170, Front: 60, Back: 1, FrontFullness: 2.3, BackFullness: 2.3, Y: 0.5},
		{Right: 100, Left: 100, Front: 40, Back: 40, FrontFullness: 2, BackFullness: 2, Y: 60}, // the axis lies outside
	} {
		s := Of(h.Ring())
		for j := range s {
			if got := h.Toward(j); got != s[j] {
				t.Errorf("%+v, direction %d: %v, want %v", h, j, got, s[j])
			}
		}
	}
}

func BenchmarkTape(b *testing.B) {
	s := Of(waist().Ring())
	for b.Loop() {
		s.Tape()
	}
}

func BenchmarkFit(b *testing.B) {
	for b.Loop() {
		Fit(Readings{Girth: 820, Breadth: 280, Depth: 216, FrontArc: 430}, waist())
	}
}

// What a unit of fullness or lean does to the tape, for choosing their spreads in package torso.
func ExampleBody_Arcs() {
	b := waist().Body
	g0, f0, _ := b.Arcs()
	b.Front, b.Back = 0.1, 0.1
	g1, _, _ := b.Arcs()
	b.Front, b.Back = 0.1, -0.1
	g2, f2, _ := b.Arcs()
	fmt.Printf("fullness 0.1: girth %+.1f %%; lean 0.1: front arc %+.1f %% of the girth", 100*(g1/g0-1), 100*(f2/g2-f0/g0))
	// Output: fullness 0.1: girth +4.1 %; lean 0.1: front arc +3.2 % of the girth
}
