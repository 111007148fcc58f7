package fit

import "math"

// Part is something that the stand carries: its mass in kilograms and the height of its
// centre above the floor in millimetres.
type Part struct{ Mass, Height float64 }

// Footing is the least radius of a round base, in millimetres, that keeps a mount upright.
type Footing struct {
	Mass   float64 // kg
	Centre float64 // height of the centre of gravity, mm
	Tilt   float64 // radius that withstands a floor tilted by 10°
	Push   float64 // radius that withstands a push of 13 % of the weight at up to 1.5 m
}

// Stand adds the parts up. top is the height of the whole, in millimetres.
//
// The tilt is that of IEC 60335-1, clause 20.1, the push that of IEC 62368-1, edition 3;
// neither is written for dressed figures.
func Stand(parts []Part, top float64) Footing {
	var f Footing
	for _, p := range parts {
		f.Mass += p.Mass
		f.Centre += p.Mass * p.Height
	}
	if f.Mass > 0 {
		f.Centre /= f.Mass
	}
	f.Tilt = math.Tan(10*math.Pi/180) * f.Centre
	f.Push = 0.13 * math.Min(top, 1500)
	return f
}
