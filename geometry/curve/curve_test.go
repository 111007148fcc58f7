package curve

import (
	"errors"
	"math"
	"testing"

	"understructure/geometry/plane"
)

func TestRoot(t *testing.T) {
	for _, c := range []struct {
		name string
		f    func(float64) float64
		a, b float64
		want float64
	}{
		{"a line", func(x float64) float64 { return 2*x - 3 }, 0, 10, 1.5},
		{"the other way round", func(x float64) float64 { return 3 - 2*x }, 10, 0, 1.5},
		{"cosine", math.Cos, 0, 3, math.Pi / 2},
		{"flat at the root", func(x float64) float64 { return math.Pow(x-1, 9) }, 0, 3, 1},
		{"at an end", func(x float64) float64 { return x }, 0, 1, 0},
		{"a jump", func(x float64) float64 { return math.Copysign(1, x-0.25) }, 0, 1, 0.25},
	} {
		got, err := Root(c.f, c.a, c.b, 1e-10)
		if err != nil || math.Abs(got-c.want) > 1e-4 {
			t.Errorf("%s: %v %v, want %v", c.name, got, err, c.want)
		}
	}
	for _, f := range []func(float64) float64{func(float64) float64 { return 1 }, func(float64) float64 { return math.NaN() }} {
		if _, err := Root(f, 0, 1, 1e-9); !errors.Is(err, ErrNoRoot) {
			t.Errorf("no root: %v", err)
		}
	}
}

// A monotone curve passes its points and never leaves the span of two neighbours.
func TestMonotoneInventsNothing(t *testing.T) {
	x := []float64{0, 10, 15, 40, 42}
	y := []float64{380, 960, 950, 950, 400}
	c := Through(x, y)
	for i := range x {
		if got := c.At(x[i]); math.Abs(got-y[i]) > 1e-9 {
			t.Errorf("at %v: %v, want %v", x[i], got, y[i])
		}
	}
	for i := 1; i < len(x); i++ {
		lo, hi := math.Min(y[i-1], y[i]), math.Max(y[i-1], y[i])
		for k := range 101 {
			at := x[i-1] + (x[i]-x[i-1])*float64(k)/100
			if got := c.At(at); got < lo-1e-9 || got > hi+1e-9 {
				t.Errorf("at %v: %v leaves %v to %v", at, got, lo, hi)
			}
		}
	}
	places := []float64{-5, 0, 3, 10, 12.5, 15, 39, 40, 41, 42, 99}
	c.Along(places, func(i int, got float64) {
		if want := c.At(places[i]); math.Abs(got-want) > 1e-9 {
			t.Errorf("walking to %v gives %v, looking there %v", places[i], got, want)
		}
	})
	if c.At(-5) != 380 || c.At(99) != 400 {
		t.Error("beyond its ends the curve is not level")
	}
}

// A tape over a bump follows it; over a hollow it goes straight.
func TestTaut(t *testing.T) {
	var bump, hollow []plane.Point
	for k := range 181 {
		θ := math.Pi * float64(k) / 180
		bump = append(bump, plane.Point{X: -math.Cos(θ), Y: math.Sin(θ)})
		hollow = append(hollow, plane.Point{X: -math.Cos(θ), Y: -math.Sin(θ)})
	}
	if got := TautLength(bump); math.Abs(got-math.Pi) > 1e-3 {
		t.Errorf("over a half circle: %v", got)
	}
	if got := TautLength(hollow); math.Abs(got-2) > 1e-9 {
		t.Errorf("over a hollow: %v", got)
	}
}
