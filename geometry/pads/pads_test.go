package pads

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"understructure/geometry/plane"
	"understructure/geometry/section"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s = %.9g, want %.9g within %.2g", what, got, want, within)
	}
}

func radians(degrees float64) float64 { return degrees * math.Pi / 180 }

func size(r plane.Ring) (w, h float64) {
	lo, hi := r.Bounds()
	return hi.X - lo.X, hi.Y - lo.Y
}

// A shoulder of 120 mm turned by 8°: 120·tan 8° = 16.87 mm at the neck, two sheets of 6 mm, which end 120·(1 − 6/16.87) and
// 120·(1 − 12/16.87) mm from the neck (like triangles).
func TestWedge(t *testing.T) {
	s := Shoulder{Length: 120, Form: radians(20), Wanted: radians(28), Neck: 360, Wadding: 6}
	rise := 120 * math.Tan(radians(8))
	near(t, "rise", s.Rise(), rise, 1e-9)
	p, err := s.Wedge()
	if err != nil || len(p.Sheets) != 2 {
		t.Fatalf("%d sheets, %v", len(p.Sheets), err)
	}
	for i, k := range []float64{2, 1} { // the smaller first
		_, hi := p.Sheets[i].Bounds()
		near(t, "point", hi.Y, 120*(1-k*6/rise), 1e-9)
	}
	near(t, "left", p.Left, rise-12, 1e-9)
}

// The stack never rises above the wanted line: at every distance from the neck it is at most what is wanted there, and lacks
// less than a sheet and what is too short to cut.
func TestWedgeStaysUnderTheLine(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 6))
	for range 500 {
		s := Shoulder{Length: 60 + 150*rng.Float64(), Form: radians(40 * rng.Float64()), Wanted: radians(40 * rng.Float64()), Neck: 250 + 200*rng.Float64(), Wadding: 2 + 8*rng.Float64()}
		p, err := s.Wedge()
		if err != nil {
			t.Fatal(err)
		}
		last := 0.0
		for _, r := range p.Sheets {
			if _, crossed := r.Crossing(); crossed || r.Area() <= last {
				t.Fatalf("%+v: areas do not grow: %.0f after %.0f", s, r.Area(), last)
			}
			last = r.Area()
		}
		rise := math.Abs(s.Rise())
		for x := 0.0; x < s.Length; x += s.Length / 40 {
			stack := 0.0
			for _, r := range p.Sheets {
				if _, hi := r.Bounds(); x < hi.Y-1e-9 {
					stack += s.Wadding
				}
			}
			wanted := rise * (1 - x/s.Length)
			if stack > wanted+1e-6 || wanted-stack > s.Wadding*(1+1e-9)+rise*shortest/s.Length {
				t.Fatalf("%+v: %.2f mm at %.1f, wanted %.2f", s, stack, x, wanted)
			}
		}
	}
}

// Thick at the neck the triangle is hollowed by the neck; thick at the arm it is straight.
func TestWedgeForSquareShoulders(t *testing.T) {
	sloping := Shoulder{Length: 120, Form: radians(15), Wanted: radians(30), Neck: 360, Wadding: 6}
	square := sloping
	square.Form, square.Wanted = square.Wanted, square.Form
	near(t, "rise", square.Rise(), -sloping.Rise(), 1e-9)
	a, err := sloping.Wedge()
	if err != nil {
		t.Fatal(err)
	}
	b, err := square.Wedge()
	if err != nil || len(a.Sheets) != len(b.Sheets) {
		t.Fatalf("%d and %d sheets, %v", len(a.Sheets), len(b.Sheets), err)
	}
	if len(a.Sheets[0]) <= 4 || len(b.Sheets[0]) != 3 {
		t.Errorf("corners %d and %d", len(a.Sheets[0]), len(b.Sheets[0]))
	}
	same := sloping
	same.Wanted = same.Form
	if p, err := same.Wedge(); err != nil || len(p.Sheets) != 0 {
		t.Errorf("a shoulder that slopes as it should gets %d sheets, %v", len(p.Sheets), err)
	}
}

// A sphere of radius 65 mm cut to a foot of 60 mm radius is 40 mm high (5-12-13 triangle: 65 − 25); 30 mm up its radius is
// √(65² − 55²) = 34.64 mm.
func TestMoundIsASphere(t *testing.T) {
	m := Mound{Width: 120, Height: 120, Projection: 40, Wadding: 10}
	near(t, "foot", m.share(0), 1, 1e-12)
	near(t, "at 30 mm", 60*m.share(30), math.Sqrt(65*65-55*55), 1e-9)
	near(t, "volume", m.Volume(), math.Pi*40*40*(3*65-40)/3, 1e-6) // Archimedes: πh²(3r − h)/3
	p, err := m.Stack()
	if err != nil || len(p.Sheets) != 3 {
		t.Fatalf("%d rounds, %v", len(p.Sheets), err)
	}
	for i, z := range []float64{30, 20, 10} {
		w, h := size(p.Sheets[i])
		near(t, "breadth", w, 2*math.Sqrt(65*65-math.Pow(25+z, 2)), 1e-6)
		near(t, "height", h, w, 1e-6)
	}
	near(t, "left", p.Left, 10, 1e-9)
}

// Thinner and thinner sheets fill the mound from inside.
func TestStackFillsItsMound(t *testing.T) {
	last := 0.0
	for _, thick := range []float64{8, 4, 2, 1} {
		m := Mound{Width: 180, Height: 130, Projection: 40, Wadding: thick}
		p, err := m.Stack()
		if err != nil {
			t.Fatal(err)
		}
		v, before := 0.0, 0.0
		for _, r := range p.Sheets {
			v += r.Area() * thick
			if r.Area() <= before {
				t.Error("rounds do not grow")
			}
			before = r.Area()
		}
		if share := v / m.Volume(); share <= last || share >= 1 {
			t.Errorf("sheets of %g mm fill %.3f", thick, share)
		} else {
			last = share
		}
	}
	if last < 0.95 {
		t.Errorf("sheets of 1 mm fill %.3f", last)
	}
}

// The covered disc has the girth of the neck: a parallel inside a convex outline is 2πd shorter (Steiner).
func TestNeckDisc(t *testing.T) {
	base := section.Of(section.Halves{Right: 56, Left: 56, Front: 60, Back: 60, FrontFullness: 2, BackFullness: 2, Y: -4}.Ring())
	d, err := Neck(base, 1.5, 32, plane.Point{Y: -10})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "girth", d.Outline.Perimeter(), base.Tape()-2*math.Pi*1.5, 0.05)
	if d.Hole.Area() >= 0 || -d.Hole.Area() < math.Pi*16*16 {
		t.Errorf("hole of %.1f mm²", d.Hole.Area())
	}
	for _, q := range d.Hole {
		if q.Dist(plane.Point{Y: -10}) < 16 || !d.Outline.Contains(q) {
			t.Fatalf("hole at %v", q)
		}
	}
	if bare, err := Neck(base, 0, 0, plane.Point{}); err != nil || bare.Hole != nil {
		t.Errorf("%v, hole %v", err, bare.Hole)
	}
}

func TestFillsGrowWithTheBust(t *testing.T) {
	s, u, err := Fills(850)
	if err != nil {
		t.Fatal(err)
	}
	w, h := size(s)
	near(t, "shoulder fill", w*h, 0.07*850*0.11*850, 1e-3)
	if big, _, _ := Fills(1000); big.Area() <= s.Area() || u.Area() <= 0 {
		t.Error("fills do not grow")
	}
}

func TestRefusals(t *testing.T) {
	good := Shoulder{Length: 120, Form: 0.3, Wanted: 0.5, Neck: 360, Wadding: 6}
	for want, s := range map[string]Shoulder{
		"shoulder length": {Length: math.NaN(), Form: 0.3, Wanted: 0.5, Neck: 360, Wadding: 6},
		"wadding":         {Length: 120, Form: 0.3, Wanted: 0.5, Neck: 360},
		"slope wanted":    {Length: 120, Form: 0.3, Wanted: math.Inf(1), Neck: 360, Wadding: 6},
		"rise":            {Length: 400, Form: -1.3, Wanted: 0.2, Neck: 360, Wadding: 0.5},
	} {
		if _, err := s.Wedge(); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%+v: %v, want %q", s, err, want)
		}
	}
	if _, err := good.Wedge(); err != nil {
		t.Error(err)
	}
	if _, err := (Mound{Width: 100, Height: 100, Projection: 60, Wadding: 6}).Stack(); err == nil || !strings.Contains(err.Error(), "projection") {
		t.Errorf("taller than half a ball: %v", err)
	}
	if _, err := Neck(section.Section{}, 1, 0, plane.Point{}); err == nil {
		t.Error("a neck of nothing is accepted")
	}
	if _, _, err := Fills(math.NaN()); err == nil {
		t.Error("a bust that is no number is accepted")
	}
}
