package trace_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/space"
	"understructure/geometry/surface"
	"understructure/geometry/trace"
	"understructure/geometry/unit"
	"understructure/geometry/view"
)

// turned is a body with elliptic slices a row every 10 mm, of these half axes across and from front to back.
func turned(half func(z float64) (a, b float64)) surface.Surface {
	var s surface.Surface
	for z := 0.0; z <= 500; z += 10 {
		a, b := half(z)
		ring := make(plane.Ring, section.Directions)
		for j := range ring {
			sin, cos := math.Sincos(2 * math.Pi * float64(j) / section.Directions)
			ring[j] = plane.Point{X: a * cos, Y: b * sin}
		}
		s.Z, s.R = append(s.Z, z), append(s.R, section.Of(ring))
	}
	return s
}

// silhouette traces the outline of a body as it is seen: up its left side and down its right, then back to where it
// began if it is to be closed.
func silhouette(s surface.Surface, yaw unit.Angle, closed bool) []plane.Point {
	left, right := view.From(yaw, 0).AppendContour(nil, nil, s, s.Normals())
	var line []plane.Point
	for _, p := range left {
		line = append(line, seen(p))
	}
	for i := range right {
		line = append(line, seen(right[len(right)-1-i]))
	}
	if closed {
		line = append(line, line[0])
	}
	return line
}

func seen(p space.Point) plane.Point { return plane.Point{X: p.X, Y: p.Z} }

// Breadth and depth of a cylinder, a cone, a ball and an elliptic torso are twice their half axes.
func TestExtentOfKnownShapes(t *testing.T) {
	for name, half := range map[string]func(z float64) (a, b float64){
		"cylinder": func(float64) (float64, float64) { return 150, 150 },
		"cone":     func(z float64) (float64, float64) { return 200 - z/4, 160 - z/5 },
		"ball":     func(z float64) (float64, float64) { r := math.Sqrt(300*300 - (z-250)*(z-250)); return r, r },
		"torso": func(z float64) (float64, float64) { // a waist of 230 by 180 mm between bust and hip
			w := math.Exp(-math.Pow((z-250)/90, 2))
			return 165 - 50*w, 130 - 40*w
		},
	} {
		body := turned(half)
		for _, yaw := range []unit.Angle{view.Front, view.LeftSide, view.Back} {
			for _, closed := range []bool{false, true} {
				line := silhouette(body, yaw, closed)
				for z := 5.0; z < 500; z += 7 {
					want, b := half(z)
					if yaw == view.LeftSide {
						want = b
					}
					l, r, ok := trace.Extent(line, z)
					if !ok || math.Abs(r-l-2*want) > 0.5 || math.Abs(r+l) > 0.5 {
						t.Errorf("%s, yaw %.2f, closed %v, at %v: from %.2f to %.2f, want ±%.2f", name, yaw, closed, z, l, r, want)
					}
				}
			}
		}
	}
}

// A flank that slants is read exactly, at its ends too: as much is averaged above as below.
func TestASlantingFlankIsExact(t *testing.T) {
	line := []plane.Point{{X: -100, Y: 0}, {X: -20, Y: 200}, {X: 30, Y: 200}, {X: 90, Y: 0}}
	for _, z := range []float64{1, 3, 50, 198, 199.5} {
		l, r, ok := trace.Extent(line, z)
		if wantL, wantR := -100+z*0.4, 90-z*0.3; !ok || math.Abs(l-wantL) > 1e-9 || math.Abs(r-wantR) > 1e-9 {
			t.Errorf("at %v: %v to %v, want %v to %v", z, l, r, wantL, wantR)
		}
	}
}

// Both sides may be traced upwards: the way from the end of one to the beginning of the other lies between them.
func TestTheWayFromSideToSideDoesNoHarm(t *testing.T) {
	line := []plane.Point{{X: -120, Y: 0}, {X: -90, Y: 300}, {X: 120, Y: 0}, {X: 90, Y: 300}}
	for z := 10.0; z < 300; z += 10 {
		if l, r, ok := trace.Extent(line, z); !ok || math.Abs(l+120-z/10) > 1e-9 || math.Abs(r-120+z/10) > 1e-9 {
			t.Errorf("at %v: %v to %v", z, l, r)
		}
	}
}

func TestASilhouetteThatIsNotThere(t *testing.T) {
	line := silhouette(turned(func(float64) (float64, float64) { return 100, 100 }), view.Front, true)
	for _, z := range []float64{-1, 501} {
		if _, _, ok := trace.Extent(line, z); ok {
			t.Errorf("there is an extent at %v", z)
		}
	}
	for name, line := range map[string][]plane.Point{
		"none": nil, "a point": {{X: 1, Y: 0}}, "one side": {{X: -90, Y: -50}, {X: -80, Y: 50}},
		"level": {{X: -90, Y: 0}, {X: 80, Y: 0}},
		// The right side begins higher than the left; below that there is but one side.
		"a side too short": {{X: -90, Y: -50}, {X: -90, Y: 90}, {X: 90, Y: 90}, {X: 90, Y: 10}},
	} {
		if l, r, ok := trace.Extent(line, 0); ok {
			t.Errorf("%s: reaches from %v to %v", name, l, r)
		}
	}
}

// A hand that trembles by a millimetre to either side moves the extent by less than three quarters of that.
func TestATremblingHandIsSmoothed(t *testing.T) {
	r := rand.New(rand.NewPCG(1890, 3))
	worst := 0.0
	for range 200 {
		var line []plane.Point
		for z := 0.0; z <= 400; z += 2 {
			line = append(line, plane.Point{X: -150 + 2*r.Float64() - 1, Y: z})
		}
		for z := 400.0; z >= 0; z -= 2 {
			line = append(line, plane.Point{X: 150 + 2*r.Float64() - 1, Y: z})
		}
		left, right, ok := trace.Extent(line, 200)
		if !ok {
			t.Fatal("there is no extent")
		}
		worst = max(worst, math.Abs(right-150), math.Abs(left+150))
	}
	if worst > 0.75 || worst == 0 {
		t.Errorf("off by %.2f mm", worst)
	}
}
