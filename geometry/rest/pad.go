package rest

import (
	"fmt"
	"math"

	"understructure/geometry/curve"
)

// Bend is the stretch of the outer face of cloth of a thickness laid round a pad, as a part of its length. The middle
// of the cloth keeps its length, so that a thickness t on a pad of diameter D is stretched by t/(D+t).
func Bend(thickness, pad float64) float64 { return thickness / (pad + thickness) }

// PadFor is the diameter of the pad round which cloth of a thickness is stretched by a part of its length, no more. It
// is the inverse of Bend.
func PadFor(thickness, most float64) (float64, error) {
	if !(thickness > 0 && most > 0 && most < 1) {
		return 0, fmt.Errorf("rest: a pad for cloth of %g mm stretched by %g: want a thickness above 0 and a part between 0 and 1", thickness, most)
	}
	return thickness * (1/most - 1), nil
}

// Roll is cloth wound on a tube. Thickness is that of one turn: the cloth and the tissue on it.
type Roll struct{ Tube, Thickness, Length float64 }

// Turns is how often the cloth goes round: the angle of an Archimedean spiral that grows by one thickness a turn and
// is as long as the cloth. It begins on the tube: over the first turn it lies half a thickness off it in the mean, as the
// middle of cloth does that is wound close.
func (r Roll) Turns() (float64, error) {
	if !(r.Tube > 0 && r.Thickness > 0 && r.Length >= 0) || math.IsInf(r.Length+r.Tube+r.Thickness, 0) {
		return 0, fmt.Errorf("rest: %g mm of cloth of %g mm on a tube of %g mm: want tube and thickness above 0", r.Length, r.Thickness, r.Tube)
	}
	start := r.Tube / 2
	grow := r.Thickness / (2 * math.Pi)
	most := r.Length/start + 1 // the spiral is longer than a circle of its first radius
	angle, err := curve.Root(func(a float64) float64 { return spiral(start, grow, a) - r.Length }, 0, most, 1e-9)
	return angle / (2 * math.Pi), err
}

// Diameter is that of the full roll after so many turns.
func (r Roll) Diameter(turns float64) float64 { return r.Tube + 2*r.Thickness*math.Ceil(turns) }

// spiral is the length of r = start + grow·angle from 0 to an angle, in closed form.
func spiral(start, grow, angle float64) float64 {
	part := func(radius float64) float64 {
		h := math.Hypot(radius, grow)
		return (radius*h + grow*grow*math.Log(radius+h)) / (2 * grow)
	}
	return part(start+grow*angle) - part(start)
}
