package trace_test

import (
	"math"
	"testing"

	"understructure/geometry/plane"
	"understructure/geometry/trace"
)

// outline is the silhouette of a turned shape, traced up one side and down the other in steps of so many mm.
func outline(radius func(z float64) float64, from, to, step float64) []plane.Point {
	var up, down []plane.Point
	for z := from; z <= to; z += step {
		up = append(up, plane.Point{X: radius(z), Y: z})
		down = append([]plane.Point{{X: -radius(z), Y: z}}, down...)
	}
	return append(up, down...)
}

// The silhouette of a cylinder, a cone and a sphere is known at every height.
func TestExtentOfKnownShapes(t *testing.T) {
	for name, radius := range map[string]func(z float64) float64{
		"cylinder": func(float64) float64 { return 150 },
		"cone":     func(z float64) float64 { return 200 - z/4 },
		"sphere":   func(z float64) float64 { return math.Sqrt(300*300 - (z-250)*(z-250)) },
	} {
		line := outline(radius, 0, 500, 5)
		for z := 40.0; z <= 460; z += 20 {
			l, r, ok := trace.Extent(line, z)
			if !ok || math.Abs(r-radius(z)) > 0.5 || math.Abs(l+radius(z)) > 0.5 {
				t.Errorf("%s at %v: from %.2f to %.2f, want ±%.2f", name, z, l, r, radius(z))
			}
		}
	}
}

func TestASilhouetteThatIsNotThere(t *testing.T) {
	line := outline(func(float64) float64 { return 100 }, 100, 200, 10)
	for _, z := range []float64{50, 250} {
		if _, _, ok := trace.Extent(line, z); ok {
			t.Errorf("there is an extent at %v", z)
		}
	}
	if _, _, ok := trace.Extent(nil, 0); ok {
		t.Error("no line has an extent")
	}
}

// A hand trembles: a millimetre to either side moves the extent by much less.
func TestATremblingHandIsSmoothed(t *testing.T) {
	line := outline(func(z float64) float64 { return 150 + math.Cos(z*math.Pi/2) }, 0, 400, 2)
	if _, r, ok := trace.Extent(line, 200); !ok || math.Abs(r-150) > 0.4 {
		t.Errorf("%.2f, want 150", r)
	}
}
