package curve

import "gonum.org/v1/gonum/interp"

// Monotone is a smooth curve through points that rises and falls only where they do: it
// has a continuous slope and invents no bulge. Outside its ends it goes on level.
//
// F. N. Fritsch and J. Butland, "A method for constructing local monotone piecewise cubic
// interpolants", SIAM J. Sci. Stat. Comput. 5, 1984.
type Monotone struct{ fb interp.FritschButland }

// Through returns the curve through (x, y); x must be strictly increasing, at least two points.
func Through(x, y []float64) Monotone {
	var m Monotone
	if err := m.fb.Fit(x, y); err != nil {
		panic("curve: x must be strictly increasing, at least two points")
	}
	return m
}

// At returns the value at x.
func (m Monotone) At(x float64) float64 { return m.fb.Predict(x) }
