package drawing

import (
	"math"
	"math/rand/v2"
	"testing"

	"understructure/geometry/plane"
)

func length(runs [][]plane.Point) float64 {
	l := 0.0
	for _, r := range runs {
		for i := 1; i < len(r); i++ {
			l += r[i].Dist(r[i-1])
		}
	}
	return l
}

// Cutting a line by boxes that fill the plane loses nothing and doubles nothing.
func TestCutKeepsTheLength(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		ring := make(plane.Ring, 3+rnd.IntN(40))
		for i := range ring {
			ring[i] = plane.Point{X: rnd.Float64()*90 + 5, Y: rnd.Float64()*90 + 5}
		}
		sum := 0.0
		for x := 0.0; x < 100; x += 25 {
			for y := 0.0; y < 100; y += 20 {
				b := Box{plane.Point{X: x, Y: y}, plane.Point{X: x + 25, Y: y + 20}}
				runs := b.Cut(ring, true)
				for _, r := range runs {
					for _, p := range r {
						if !b.Grow(1e-9).Contains(p) {
							t.Fatalf("point %v outside box %v", p, b)
						}
					}
				}
				sum += length(runs)
			}
		}
		if want := ring.Perimeter(); math.Abs(sum-want) > 1e-6 {
			t.Fatalf("boxes hold %g of a line of %g", sum, want)
		}
	}
}

func TestCutOfAWholeLineIsOneRun(t *testing.T) {
	square := []plane.Point{{X: 1, Y: 1}, {X: 9, Y: 1}, {X: 9, Y: 9}, {X: 1, Y: 9}}
	runs := Box{plane.Point{}, plane.Point{X: 10, Y: 10}}.Cut(square, true)
	if len(runs) != 1 || len(runs[0]) != 5 || runs[0][4] != square[0] {
		t.Errorf("runs = %v, want the square once, closed", runs)
	}
}
