package fit

import (
	"math"

	"understructure/geometry/measure"
)

// Source is one value that may really be otherwise than the mount was planned with. Sources err apart from one
// another; what one source does to several levels it does to them together.
type Source struct {
	Key    string       // key path of the reading that tells the value; "" where none does
	Known  Known        // what is known of it
	Taken  bool         // it was read; otherwise statistics drew it
	Kept   measure.Kept // which of several readings counts
	Effect []float64    // at each level, how much larger the clearance is for each unit by which the truth is larger, mm
}

// Doubt is clearances, one a level, as planned, and all that they hang on.
type Doubt struct {
	Clearance []float64 // mm
	Sources   []Source
}

// Expected is the clearance to be expected at a level, mm: the one planned, and what readings beside those kept say.
func (d Doubt) Expected(level int) float64 { return d.Clearance[level] + d.off(level) }

func (d Doubt) off(level int) float64 {
	sum := 0.0
	for _, s := range d.Sources {
		sum += s.Effect[level] * s.Known.Off
	}
	return sum
}

// SD is one standard deviation of the clearance at a level, mm. Errors that are apart add as squares.
func (d Doubt) SD(level int) float64 {
	v := 0.0
	for _, s := range d.Sources {
		e := s.Effect[level] * s.Known.SD
		v += e * e
	}
	return math.Sqrt(v)
}

// Chance is the chance that the garment would strain at a level, from 0 to 1.
func (d Doubt) Chance(level int) float64 { return StrainChance(d.Expected(level), d.SD(level)) }

// EaseFor is the ease, mm, with which the chance of strain at a level would be this; never negative.
// A mount with more ease has fewer layers, so that it is a little on the safe side.
func (d Doubt) EaseFor(level int, chance float64) float64 {
	return math.Max(0, quantile(1-chance)*d.SD(level)-d.off(level))
}

// quantile is what a normal error of standard deviation 1 stays below with a probability.
func quantile(p float64) float64 { return math.Sqrt2 * math.Erfinv(2*p-1) }

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
