package fit

import "understructure/geometry/space"

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

// Stand adds parts up that all stand over the middle of the base; see Weighed for others. top is the height of the whole, in millimetres.
//
// The tilt is that of IEC 60335-1, clause 20.1, the push that of IEC 62368-1, edition 3;
// neither is written for dressed figures.
func Stand(parts []Part, top float64) Footing {
	loads := make([]Load, len(parts))
	for i, p := range parts {
		loads[i] = Load{Mass: p.Mass, At: space.Point{Z: p.Height}}
	}
	b := Weighed(loads, top)
	return Footing{Mass: b.Mass, Centre: b.At.Z, Tilt: b.tiltReach(), Push: b.pushReach()}
}
