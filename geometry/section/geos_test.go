package section_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"understructure/geometry/plane"
	"understructure/geometry/section"
)

// verdict is one line of testdata/geos/values.csv: what GEOS 3.11.1 says of an outline.
type verdict struct {
	shape, what            string
	distance, area, length float64
}

func geos(t *testing.T) (map[string]plane.Ring, []verdict) {
	t.Helper()
	rings := map[string]plane.Ring{}
	for _, row := range lines(t, "outlines") {
		rings[row[0]] = append(rings[row[0]], plane.Point{X: number(t, row[1]), Y: number(t, row[2])})
	}
	var said []verdict
	for _, row := range lines(t, "values") {
		said = append(said, verdict{row[0], row[1], number(t, row[2]), number(t, row[3]), number(t, row[4])})
	}
	if len(rings) != 12 || len(said) != 12*9 {
		t.Fatalf("%d outlines and %d values", len(rings), len(said))
	}
	return rings, said
}

func lines(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open("../../testdata/geos/" + name + ".csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return all[1:]
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// chords is how much length and area a convex outline loses by its chords: an arc that turns
// by δ is longer than its chord c by cδ²/24 and holds c²δ/12 more. Three times as much is
// allowed for, because the turn is not spread evenly along an arc.
func chords(r plane.Ring) (area, length float64) {
	n := len(r)
	for i, p := range r {
		u, v := r[(i+1)%n].Sub(p), r[(i+2)%n].Sub(r[(i+1)%n])
		δ, c := math.Atan2(u.Cross(v), u.Dot(v)), u.Norm()
		area += c * c * math.Abs(δ) / 4
		length += c * δ * δ / 8
	}
	return area, length
}

// The program's outlines, hulls and parallels have GEOS's areas and lengths.
//
// Outlines and hulls are exact on both sides, and so are pointed parallels; the files hold
// coordinates to six decimals, areas to four. A slice's own parallel is known in 256
// directions, so it may lose what chords lose, and must gain nothing.
func TestGEOSAgrees(t *testing.T) {
	rings, said := geos(t)
	for _, v := range said {
		r := rings[v.shape]
		s := section.Of(r)
		var area, length, mm2, mm float64
		switch v.what {
		case "outline":
			area, length, mm2, mm = r.Area(), r.Perimeter(), 0.001, 0.0001
		case "hull":
			area, length, mm2, mm = r.Hull().Area(), r.Tape(), 0.001, 0.0001
			if d := math.Abs(s.Tape() - v.length); d > 0.001 {
				t.Errorf("%s: a slice's tape is off by %.5f mm", v.shape, d)
			}
		case "parallel of the hull":
			p := s.Parallel(v.distance)
			area, length = p.Area(), p.Tape()
			mm2, mm = chords(p.Ring())
			if area > v.area+0.01 || length > v.length+0.001 {
				t.Errorf("%s, parallel at %g mm: area %.4f and length %.5f are more than GEOS's %.4f and %.5f", v.shape, v.distance, area, length, v.area, v.length)
			}
		case "pointed parallel":
			p := r.Offset(v.distance)
			area, length, mm2, mm = p.Area(), p.Perimeter(), 0.01, 0.0001
		default:
			t.Fatalf("nobody compares %q", v.what)
		}
		if math.Abs(area-v.area) > mm2 || math.Abs(length-v.length) > mm {
			t.Errorf("%s, %s at %g mm: area %.4f, length %.5f; GEOS says %.4f and %.5f", v.shape, v.what, v.distance, area, length, v.area, v.length)
		}
	}
}

// A slice and the outline that it was drawn from are one where the outline has a corner in
// every direction.
func TestSlicesKeepTheirCorners(t *testing.T) {
	rings, _ := geos(t)
	for name, r := range rings {
		s := section.Of(r)
		for j, p := range s.Ring() {
			if d := p.Dist(r[j]); d > 1e-5 {
				t.Errorf("%s: direction %d is off by %.6f mm", name, j, d)
			}
		}
	}
}
