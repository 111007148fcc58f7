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
	flat = math.Min(flat, 0.9*a)
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
// the part from centre front round the left side to centre back.
func (h Halves) Arcs() (girth, front, left float64) {
	ring := h.Ring()
	hull := ring.Hull()
	for i, p := range hull {
		q := hull[(i+1)%len(hull)]
		l := p.Dist(q)
		girth += l
		front += l * above(p.Y-h.Y, q.Y-h.Y)
		left += l * above(-p.X, -q.X)
	}
	return girth, front, left
}

// above is the fraction of a straight edge that lies where the coordinate is positive.
func above(a, b float64) float64 {
	const onLine = 1e-9 // mm; a side point computed as cos 90° is not quite on its line
	switch {
	case a >= -onLine && b >= -onLine:
		return 1
	case a <= onLine && b <= onLine:
		return 0
	case a > 0:
		return a / (a - b)
	}
	return b / (b - a)
}
