package skirt

import (
	"fmt"
	"math"

	"understructure/geometry/curve"
)

// ArcOver is the length of the circular arc that rises by rise ≥ 0 over a chord > 0: a half
// hoop held by a strap.
func ArcOver(chord, rise float64) float64 {
	if rise < 1e-9*chord {
		return chord
	}
	radius := (chord*chord/4 + rise*rise) / (2 * rise)
	return 4 * radius * math.Atan(2*rise/chord)
}

// RiseOf is how far an arc of the given length stands out over its chord. The error says when
// the arc is no longer than the chord.
func RiseOf(chord, arc float64) (float64, error) {
	if !(chord > 0 && arc > chord) || math.IsInf(arc, 1) {
		return 0, fmt.Errorf("skirt: a half hoop of %.6g mm over a strap of %.6g mm, want it longer than the strap", arc, chord)
	}
	return curve.Root(func(rise float64) float64 { return ArcOver(chord, rise) - arc }, 0, arc/2, 1e-9*arc)
}
