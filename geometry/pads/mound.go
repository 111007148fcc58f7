package pads

import (
	"math"

	"understructure/geometry/plane"
)

// Mound is a round or oval pad that is highest in its middle: a part of a sphere, or of an ellipsoid that is one seen slantwise.
type Mound struct {
	Width, Height float64 // of its outline, mm
	Projection    float64 // how far it stands out in the middle, mm; at most half the lesser of the two
	Wadding       float64 // thickness of a sheet, mm
}

// Stack returns the rounds, the smallest first and the largest last, so that it covers them all (handbooks of mounting). Each is as large as
// the mound is at the round's upper face.
func (m Mound) Stack() (Pad, error) {
	half := math.Min(m.Width, m.Height) / 2
	for _, c := range []struct {
		what          string
		value, lo, hi float64
	}{
		{"width, mm,", m.Width, 20, 1000}, {"height, mm,", m.Height, 20, 1000},
		{"wadding, mm,", m.Wadding, 0.5, 60}, {"projection, mm,", m.Projection, 0, half},
	} {
		if err := check(c.what, c.value, c.lo, c.hi); err != nil {
			return Pad{}, err
		}
	}
	var p Pad
	for k := sheets(m.Projection, m.Wadding); k >= 1; k-- {
		if s := m.share(float64(k) * m.Wadding); s*2*half >= shortest {
			p.Sheets = append(p.Sheets, ellipse(s*m.Width/2, s*m.Height/2))
		}
	}
	p.Left = m.Projection - float64(len(p.Sheets))*m.Wadding
	return p, nil
}

// share is the size of the mound at a height over its foot, as a part of that of its foot. A sphere through a foot of radius 1 and a
// top at height p has radius (1 + p²)/2p.
func (m Mound) share(at float64) float64 {
	half := math.Min(m.Width, m.Height) / 2
	p, z := m.Projection/half, at/half
	r := (1 + p*p) / (2 * p)
	d := z - p + r // from the centre of the sphere
	return math.Sqrt(math.Max(0, r*r-d*d))
}

// Volume is that of the mound, mm³: the cap of a sphere, πp(3 + p²)/6 for a foot of radius 1, stretched.
func (m Mound) Volume() float64 {
	half := math.Min(m.Width, m.Height) / 2
	p := m.Projection / half
	return math.Pi * p * (3 + p*p) / 6 * half * m.Width / 2 * m.Height / 2
}

// ellipseSteps is how finely a round is drawn: chords that miss one of 100 mm by 0.05 mm.
const ellipseSteps = 96

func ellipse(a, b float64) plane.Ring {
	r := make(plane.Ring, ellipseSteps)
	for i := range r {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / ellipseSteps)
		r[i] = plane.Point{X: a * cos, Y: b * sin}
	}
	return r
}

// Fills are the little soft pads for a bodice that hangs limp: the outline of a sheet for under the front of each shoulder and of one for under each
// bust, in proportion to the bust girth, mm. A limp bodice wants a little more there: common practice, no published source, nor for the sizes.
func Fills(bust float64) (shoulder, under plane.Ring, err error) {
	if err := check("bust girth, mm,", bust, 300, 1800); err != nil {
		return nil, nil, err
	}
	return ellipse(0.035*bust, 0.055*bust), ellipse(0.065*bust, 0.045*bust), nil
}
