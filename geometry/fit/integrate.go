package fit

import (
	"slices"

	"gonum.org/v1/gonum/integrate/quad"
)

// farTail is beyond which a normal error hardly lies: one in 10¹⁵.
const farTail = 8.0

// bell are the places, in standard deviations, between which a bell curve is smooth enough for one rule each.
var bell = []float64{-3, -1, 1, 3}

// steep is how small the rest of an error is beside one that is integrated over, so that what it smooths counts as a step.
const steep = 0.6

// blur is how many of its standard deviations wide a step is on either side.
const blur = 3.0

// rule is that of Gauss and Legendre on -1…1.
var rule = func() (r struct{ at, weight [7]float64 }) {
	quad.Legendre{}.FixedLocations(r.at[:], r.weight[:], -1, 1)
	return r
}()

// integrate adds f up from lo to hi, piece by piece between the places given and the steps of f.
func integrate(lo, hi float64, places, steps []float64, f func(float64) float64) float64 {
	ends := append(append([]float64{lo, hi}, places...), steps...)
	slices.Sort(ends)
	sum := 0.0
	for i := 1; i < len(ends); i++ {
		a, b := max(ends[i-1], lo), min(ends[i], hi)
		if a >= b {
			continue
		}
		mid, half := (a+b)/2, (b-a)/2
		for k, x := range rule.at {
			sum += half * rule.weight[k] * f(mid+half*x)
		}
	}
	return sum
}
