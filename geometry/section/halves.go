package section

import (
	"math"

	"understructure/geometry/plane"
)

// Halves describes a slice as a front and a back half that meet at the side points, each
// with its own depth and fullness. Each quarter is a superellipse |x/a|ⁿ + |y/b|ⁿ = 1
// (G. Lamé, "Examen des différentes méthodes employées pour résoudre les problèmes de
// géométrie", 1818): n = 2 is an ellipse, larger n is fuller towards a rectangle.
type Halves struct {
	Right, Left   float64 // distance of the side points from the middle, mm, > 0
	Front, Back   float64 // depth before and behind the side points, mm, > 0
	FrontFullness float64 // exponent n of the front, > 1
	BackFullness  float64 // exponent n of the back, > 1
	Y             float64 // y of the side points, mm
}

// quarterSteps is how finely a quarter is drawn: its chords miss the curve of a 200 mm
// half breadth by less than 0.002 mm where the curve is roundest.
const quarterSteps = 192

// Ring returns the outline, counter-clockwise from the right side.
func (h Halves) Ring() plane.Ring {
	r := make(plane.Ring, 4*quarterSteps)
	for i := range r {
		r[i] = h.point(i)
	}
	return r
}

// point is the corner i of the ring.
func (h Halves) point(i int) plane.Point {
	q, k := i/quarterSteps, i%quarterSteps
	if q%2 == 1 {
		k = quarterSteps - k // these run from the middle out
	}
	x, y, n := h.Right, h.Front, h.FrontFullness
	if q == 1 || q == 2 {
		x = -h.Left
	}
	if q >= 2 {
		y, n = -h.Back, h.BackFullness
	}
	return plane.Point{
		X: x * math.Exp(logSine[quarterSteps-k]*2/n),
		Y: h.Y + y*math.Exp(logSine[k]*2/n),
	}
}

// Toward returns how far the outline lies from the axis in one direction: what Of makes of
// the ring there, without the others.
func (h Halves) Toward(j int) float64 {
	if h.Y >= h.Back || h.Y <= -h.Front { // the axis lies outside, and the corners do not go round it
		return Of(h.Ring())[j]
	}
	const corners = 4 * quarterSteps
	lo, hi := -quarterSteps, quarterSteps // on the right, from the back round to the front
	if j > Front && j < Back {
		lo, hi = quarterSteps, 3*quarterSteps
	}
	at := func(i int) plane.Point { return h.point((i + corners) % corners) }
	u := Direction(j)
	for lo+1 < hi {
		if mid := (lo + hi) / 2; u.Cross(at(mid)) <= 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	var s Section
	p := at(lo - 1)
	for i := lo; i <= lo+2; i++ {
		q := at(i)
		s.reach(p, q, turn(p), turn(q))
		p = q
	}
	return s[j]
}

// logSine[i] is the logarithm of the sine of i steps of a quarter turn, so that a power of
// a sine or cosine costs one exponential.
var logSine [quarterSteps + 1]float64

func init() {
	for i := range logSine {
		logSine[i] = math.Log(math.Sin(float64(i) / quarterSteps * math.Pi / 2))
	}
}
