package skirt

import (
	"math"
	"testing"

	"understructure/geometry/curve"
	"understructure/geometry/shapetest"
	"understructure/geometry/space"
)

// band returns the lower and upper row of a grid that is one cell high.
func band(pts []space.Point) (lower, upper []space.Point) {
	n := len(pts) / 2
	return pts[:n], pts[n:]
}

// The side of a cone lies flat as a ring sector of the angle 2πr/s per turn (shapetest.Cone).
func TestStripOfACone(t *testing.T) {
	const r, h, top, turn = 500.0, 1200.0, 0.7, math.Pi
	pts, _ := shapetest.Cone(r, h, top, turn, 200, 1)
	lower, upper := band(pts)
	s, err := LayStrip(lower, upper)
	if err != nil {
		t.Fatal(err)
	}
	if s.Strain > 1e-9 {
		t.Errorf("strain %.3g, want none", s.Strain)
	}
	slant := math.Hypot(r, h)
	ends := s.Upper[0].Sub(s.Lower[0])
	other := s.Upper[200].Sub(s.Lower[200])
	angle := math.Abs(math.Atan2(ends.Cross(other), ends.Dot(other)))
	if want := turn * r / slant; math.Abs(angle-want) > 1e-4 {
		t.Errorf("sector of %.6f, want %.6f", angle, want)
	}
}

// Two level hoops joined where they face the same way: exact, whatever their shapes.
func TestStripBetweenHoopsIsExact(t *testing.T) {
	p := Petticoat{{Oval: Oval{120, 115, 105, 100}}, {Height: -400, Oval: Oval{420, 400, 300, 620}, Steel: true}}
	for q := range 4 {
		s, err := p.Quarter(1, q)
		if err != nil {
			t.Fatal(err)
		}
		if s.Strain > 1e-6 {
			t.Errorf("quarter %d: strain %.3g", q, s.Strain)
		}
	}
	whole := 0.0
	for q := range 4 {
		s, _ := p.Quarter(1, q)
		whole += curve.Length(s.Lower)
	}
	if math.Abs(whole-p.Hem().Oval.Girth()) > 0.1 {
		t.Errorf("lower edges add up to %.3f, the hoop is %.3f", whole, p.Hem().Oval.Girth())
	}
}

// Two crossed lines bound a saddle (a hyperbolic paraboloid), which no cloth covers without strain.
func TestTwistedStripSaysSo(t *testing.T) {
	var lower, upper []space.Point
	for i := range 41 {
		x := float64(i)*10 - 200
		lower = append(lower, space.Point{X: x, Y: x * 0.5})
		upper = append(upper, space.Point{X: x, Y: -x * 0.5, Z: 300})
	}
	s, err := LayStrip(lower, upper)
	if err != nil || s.Strain < 0.01 {
		t.Errorf("strain %.4f %v, want more than 1 %%", s.Strain, err)
	}
}

func TestStripsThatAreNone(t *testing.T) {
	p := space.Point{X: 1}
	for name, c := range map[string][2][]space.Point{
		"one point":   {{p}, {p}},
		"unequal":     {{p, p, p}, {p, p}},
		"no distance": {{p, p, p}, {p, p, p}},
	} {
		if _, err := LayStrip(c[0], c[1]); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}
