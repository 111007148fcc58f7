package section

import (
	"math"

	"understructure/geometry/plane"
)

// Halves describes a slice as a front and a back half that meet at the side points, each
// with its own depth and fullness; the front may carry two lobes that the tape bridges.
// Each quarter is a superellipse |x/a|ⁿ + |y/b|ⁿ = 1 (G. Lamé, "Examen des différentes
// méthodes…", 1818): n = 2 is an ellipse, larger n is fuller towards a rectangle.
type Halves struct {
	Right, Left   float64 // distance of the side points from the middle, mm, > 0
	Front, Back   float64 // depth before and behind the side points, mm, > 0
	FrontFullness float64 // exponent n of the front, > 1
	BackFullness  float64 // exponent n of the back, > 1
	Lobe          float64 // half the distance between the lobes' tips, mm; 0 for none
	Valley        float64 // depth of the hollow between the lobes, mm; 0 for none
	Y             float64 // y of the side points, mm
}

// quarterSteps is how finely a quarter is drawn: its chords miss the curve of a 200 mm
// half-breadth by less than 0.002 mm where the curve is roundest.
const quarterSteps = 192

// Ring returns the outline, hollow included, counter-clockwise from the right side.
func (h Halves) Ring() plane.Ring {
	r := make(plane.Ring, 0, 4*quarterSteps+32)
	r = h.quarter(r, h.Right, h.Front, h.FrontFullness, h.Lobe, 1, 1)
	r = h.hollow(r)
	r = h.quarter(r, h.Left, h.Front, h.FrontFullness, h.Lobe, -1, 1)
	r = h.quarter(r, h.Left, h.Back, h.BackFullness, 0, -1, -1)
	return h.quarter(r, h.Right, h.Back, h.BackFullness, 0, 1, -1)
}

// quarter adds the points of one quarter, first point included and last left to the next.
func (h Halves) quarter(r plane.Ring, a, b, n, flat, sx, sy float64) plane.Ring {
	for i := range quarterSteps {
		t := float64(i) / quarterSteps
		if sx*sy < 0 {
			t = 1 - t // these run from the middle out
		}
		sin, cos := math.Sincos(t * math.Pi / 2)
		r = append(r, plane.Point{
			X: sx * (flat + (a-flat)*math.Pow(math.Abs(cos), 2/n)),
			Y: h.Y + sy*b*math.Pow(math.Abs(sin), 2/n),
		})
	}
	return r
}

// hollow adds the valley between two lobes, a raised cosine, from right tip to left tip.
func (h Halves) hollow(r plane.Ring) plane.Ring {
	if h.Lobe == 0 {
		return r
	}
	const steps = 32
	for i := 0; i < steps; i++ {
		u := 1 - 2*float64(i)/steps
		c := math.Cos(u * math.Pi / 2)
		r = append(r, plane.Point{X: u * h.Lobe, Y: h.Y + h.Front - h.Valley*c*c})
	}
	return r
}

// Arcs measures the taut tape: the whole girth, the part in front of the side points, and
// the part from centre front round the left side to centre back. Every quarter is convex
// and they meet without a corner, so the tape leaves the outline only between the lobes.
func (h Halves) Arcs() (girth, front, left float64) {
	rf := h.Lobe + quarterLength(h.Right-h.Lobe, h.Front, h.FrontFullness)
	lf, lb := rf, 0.0
	rb := quarterLength(h.Right, h.Back, h.BackFullness)
	if h.Left != h.Right {
		lf = h.Lobe + quarterLength(h.Left-h.Lobe, h.Front, h.FrontFullness)
		lb = quarterLength(h.Left, h.Back, h.BackFullness)
	} else {
		lb = rb
	}
	return rf + lf + rb + lb, rf + lf, lf + lb
}

// quarterLength is the length of a quarter of a superellipse, drawn as Ring draws it.
func quarterLength(a, b, n float64) float64 {
	l, x0, y0 := 0.0, a, 0.0
	for i := 1; i <= quarterSteps; i++ {
		x, y := a*math.Exp(logSine[quarterSteps-i]*2/n), b*math.Exp(logSine[i]*2/n)
		l += math.Hypot(x-x0, y-y0)
		x0, y0 = x, y
	}
	return l
}

// logSine[i] is the logarithm of the sine of i steps of a quarter turn, so that a power of
// a sine or cosine costs one exponential.
var logSine [quarterSteps + 1]float64

func init() {
	for i := range logSine {
		logSine[i] = math.Log(math.Sin(float64(i) / quarterSteps * math.Pi / 2))
	}
}
