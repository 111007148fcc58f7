package curve

import "gonum.org/v1/gonum/interp"

// Monotone is a smooth curve through points that rises and falls only where they do: it
// has a continuous slope and invents no bulge. Outside its ends it goes on level.
//
// F. N. Fritsch and J. Butland, "A method for constructing local monotone piecewise cubic
// interpolants", SIAM J. Sci. Stat. Comput. 5, 1984.
type Monotone struct {
	fb          interp.FritschButland
	x, y, slope []float64
}

// Through returns the curve through (x, y); x must be strictly increasing, at least two points.
func Through(x, y []float64) Monotone {
	var m Monotone
	if err := m.fb.Fit(x, y); err != nil {
		panic("curve: x must be strictly increasing, at least two points")
	}
	m.x, m.y, m.slope = x, append([]float64(nil), y...), make([]float64, len(x))
	for k := range x {
		m.slope[k] = m.fb.PredictDerivative(x[k])
	}
	return m
}

// At returns the value at x.
func (m Monotone) At(x float64) float64 { return m.fb.Predict(x) }

// Along returns the values at rising places. It walks from knot to knot once, where At
// looks for the knot each time.
func (m Monotone) Along(at []float64, put func(i int, y float64)) {
	k, n := 0, len(m.x)
	for i, x := range at {
		for k < n-2 && m.x[k+1] <= x {
			k++
		}
		switch {
		case x <= m.x[0]:
			put(i, m.y[0])
		case x >= m.x[n-1]:
			put(i, m.y[n-1])
		default:
			put(i, m.hermite(k, x))
		}
	}
}

// hermite is the cubic between knots k and k+1 with the slopes of the curve there.
func (m Monotone) hermite(k int, x float64) float64 {
	h := m.x[k+1] - m.x[k]
	t := (x - m.x[k]) / h
	a, b := m.y[k], m.y[k+1]
	p, q := m.slope[k]*h, m.slope[k+1]*h
	return a + t*(p+t*(3*(b-a)-2*p-q+t*(2*(a-b)+p+q)))
}
