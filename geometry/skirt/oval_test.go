package skirt

import (
	"math"
	"testing"

	"understructure/geometry/plane"
	"understructure/geometry/section"
)

// ramanujan is his second approximation of the perimeter of an ellipse (S. Ramanujan, "Modular
// equations and approximations to π", Quarterly Journal of Mathematics 45, 1914). Its relative error
// is near 3·h⁵/2¹⁷ for small h.
func ramanujan(a, b float64) (perimeter, relative float64) {
	h := (a - b) * (a - b) / ((a + b) * (a + b))
	return math.Pi * (a + b) * (1 + 3*h/(10+math.Sqrt(4-3*h))), 3 * math.Pow(h, 5) / (1 << 17)
}

func TestEllipseGirthAgainstRamanujan(t *testing.T) {
	for _, b := range []float64{400, 399, 350, 300, 200, 150} {
		want, relative := ramanujan(400, b)
		for _, got := range []float64{EllipseGirth(400, b), EllipseGirth(b, 400)} {
			if math.Abs(got/want-1) > 2*relative+1e-13 {
				t.Errorf("400 by %g: %.9f, Ramanujan %.9f", b, got, want)
			}
		}
	}
}

// The perimeter again, added up from a million short sides.
func TestEllipseGirthAgainstSides(t *testing.T) {
	for _, ab := range [][2]float64{{650, 750}, {100, 900}, {5, 1000}} {
		const n = 1 << 20
		sum, x, y := 0.0, ab[0], 0.0
		for i := 1; i <= n; i++ {
			s, c := math.Sincos(2 * math.Pi * float64(i) / n)
			sum += math.Hypot(ab[0]*c-x, ab[1]*s-y)
			x, y = ab[0]*c, ab[1]*s
		}
		if got := EllipseGirth(ab[0], ab[1]); math.Abs(got/sum-1) > 1e-9 {
			t.Errorf("%v: %.6f, sides %.6f", ab, got, sum)
		}
	}
}

// A dress of 1866–67 stands on 130 by 150 cm (Glasgow Museums E.1992.6.5): 440.4 cm round.
func TestFootprint(t *testing.T) {
	if got := (Oval{650, 650, 750, 750}).Girth(); math.Abs(got-4404) > 1 {
		t.Errorf("130 by 150 cm: %.1f mm round, want 4404", got)
	}
}

// A hoop of 83 inches (1858–61) is 67.1 cm across and one of 120 inches (1866) 97.0 cm
// (corsetsandcrinolines.com, index 185040 and 186036; across: derived), a hem of 366 cm (V&A
// O368547, about 1851) 116.5 cm.
func TestRoundHoops(t *testing.T) {
	for _, c := range []struct{ girth, across float64 }{{83 * 25.4, 671}, {120 * 25.4, 970}, {3660, 1165}} {
		if got := 2 * Round(c.girth).Front; math.Abs(got-c.across) > 1 {
			t.Errorf("%.0f mm round: %.1f across, want %.0f", c.girth, got, c.across)
		}
	}
}

// The point that faces a direction lies on the outline, and the outline lies wholly behind it.
func TestFacing(t *testing.T) {
	o := Oval{300, 260, 200, 500}
	ring := o.Section()
	for j := range section.Directions {
		d := section.Direction(j)
		p := o.Facing(d)
		if r := o.Reach(p.Mul(1 / p.Norm())); math.Abs(r-p.Norm()) > 1e-9 {
			t.Fatalf("direction %d: %v lies %.9f from the axis, the outline %.9f", j, p, p.Norm(), r)
		}
		for k, r := range ring {
			if q := section.Direction(k).Mul(r); q.Dot(d) > p.Dot(d)+1e-9 {
				t.Fatalf("direction %d: %v lies beyond %v", j, q, p)
			}
		}
	}
	if got := o.Facing(plane.Point{Y: -1}); got.Dist(plane.Point{Y: -500}) > 1e-9 {
		t.Errorf("the back faces %v", got)
	}
}

func TestOvalOfASection(t *testing.T) {
	o := Oval{300, 260, 200, 500}
	s := o.Section()
	if Through(s) != o {
		t.Errorf("%v comes back as %v", o, Through(s))
	}
	if got := s.Tape(); math.Abs(got/o.Girth()-1) > 1e-4 {
		t.Errorf("tape %.2f, girth %.2f", got, o.Girth())
	}
	if got := o.Grown(2000).Girth(); math.Abs(got-2000) > 1e-9 {
		t.Errorf("grown to %.6f, want 2000", got)
	}
	if got := o.Scale(2).within(s); math.Abs(got.Back-500) > 1e-9 {
		t.Errorf("an outline twice as large fits at %v", got)
	}
}
