package torso

import (
	"math"

	"understructure/geometry/measure"
)

// known are standard deviations of people about what is drawn for them, mm. They are what is left of ansur's
// by the correlation with bust girth that the value is drawn with.
var known = map[measure.Wearer]map[measure.Key]float64{
	measure.Woman: {measure.HipGirth: left(75.9, 0.74), measure.NeckBaseGirth: left(19.7, 0.66), measure.ShoulderLength: left(10.3, 0.13)},
	measure.Man:   {measure.HipGirth: left(76.7, 0.84)},
}

// left is the standard deviation that a regression with correlation r leaves.
func left(sd, r float64) float64 { return sd * math.Sqrt(1-r*r) }

// guessed are the same where no table tells, as parts of the value drawn. From memory, no published source.
var guessed = map[measure.Key]float64{
	measure.HipGirth: 0.05, measure.NeckBaseGirth: 0.04, measure.ShoulderLength: 0.08,
	measure.UnderarmGirth: 0.015, measure.UnderbustGirth: 0.025, measure.HighHipGirth: 0.025,
}

// slopeSpread is that of the shoulder's slope, degrees: in spain the 5th and the 95th percentile, 3.29 standard deviations
// apart, are 17 and 31 degrees. For men and children from memory.
const slopeSpread = (31 - 17) / 3.29

// Heights of levels that no length tells, as parts of the back length. From memory, no published source.
const heightSpread, underbustSpread = 0.03, 0.015

// spread is how far people are from a value that was drawn, one standard deviation, mm or degrees, and whether that is from memory.
func (d *draft) spread(k measure.Key) (sd float64, fromMemory bool) {
	back := d.sheet[measure.BackWaist]
	if sd, ok := known[d.stats.wearer][k]; ok {
		return sd, false
	}
	if share, ok := guessed[k]; ok {
		return share * d.drawn[k].Value, true
	}
	switch k {
	case measure.ShoulderSlope:
		return slopeSpread, d.stats.wearer != measure.Woman
	case unread:
		return underbustSpread * back, true
	}
	return heightSpread * back, true
}
