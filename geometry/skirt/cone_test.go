package skirt

import (
	"fmt"
	"math"
	"testing"

	"understructure/geometry/curve"
	"understructure/geometry/plane"
)

// A waist of 70 cm on a full circle is cut to a radius of 111.4 mm.
func ExampleWaistRadius() {
	fmt.Printf("%.1f mm\n", WaistRadius(700, 1))
	fmt.Printf("%.1f mm\n", WaistRadius(700, 0.5))
	// Output:
	// 111.4 mm
	// 222.8 mm
}

// The side of a cone of radius r and slant s lies flat as a sector of 2πr/s; a frustum's area
// is π·s·(R+r) (Bronshtein and Semendyayev, Handbook of Mathematics).
func TestFrustumAgainstTheHandbook(t *testing.T) {
	for _, c := range []struct{ r, R, s float64 }{{0, 582.5, 1025}, {113, 582.5, 1025}, {113, 113, 900}, {150, 120, 1000}, {111.4, 1000, 888.6}} {
		f := Frustum{Top: 2 * math.Pi * c.r, Bottom: 2 * math.Pi * c.R, Slant: c.s}
		if want := 2 * math.Pi * (c.R - c.r) / c.s; math.Abs(f.Angle()-want) > 1e-12 {
			t.Errorf("%v: angle %.9f, want %.9f", c, f.Angle(), want)
		}
		if want := math.Pi * c.s * (c.R + c.r); math.Abs(f.Area()/want-1) > 1e-12 {
			t.Errorf("%v: area %.1f, want %.1f", c, f.Area(), want)
		}
		if want := math.Sqrt(c.s*c.s - (c.R-c.r)*(c.R-c.r)); math.Abs(f.Height()-want) > 1e-6 {
			t.Errorf("%v: height %.6f, want %.6f", c, f.Height(), want)
		}
	}
}

func TestPanels(t *testing.T) {
	for _, f := range []Frustum{{700, 3660, 1025}, {700, 700, 900}, {950, 800, 1000}, {0.001, 3000, 1000}, {700, 2 * math.Pi * 1000, 888.6}} {
		for _, n := range []int{1, 2, 4, 7} {
			if n == 1 && f.Angle() > 6 {
				continue // a whole circle meets itself along its seam
			}
			ring, at := f.Panel(n)
			edge := func(a, b int) []plane.Point { return ring[a : b+1] }
			lower, upper := curve.Length(edge(at[0], at[1])), curve.Length(edge(at[2], at[3]))
			for _, l := range []struct{ got, want float64 }{
				{lower, f.Bottom / float64(n)}, {upper, f.Top / float64(n)}, {ring[at[1]].Dist(ring[at[2]]), f.Slant}, {ring[at[3]].Dist(ring[at[0]]), f.Slant},
				{ring.Area(), f.Area() / float64(n)},
			} {
				if math.Abs(l.got-l.want) > 2e-4*l.want+0.01 {
					t.Errorf("%v in %d: %.4f, want %.4f", f, n, l.got, l.want)
				}
			}
			if p, met := ring.Crossing(); met {
				t.Errorf("%v in %d crosses itself at %v", f, n, p)
			}
			if off := offCurve(ring, at); off > chord {
				t.Errorf("%v in %d lies %.4f mm off its curve", f, n, off)
			}
		}
	}
}

// offCurve is how far the middles of the sides of an edge lie within the circle of its corners.
func offCurve(ring plane.Ring, at [4]int) float64 {
	most := 0.0
	for _, e := range [][2]int{{at[0], at[1]}, {at[2], at[3]}} {
		for i := e[0]; i+2 <= e[1]; i++ {
			a, b, c := ring[i], ring[i+1], ring[i+2]
			area := math.Abs(b.Sub(a).Cross(c.Sub(a))) / 2
			if area < 1e-9 {
				continue
			}
			radius := a.Dist(b) * b.Dist(c) * c.Dist(a) / (4 * area)
			half := a.Dist(b) / 2
			most = math.Max(most, radius-math.Sqrt(radius*radius-half*half))
		}
	}
	return most
}
