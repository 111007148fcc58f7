package nest

import (
	"math"
	"math/rand/v2"
	"testing"

	"understructure/geometry/plane"
	"understructure/geometry/unit"
)

// Two squares of 10 and 4 mm overlap where the lower left corner of the small one lies in (-4, 10)²; the shortest way
// out is to the nearest side of that (derived).
func TestDepthOfSquares(t *testing.T) {
	f := newNofit([]plane.Ring{rectangle(plane.Point{}, plane.Point{X: 10, Y: 10})}, []plane.Ring{rectangle(plane.Point{}, plane.Point{X: 4, Y: 4})}, 0)
	for _, c := range []struct{ x, y, want float64 }{
		{-4, 3, 0}, {10, 3, 0}, {3, 10, 0}, {-5, 3, 0}, {11, 11, 0},
		{-3, 3, 1}, {9.5, 3, 0.5}, {0, -3.75, 0.25}, {9, 9.5, 0.5}, {3, 3, 7},
	} {
		if d := f.depth(plane.Point{X: c.x, Y: c.y}); math.Abs(d-c.want) > 1e-9 {
			t.Errorf("depth at (%g, %g) is %g, want %g", c.x, c.y, d, c.want)
		}
	}
}

// A gap pushes the sides out by itself, and corners by no more than 8 % beyond.
func TestDepthWithGap(t *testing.T) {
	const gap = 5
	f := newNofit([]plane.Ring{rectangle(plane.Point{}, plane.Point{X: 10, Y: 10})}, []plane.Ring{rectangle(plane.Point{}, plane.Point{X: 4, Y: 4})}, gap)
	for k := range 3600 {
		s, c := math.Sincos(float64(k) / 1800 * math.Pi)
		corner := plane.Point{X: 10, Y: 10}
		if d := f.depth(corner.Add(plane.Point{X: c, Y: s}.Mul(gap - 1e-6))); d == 0 && c > 0 && s > 0 {
			t.Fatalf("nearer than the gap at %d tenths of a degree", k)
		}
		if d := f.depth(corner.Add(plane.Point{X: c, Y: s}.Mul(1.083 * gap))); d > 0 && c > 0 && s > 0 {
			t.Fatalf("still barred at 1.083 gaps, %d tenths of a degree", k)
		}
	}
}

// Of shapes drawn by chance, turned and turned over, the no-fit polygon says that they overlap exactly where an
// independent library finds a common area.
func TestDepthAgreesWithOverlap(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 3))
	turns := []unit.Angle{0, 90 * unit.Degree, 180 * unit.Degree, 270 * unit.Degree, 30 * unit.Degree, -77 * unit.Degree}
	for range 12 {
		rings := []plane.Ring{star(rnd, 5+rnd.IntN(20), 30, 100), comb(1 + rnd.IntN(4)), star(rnd, 4+rnd.IntN(5), 5, 60)}
		s := &shapes{loose: len(rings), made: map[pairing]*nofit{}}
		for _, r := range rings {
			s.add(turns, true, r.Area(), convexParts(r))
		}
		s.nofits = make([]*nofit, len(s.poses)*len(s.poses))
		apart, over := 0, 0
		for range 400 {
			a, b := rnd.IntN(len(s.poses)), rnd.IntN(len(s.poses))
			at := plane.Point{X: 240 * (rnd.Float64() - 0.5), Y: 240 * (rnd.Float64() - 0.5)}
			place := func(k int, p plane.Point) plane.Ring {
				q := s.poses[k]
				return Placement{Turn: q.turn, Over: q.over, Move: p}.Ring(rings[q.kind])
			}
			common := overlap(t, place(a, plane.Point{}), place(b, at))
			d := depth(s.view(a, b), at)
			switch {
			case d == 0 && common > 1e-3:
				t.Fatalf("poses %d and %d at %v: depth 0, but %g mm² in common", a, b, at, common)
			case d > 1e-3 && common == 0:
				t.Fatalf("poses %d and %d at %v: depth %g, but nothing in common", a, b, at, d)
			case d == 0:
				apart++
			default:
				over++
			}
		}
		if apart < 40 || over < 40 {
			t.Errorf("%d apart and %d over: a test of one side only", apart, over)
		}
	}
}

// Two sticks of 1 × 10 mm that cross at right angles: what is found from one is found from the other.
func TestViewFromEitherSide(t *testing.T) {
	s := &shapes{loose: 2, made: map[pairing]*nofit{}}
	stick := []plane.Ring{rectangle(plane.Point{X: -5, Y: -0.5}, plane.Point{X: 5, Y: 0.5})}
	s.add([]unit.Angle{0, 90 * unit.Degree}, false, 10, stick)
	s.add([]unit.Angle{0, 90 * unit.Degree}, false, 10, stick)
	s.nofits = make([]*nofit, len(s.poses)*len(s.poses))
	for a := range s.poses {
		for b := range s.poses {
			for _, p := range []plane.Point{{X: 0.5, Y: 5}, {X: 5, Y: 0.25}, {X: 9, Y: 0}, {X: 0, Y: 9}, {X: 5.2, Y: 5.2}} {
				one, other := depth(s.view(a, b), p), depth(s.view(b, a), plane.Point{X: -p.X, Y: -p.Y})
				if math.Abs(one-other) > 1e-9 {
					t.Errorf("pose %d from %d at %v: %g, and %g the other way", b, a, p, one, other)
				}
			}
		}
	}
}

func depth(v view, p plane.Point) float64 { return v.depth(p) }
