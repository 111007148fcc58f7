package nest

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"understructure/geometry/plane"
)

// star is a ring of chance radii round the origin: simple, and hollow in many places.
func star(rnd *rand.Rand, corners int, least, most float64) plane.Ring {
	var r plane.Ring
	for i := range corners {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(corners))
		d := least + (most-least)*rnd.Float64()
		r = append(r, plane.Point{X: d * c, Y: d * s})
	}
	return r
}

// comb has slots, which are hollow from both sides.
func comb(teeth int) plane.Ring {
	r := plane.Ring{{X: 0, Y: 0}, {X: 20 * float64(teeth), Y: 0}}
	for k := teeth - 1; k >= 0; k-- {
		x := 20 * float64(k)
		r = append(r, plane.Point{X: x + 20, Y: 60}, plane.Point{X: x + 12, Y: 60}, plane.Point{X: x + 10, Y: 10}, plane.Point{X: x + 2, Y: 50})
	}
	return append(r, plane.Point{X: 0, Y: 50})
}

func solid(r plane.Ring) geom.Geometry {
	var xy []float64
	for k := range len(r) + 1 {
		xy = append(xy, r[k%len(r)].X, r[k%len(r)].Y)
	}
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(xy, geom.DimXY))}).AsGeometry()
}

func overlap(t testing.TB, a, b plane.Ring) float64 {
	t.Helper()
	g, err := geom.Intersection(solid(a), solid(b))
	if err != nil {
		t.Fatal(err)
	}
	return g.Area()
}

// The convex parts are convex, lie inside and come to the whole: they don't overlap.
func TestConvexParts(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 1))
	rings := []plane.Ring{comb(1), comb(5), rectangle(plane.Point{}, plane.Point{X: 10, Y: 10})}
	for range 60 {
		rings = append(rings, star(rnd, 5+rnd.IntN(40), 20, 100))
	}
	for n, r := range rings {
		area, inside := 0.0, 0.0
		parts := convexParts(r)
		for _, p := range parts {
			if len(p.Hull()) < 3 || math.Abs(p.Hull().Area()-p.Area()) > 1e-9*p.Area() {
				t.Errorf("ring %d: part %v is not convex", n, p)
			}
			area += p.Area()
			inside += overlap(t, p, r)
		}
		if want := r.Area(); math.Abs(area-want) > 1e-9*want || math.Abs(inside-want) > 1e-7*want {
			t.Errorf("ring %d: %d parts come to %g, of that inside %g, want %g", n, len(parts), area, inside, want)
		}
	}
	if n := len(convexParts(rings[2])); n != 1 {
		t.Errorf("a square makes %d parts", n)
	}
}

// A simplified outline leaves nothing of the outline outside, and nowhere lies farther than the slack from it.
func TestSimplified(t *testing.T) {
	rnd := rand.New(rand.NewPCG(2, 2))
	for n := range 60 {
		r := star(rnd, 60, 90, 100)
		if n%2 == 0 {
			r = star(rnd, 200, 99.9, 100)
		}
		out := simplified(r, MostSlack)
		if n%2 == 0 && len(out) > 100 {
			t.Errorf("ring %d keeps %d of %d corners", n, len(out), len(r))
		}
		lost, err := geom.Difference(solid(r), solid(out))
		if err != nil {
			t.Fatal(err)
		}
		if lost.Area() > 1e-6 {
			t.Errorf("ring %d: %g mm² lie outside the simplified outline", n, lost.Area())
		}
		for i, a := range out {
			for k := range 20 {
				if d := distance(r, a.Lerp(out[(i+1)%len(out)], float64(k)/20)); d > MostSlack+1e-2 {
					t.Fatalf("ring %d: the simplified outline lies %g mm away", n, d)
				}
			}
		}
	}
	r := comb(3)
	if out := simplified(r, 0); len(out) != len(r) {
		t.Errorf("without slack %d corners are left of %d", len(out), len(r))
	}
}
