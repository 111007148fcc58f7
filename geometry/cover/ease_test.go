package cover

import (
	"math"
	"testing"

	"understructure/geometry/section"
	"understructure/geometry/surface"
)

// A layer of 6 mm that ends half way up a cylinder of 150 mm: the cloth is on the layer above, on the cylinder below,
// and in between passes the edge half way, without overshooting either.
func TestClothBridgesAnEdge(t *testing.T) {
	s := surface.Surface{Z: surface.Rows(0, 200, 1)}
	for _, z := range s.Z {
		var r section.Section
		for j := range r {
			r[j] = 150
			if z > 100 {
				r[j] = 156
			}
		}
		s.R = append(s.R, r)
	}
	e := eased(s)
	at := func(z float64) float64 {
		r := e.At(z)
		return r[40]
	}
	near(t, "below", at(100-bridged-7), 150, 1e-9)
	near(t, "above", at(100+bridged+7), 156, 1e-9)
	near(t, "at the edge", at(100.5), 153, 0.1)
	last := 0.0
	for z := 80.0; z < 120; z++ {
		r := at(z)
		if r < 150-0.5 || r > 156+0.5 || r < last-0.5 {
			t.Errorf("%.2f mm at %g", r, z)
		}
		last = r
	}
}

// Cylinders and cones about the axis have nothing to bridge.
func TestEasedLeavesConesAlone(t *testing.T) {
	s := turned(300, func(z float64) float64 { return 80 + 0.4*z })
	e := eased(s)
	for i := range s.R {
		for j := range s.R[i] {
			if d := math.Abs(e.R[i][j] - s.R[i][j]); d > 1e-9 {
				t.Fatalf("row %d, column %d moved by %g", i, j, d)
			}
		}
	}
}
