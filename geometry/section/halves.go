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
	r := make(plane.Ring, 0, 4*quarterSteps)
	r = h.quarter(r, h.Right, h.Front, h.FrontFullness, 1, 1)
	r = h.quarter(r, h.Left, h.Front, h.FrontFullness, -1, 1)
	r = h.quarter(r, h.Left, h.Back, h.BackFullness, -1, -1)
	return h.quarter(r, h.Right, h.Back, h.BackFullness, 1, -1)
}

// quarter adds the points of one quarter, first point included and last left to the next.
func (h Halves) quarter(r plane.Ring, a, b, n, sx, sy float64) plane.Ring {
	for i := range quarterSteps {
		k := i
		if sx*sy < 0 {
			k = quarterSteps - i // these run from the middle out
		}
		r = append(r, plane.Point{
			X: sx * a * math.Exp(logSine[quarterSteps-k]*2/n),
			Y: h.Y + sy*b*math.Exp(logSine[k]*2/n),
		})
	}
	return r
}

// logSine[i] is the logarithm of the sine of i steps of a quarter turn, so that a power of
// a sine or cosine costs one exponential.
var logSine [quarterSteps + 1]float64

func init() {
	for i := range logSine {
		logSine[i] = math.Log(math.Sin(float64(i) / quarterSteps * math.Pi / 2))
	}
}
