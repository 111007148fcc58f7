// Package curve holds what the figure's lines need: a root finder, shape-preserving
// interpolation, and the length of a taut tape along a profile.
// It does not know closed sections or surfaces.
package curve

import (
	"errors"
	"math"
)

// ErrNoRoot is returned when the two ends given do not lie on either side of a root.
var ErrNoRoot = errors.New("curve: the ends do not enclose a root")

// Root returns x in [a, b] with f(x) = 0 to within tol, for f continuous and of opposite
// sign at a and b. A root at an end is found.
//
// R. P. Brent, "Algorithms for Minimization without Derivatives", 1973, chapter 4.
func Root(f func(float64) float64, a, b, tol float64) (float64, error) {
	fa, fb := f(a), f(b)
	if fa == 0 {
		return a, nil
	}
	if fb == 0 {
		return b, nil
	}
	if math.IsNaN(fa) || math.IsNaN(fb) || (fa > 0) == (fb > 0) {
		return 0, ErrNoRoot
	}
	c, fc := a, fa
	d := b - a
	e := d
	for range 200 {
		if (fb > 0) == (fc > 0) {
			c, fc = a, fa
			d = b - a
			e = d
		}
		if math.Abs(fc) < math.Abs(fb) {
			a, b, c = b, c, b
			fa, fb, fc = fb, fc, fb
		}
		eps := 2*2.2e-16*math.Abs(b) + tol/2
		m := (c - b) / 2
		if math.Abs(m) <= eps || fb == 0 {
			return b, nil
		}
		d, e = brentStep(a, b, c, fa, fb, fc, m, d, e, eps)
		a, fa = b, fb
		if math.Abs(d) > eps {
			b += d
		} else {
			b += math.Copysign(eps, m)
		}
		fb = f(b)
	}
	return b, nil
}

// brentStep interpolates where that converges and halves the interval where it does not.
func brentStep(a, b, c, fa, fb, fc, m, d, e, eps float64) (step, before float64) {
	if math.Abs(e) < eps || math.Abs(fa) <= math.Abs(fb) {
		return m, m
	}
	var p, q float64
	s := fb / fa
	if a == c {
		p, q = 2*m*s, 1-s
	} else {
		q0, r := fa/fc, fb/fc
		p = s * (2*m*q0*(q0-r) - (b-a)*(r-1))
		q = (q0 - 1) * (r - 1) * (s - 1)
	}
	if p > 0 {
		q = -q
	}
	p = math.Abs(p)
	if 2*p < math.Min(3*m*q-math.Abs(eps*q), math.Abs(e*q)) {
		return p / q, d
	}
	return m, m
}
