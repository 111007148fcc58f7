package rest

import (
	"math"
	"testing"
)

// Cloth 1 mm thick on a pad of 49 mm: its middle has a radius of 25 mm, its outer face one of 25.5, 2 % more (derived).
func TestBend(t *testing.T) {
	if got := Bend(1, 49); math.Abs(got-0.02) > 1e-12 {
		t.Errorf("stretched by %g, want 0.02", got)
	}
	if pad, err := PadFor(1, 0.02); err != nil || math.Abs(pad-49) > 1e-9 {
		t.Errorf("pad of %g mm, %v; want 49", pad, err)
	}
	for _, bad := range [][2]float64{{0, 0.02}, {1, 0}, {1, 1}, {math.NaN(), 0.1}} {
		if _, err := PadFor(bad[0], bad[1]); err == nil {
			t.Errorf("%v is not refused", bad)
		}
	}
}

// The section of wound cloth is as large as the cloth is long and thick: L·t = π(R²−r²), R and r being the tube with and
// without what is on it (derived). The spiral of the middle of the cloth agrees but for its slant.
func TestTurnsAgreeWithTheAreaOfTheSection(t *testing.T) {
	for _, r := range []Roll{{80, 8, 1200}, {150, 6, 3000}, {76, 1, 500}} {
		turns, err := r.Turns()
		if err != nil {
			t.Fatal(err)
		}
		inner := r.Tube / 2
		outer := math.Sqrt(inner*inner + r.Length*r.Thickness/math.Pi)
		if want := (outer - inner) / r.Thickness; math.Abs(turns-want) > 0.005*want+0.005 {
			t.Errorf("%+v: %g turns, by the area %g", r, turns, want)
		}
	}
}

// The closed form against the spiral drawn in short straight steps.
func TestSpiralIsAsLongAsItIsDrawn(t *testing.T) {
	start, grow, angle := 44.0, 8/(2*math.Pi), 17.3
	const steps = 200000
	sum, lastX, lastY := 0.0, start, 0.0
	for i := 1; i <= steps; i++ {
		a := angle * float64(i) / steps
		sin, cos := math.Sincos(a)
		x, y := (start+grow*a)*cos, (start+grow*a)*sin
		sum += math.Hypot(x-lastX, y-lastY)
		lastX, lastY = x, y
	}
	if got := spiral(start, grow, angle); math.Abs(got-sum) > 1e-4 {
		t.Errorf("%.6f mm, drawn %.6f", got, sum)
	}
}

// One round of very thin cloth is a circle: 100 mm across, 314.159 mm long.
func TestThinClothGoesRoundInCircles(t *testing.T) {
	turns, err := Roll{Tube: 100, Thickness: 1e-4, Length: 3 * math.Pi * 100}.Turns()
	if err != nil || math.Abs(turns-3) > 1e-4 {
		t.Errorf("%g turns, %v; want 3", turns, err)
	}
	if d := (Roll{Tube: 100, Thickness: 5}).Diameter(2.2); d != 130 {
		t.Errorf("diameter %g, want 130: three thicknesses on either side", d)
	}
	if _, err := (Roll{Tube: 0, Thickness: 1, Length: 1}).Turns(); err == nil {
		t.Error("no tube is not refused")
	}
}
