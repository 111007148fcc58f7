package section

import (
	"math"
	"testing"

	"understructure/geometry/plane"
)

func woman() Usual {
	u := Usual{Halves: Halves{Right: 150, Left: 150, Front: 110, Back: 95, FrontFullness: 2.4, BackFullness: 2.6, Lobe: 80, Valley: 20}}
	u.Spread.Breadth, u.Spread.Depth, u.Spread.Fullness, u.Spread.Balance = 0.04, 0.06, 0.2, 0.02
	return u
}

func TestFitHonoursEveryReading(t *testing.T) {
	for _, r := range []Readings{
		{Girth: 820},
		{Girth: 820, Breadth: 280},
		{Girth: 820, Breadth: 280, Depth: 210},
		{Girth: 820, Breadth: 280, Depth: 210, FrontArc: 440},
		{Girth: 820, Breadth: 280, Depth: 210, FrontArc: 440, LeftArc: 402},
		{Girth: 1300, FrontArc: 700},
		{Girth: 560, Depth: 150},
	} {
		h, err := Fit(r, woman())
		if err != nil {
			t.Fatalf("%+v: %v", r, err)
		}
		girth, front, left := h.Arcs()
		for _, c := range []struct {
			what      string
			got, want float64
		}{
			{"girth", girth, r.Girth}, {"breadth", h.Right + h.Left, r.Breadth}, {"depth", h.Front + h.Back, r.Depth},
			{"front arc", front, r.FrontArc}, {"left arc", left, r.LeftArc},
		} {
			if c.want != 0 && math.Abs(c.got-c.want) > 1e-3 {
				t.Errorf("%+v: %s %.4f", r, c.what, c.got)
			}
		}
	}
}

// A slice drawn in directions keeps the tape of the ring that it was drawn from.
func TestDirectionsKeepTheTape(t *testing.T) {
	h, err := Fit(Readings{Girth: 820}, woman())
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

// The perimeter of an ellipse is 4a·E(1 − b²/a²): A&S 17.3 tables E(0.36) as 1.41808 (m = 0.36; M. Abramowitz, I. Stegun, "Handbook of Mathematical Functions", 1964), from memory to five places and so checked beside Ramanujan's series.
func TestEllipse(t *testing.T) {
	h := Halves{Right: 100, Left: 100, Front: 80, Back: 80, FrontFullness: 2, BackFullness: 2}
	girth, front, left := h.Arcs()
	a, b := 100.0, 80.0
	k := 3 * (a - b) * (a - b) / ((a + b) * (a + b))
	want := math.Pi * (a + b) * (1 + k/(10+math.Sqrt(4-k))) // S. Ramanujan, "Modular equations and approximations to π", 1914
	if math.Abs(girth-want) > 0.01 || math.Abs(girth-4*a*1.41808) > 0.02 {
		t.Errorf("girth %.4f, Ramanujan %.4f", girth, want)
	}
	if math.Abs(front-girth/2) > 1e-6 || math.Abs(left-girth/2) > 1e-6 {
		t.Errorf("halves %.4f and %.4f of %.4f", front, left, girth)
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

func BenchmarkTape(b *testing.B) {
	s := Of(woman().Ring())
	for b.Loop() {
		s.Tape()
	}
}

func BenchmarkFit(b *testing.B) {
	for b.Loop() {
		Fit(Readings{Girth: 820, Breadth: 280, Depth: 210, FrontArc: 440}, woman())
	}
}
