package plane

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestOffsetOfConvexRings(t *testing.T) {
	square := Ring{{0, 0}, {100, 0}, {100, 50}, {0, 50}}
	if a := square.Offset(20).Area(); math.Abs(a-140*90) > 1e-9 {
		t.Errorf("rectangle grows to %.3f, want 12600", a)
	}
	var circle Ring
	for i := range 200 {
		s, c := math.Sincos(2 * math.Pi * float64(i) / 200)
		circle = append(circle, Point{100 * c, 100 * s})
	}
	for _, p := range circle.Offset(20) { // the sides' own distance from the middle grows by 20
		if want := 100 + 20/math.Cos(math.Pi/200); math.Abs(p.Norm()-want) > 1e-9 {
			t.Fatalf("circle grows to %.6f, want %.6f", p.Norm(), want)
		}
	}
}

// A needle's point is cut square at the distance itself.
func TestOffsetCutsSharpCorners(t *testing.T) {
	needle := Ring{{0, 0}, {200, -5}, {200, 5}}
	lo, _ := needle.Offset(20).Bounds()
	if math.Abs(lo.X+20) > 1e-9 {
		t.Errorf("allowance reaches %.3f beyond the point, want 20", -lo.X)
	}
}

// In a right-angled hollow the lines simply cross; a slot narrower than two allowances closes.
func TestOffsetOfHollows(t *testing.T) {
	l := Ring{{0, 0}, {100, 0}, {100, 40}, {40, 40}, {40, 100}, {0, 100}}
	if a := l.Offset(20).Area(); math.Abs(a-(140*80+80*60)) > 1e-6 {
		t.Errorf("the L grows to %.3f, want 16000", a)
	}
	slot := Ring{{0, 0}, {100, 0}, {100, 100}, {60, 100}, {60, 20}, {40, 20}, {40, 100}, {0, 100}}
	if a := slot.Offset(15).Area(); math.Abs(a-130*130) > 1 {
		t.Errorf("the slotted square grows to %.3f, want 16900", a)
	}
}

// Of rings drawn by chance every corner of the offset keeps its distance, and none is farther
// than a drawn-out point may be.
func TestOffsetKeepsItsDistance(t *testing.T) {
	g := rand.New(rand.NewPCG(1, 2))
	const d = 20.0
	for n := range 300 {
		var r Ring
		corners := 8 + g.IntN(120)
		wild := 0.1 + 0.5*g.Float64()
		radius := 150.0
		for i := range corners {
			radius = math.Max(30, radius*(1+wild*(g.Float64()-0.5)))
			s, c := math.Sincos(2 * math.Pi * float64(i) / float64(corners))
			r = append(r, Point{radius * c, radius * s})
		}
		out := r.Offset(d)
		if at, met := out.Crossing(); met {
			t.Fatalf("ring %d: offset meets itself at %v", n, at)
		}
		for _, p := range out {
			far := math.Inf(1)
			for i := range r {
				far = math.Min(far, p.Dist(Nearest(p, r[i], r[(i+1)%len(r)])))
			}
			if far < d-1e-3 || far > 2*d+1e-3 || r.Contains(p) {
				t.Fatalf("ring %d: corner %v at %.4f mm, want %g to %g outside", n, p, far, d, 2*d)
			}
		}
		for i, p := range r {
			if !out.Contains(p) {
				t.Fatalf("ring %d: corner %d lies outside its offset", n, i)
			}
		}
	}
}
