package surface

import (
	"math"
	"testing"

	"understructure/geometry/section"
)

// turned is a skin of revolution: radius r(z), from 0 to height.
func turned(r func(z float64) float64, height float64) Surface {
	s := Surface{Z: Rows(0, height, 2)}
	for _, z := range s.Z {
		var at section.Section
		for j := range at {
			at[j] = r(z)
		}
		s.R = append(s.R, at)
	}
	return s
}

// roundness is what a polygon of 256 corners has of a circle's area.
var roundness = section.Directions / (2 * math.Pi) * math.Sin(2*math.Pi/section.Directions)

func TestCylinderConeSphere(t *testing.T) {
	for _, c := range []struct {
		name         string
		r            func(float64) float64
		height       float64
		volume, area float64
	}{
		{"cylinder", func(float64) float64 { return 100 }, 300, math.Pi * 1e4 * 300, 2 * math.Pi * 100 * 300},
		{"cone", func(z float64) float64 { return 150 - z/2 }, 200, math.Pi * 200 / 3 * (150*150 + 150*50 + 50*50), math.Pi * 200 * math.Hypot(200, 100)},
		{"sphere", func(z float64) float64 { return math.Sqrt(150*150 - (z-100)*(z-100)) }, 200, math.Pi * 200 * (150*150 - 1e4/3), 2 * math.Pi * 150 * 200},
	} {
		s := turned(c.r, c.height)
		if got := s.Volume(0, c.height) / roundness; math.Abs(got/c.volume-1) > 1e-4 {
			t.Errorf("%s: volume %.0f, want %.0f", c.name, got, c.volume)
		}
		if got := s.Area(0, c.height); math.Abs(got/c.area-1) > 3e-4 {
			t.Errorf("%s: area %.0f, want %.0f", c.name, got, c.area)
		}
	}
}

// The normal of a cone leans up by the complement of its slope, everywhere.
func TestNormalsOfACone(t *testing.T) {
	s := turned(func(z float64) float64 { return 150 - z/2 }, 200)
	n := s.Normals()
	want := 1 / math.Sqrt(5) // a wall that falls in by 1 for 2 of height
	for i := range n {
		for j := range section.Directions {
			if math.Abs(n[i][j].Z-want) > 1e-9 || math.Abs(n[i][j].Norm()-1) > 1e-12 {
				t.Fatalf("row %d column %d: %v", i, j, n[i][j])
			}
		}
	}
}

// A sphere moved out along its normals is a larger sphere, and cut level gives its circles.
func TestDisplacedSphere(t *testing.T) {
	s := turned(func(z float64) float64 { return math.Sqrt(150*150 - (z-100)*(z-100)) }, 200)
	grown := s.Displaced(s.Normals(), func(int, int) float64 { return 12 }).Surface([]float64{60, 100, 140}, false)
	for i, z := range grown.Z {
		want := math.Sqrt(162*162 - (z-100)*(z-100))
		for j, got := range grown.R[i] {
			if math.Abs(got-want) > 0.02 {
				t.Fatalf("at %v direction %d: %.4f, want %.4f", z, j, got, want)
			}
		}
	}
}

// Between slices the skin stays between them.
func TestThroughInventsNothing(t *testing.T) {
	var a, b, c section.Section
	for j := range a {
		a[j], b[j], c[j] = 120, 90+float64(j%3), 140
	}
	s := Through([]float64{0, 150, 300}, []section.Section{a, b, c}, Rows(0, 300, 5, 150))
	for i, z := range s.Z {
		for j, r := range s.R[i] {
			lo, hi := b[j], math.Max(a[j], c[j])
			if z <= 150 {
				hi = a[j]
			}
			if r < lo-1e-9 || r > hi+1e-9 {
				t.Fatalf("at %v direction %d: %v leaves %v to %v", z, j, r, lo, hi)
			}
		}
	}
}

func TestRowsHoldWhatIsFixed(t *testing.T) {
	rows := Rows(-20, 100, 8, 0, 33.3, 500)
	has := map[float64]bool{}
	for i, z := range rows {
		has[z] = true
		if i > 0 && (z <= rows[i-1] || z-rows[i-1] > 8+1e-9) {
			t.Errorf("from %v to %v", rows[i-1], z)
		}
	}
	if !has[0] || !has[33.3] || has[500] || rows[0] != -20 || rows[len(rows)-1] != 100 {
		t.Errorf("%v", rows)
	}
}
