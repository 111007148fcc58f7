package draft

import (
	"fmt"

	"understructure/geometry/fit"
	"understructure/geometry/measure"
	"understructure/geometry/sleeve"
)

// SleeveStock says how sleeves are to be held.
type SleeveStock struct {
	Hold    sleeve.Support // "" is what the sleeve suggests
	Options sleeve.Options
	Layer   int // place in the order of making; 0 is 1
}

// SleeveSupport drafts what holds a pair of sleeves: arms or tubes, and puffs where the sleeve is full. The notices say
// where a sleeve stays unfilled or a puff may not pass; the error names an option that cannot be.
func SleeveSupport(s sleeve.Sleeve, o SleeveStock) (Support, []measure.Notice, error) {
	if o.Layer == 0 {
		o.Layer = 1
	}
	if o.Hold == "" {
		o.Hold = s.Suggested()
	}
	arm, err := s.Arm(o.Options)
	if err != nil {
		return Support{}, nil, err
	}
	var out Support
	var notices []measure.Notice
	switch o.Hold {
	case sleeve.SoftArm:
		sewn, err := arm.Sewn()
		if err != nil {
			return Support{}, nil, err
		}
		out.Pieces, notices = Arm(sewn, o.Layer), sewn.Notices
		out.Cuts = armCuts(arm)
		out.MassKg = 2 * stuffing.OfVolume(arm.Volume())
	case sleeve.PlainTube:
		out.Pieces = Tube(s.Tube(o.Options), o.Layer)
	default:
		return Support{}, nil, fmt.Errorf("draft: a sleeve cannot be held by %q, want %q or %q", o.Hold, sleeve.SoftArm, sleeve.PlainTube)
	}
	puff := s.Puff(arm, o.Options)
	out.Pieces = append(out.Pieces, Puff(puff, o.Layer+1)...)
	if len(puff.Frills) == 0 { // a puff fills what the arm leaves
		notices = append(notices, arm.Notices...)
	}
	notices = append(notices, puff.Notices...)
	out.MassKg += sleeveMass(out)
	out.Cautions = sleeveCautions(out, len(puff.Frills) > 0)
	return out, notices, nil
}

// A wire is optional; it runs in a casing of 2 cm tape (handbooks of mounting). The ties that hold an arm at the shoulder are
// from memory.
const casing, tie = 20.0, 200.0

func armCuts(a sleeve.Arm) []Cut {
	long := a.At[0] + a.Head
	return []Cut{
		{Name: "tie for an arm", Material: "cotton tape", Length: tie, Width: casing, Count: 4, Note: "two at the head of each arm, sewn to the mount's shoulder, so that it comes off"},
		{Name: "casing for a wire", Material: "cotton tape", Length: long, Width: casing, Count: 2, Note: "optional; inside the back seam"},
		{Name: "wire", Material: "covered wire", Length: long - 2*casing, Count: 2, Note: "optional; both ends bent back and bound"},
	}
}

// sleeveMass is that of the cloth, card and net, kg.
func sleeveMass(s Support) float64 {
	m := 0.0
	for _, p := range s.Pieces {
		area := p.Area() * float64(p.Count)
		switch p.Material {
		case armCard:
			m += fit.Card.OfArea(area)
		case puffNet:
			m += fit.Net.OfArea(area)
		default:
			m += fit.Cotton.OfArea(area)
		}
	}
	return m
}

func sleeveCautions(s Support, puffed bool) []string {
	out := []string{"Dress one arm at a time and never push: a sleeve that does not slide over its support wants a thinner one. Cover the support with smooth silk or lining cloth first."}
	if len(s.Cuts) > 0 {
		out = append(out, "Bend back and bind both ends of every wire: a bare end works through cloth.")
	}
	if puffed {
		out = append(out, "Press the net together in a sheet of silk to pass the armscye, then draw the silk out; net must not lie against the garment.")
	}
	return out
}
