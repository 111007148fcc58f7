package torso

import (
	"math"

	"understructure/geometry/section"
)

// aiming seeks the readings to aim at for those wanted to come out. It begins as if every
// millimetre aimed at came out as one, and learns from each try how it does (C. G. Broyden, "A class of
// methods for solving nonlinear simultaneous equations", Math. Comp. 19, 1965: his first method).
type aiming struct {
	want, at  five
	tries     int
	gain      [5]five // how much more to aim at for each millimetre short
	lastAt    five
	lastShort five
}

// five are readings as numbers: girth, breadth, depth, front arc and left arc; 0 is free.
type five [5]float64

func fiveOf(r section.Readings) five {
	return five{r.Girth, r.Breadth, r.Depth, r.FrontArc, r.LeftArc}
}

func (v five) readings() section.Readings {
	return section.Readings{Girth: v[0], Breadth: v[1], Depth: v[2], FrontArc: v[3], LeftArc: v[4]}
}

func newAiming(want section.Readings) *aiming {
	a := &aiming{want: fiveOf(want), at: fiveOf(want)}
	for k := range a.gain {
		a.gain[k][k] = 1
	}
	return a
}

// short is what readings fall short of those wanted, and the most of it.
func (a *aiming) short(got section.Readings) (short five, most float64) {
	for k, g := range fiveOf(got) {
		if a.want[k] > 0 {
			short[k] = a.want[k] - g
			most = math.Max(most, math.Abs(short[k]))
		}
	}
	return short, most
}

// next is what to aim at after a try that fell short.
func (a *aiming) next(short five) section.Readings {
	if a.tries > 0 {
		a.learn(short)
	}
	a.tries++
	a.lastAt, a.lastShort = a.at, short
	for k := range a.at {
		a.at[k] += a.gain[k].dot(short)
	}
	return a.at.readings()
}

// learn sets the gain so that it would have told the last step from what came of it.
func (a *aiming) learn(short five) {
	var moved, came, told five
	for k := range moved {
		moved[k], came[k] = a.at[k]-a.lastAt[k], a.lastShort[k]-short[k]
	}
	for k := range told {
		told[k] = a.gain[k].dot(came)
	}
	var across five // movedᵀ·gain
	for k := range moved {
		for i := range across {
			across[i] += moved[k] * a.gain[k][i]
		}
	}
	den := moved.dot(told)
	if den == 0 {
		return
	}
	for k := range moved {
		for i := range across {
			a.gain[k][i] += (moved[k] - told[k]) * across[i] / den
		}
	}
}

func (v five) dot(w five) (sum float64) {
	for k := range v {
		sum += v[k] * w[k]
	}
	return sum
}
