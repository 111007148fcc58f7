// Package fit says how a mount as built would fit: clearance, strain and its chance, and
// how it stands.
//
// Clearance is the garment's inside girth less the tape round the mount; negative
// clearance is strain. It does not draw, nor decide what is acceptable.
package fit

import "math"

// Doubt is one standard deviation of a clearance, in millimetres, from what is uncertain.
type Doubt struct {
	Tape   float64   // one reading of one girth
	Sheets []Covered // the layers that a tape at this height goes over
}

// Covered is a layer of wadding: one standard deviation of its thickness, and how much of
// the way round it goes, from 0 to 1.
type Covered struct{ Spread, Share float64 }

// SD adds the doubts: the garment's girth and the form's are read apart, and every sheet
// that is thicker than its word by s lengthens a tape by 2πs times its share of the way
// round (Steiner); independent errors add as squares.
func (d Doubt) SD() float64 {
	v := 2 * d.Tape * d.Tape
	for _, s := range d.Sheets {
		g := 2 * math.Pi * s.Spread * s.Share
		v += g * g
	}
	return math.Sqrt(v)
}

// StrainChance is the chance, from 0 to 1, that a clearance with standard deviation sd is
// really negative, its error being normal. With sd 0 it is 0 or 1.
func StrainChance(clearance, sd float64) float64 {
	if sd == 0 {
		if clearance < 0 {
			return 1
		}
		return 0
	}
	return math.Erfc(clearance/(sd*math.Sqrt2)) / 2
}

// Strain reports whether a clearance would strain: it is negative by more than can be
// read off a tape.
func Strain(clearance float64) bool { return clearance < -readable }

// readable is the least that a tape can tell, mm.
const readable = 0.5
