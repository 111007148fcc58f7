package skirt

import (
	"fmt"
	"math"

	"understructure/geometry/measure"
)

// Cut is how a skirt's cloth is cut. It says how wide the cloth is between the places where a
// tape went round it.
type Cut string

// The two ways. Where the cut is not known, Gored is the careful guess.
const (
	Gored    Cut = "gored"    // widening evenly from one girth taken to the next
	Straight Cut = "straight" // straight breadths, as wide right under the gathers as at the hem
)

// Garment is a skirt, or the skirt of a coat or frock, as the tape found it.
type Garment struct {
	Readings measure.Sheet // keys of measure.Skirt, mm; at least one of the three lengths
	HipDepth float64       // down the cloth from the waist to where the hip girth was taken, mm; 0 for UsualHipDepth
	Cut      Cut           // "" for not known
}

// UsualHipDepth is where the hip girth is taken when nothing says otherwise: 7 inches below
// the waist (New Dressmaker, 1921; 6 or 7 inches in manuals from about 1890 on).
const UsualHipDepth = 178.0

// Drawn is a value that was not taken, and where it came from.
type Drawn struct {
	Value  float64
	Source string
}

// check refuses readings that no skirt can have.
func (g Garment) check() error {
	for _, m := range measure.Skirt {
		if v, ok := g.Readings[m.Key]; ok && !m.Possible(v) {
			return fmt.Errorf("skirt: %s is %.6g mm, want %g to %g", m.Key, v, m.Min, m.Max)
		}
	}
	for k := range g.Readings {
		if _, ok := measure.Find(measure.Skirt, k); !ok {
			return fmt.Errorf("skirt: %q is no measurement of a skirt", k)
		}
	}
	if g.Cut != "" && g.Cut != Gored && g.Cut != Straight {
		return fmt.Errorf("skirt: cut is %q, want %q or %q", g.Cut, Gored, Straight)
	}
	if !(g.HipDepth >= 0 && g.HipDepth <= mostHipDepth) {
		return fmt.Errorf("skirt: hip depth is %.6g mm, want 0 to %g", g.HipDepth, mostHipDepth)
	}
	for _, k := range lengths {
		if _, ok := g.Readings[k]; ok {
			return nil
		}
	}
	return fmt.Errorf("skirt: none of %s, %s, %s was taken; a skirt needs one of them", lengths[0], lengths[1], lengths[2])
}

// mostHipDepth is the greatest of measure's range for the waist to hip length, mm.
const mostHipDepth = 450.0

// lengths are the readings down a skirt, in the order in which one is chosen when only one counts.
var lengths = []measure.Key{measure.FrontLength, measure.SideLength, measure.BackLength}

// cloth is the garment with every length known.
type cloth struct {
	waist, hip, hem   float64 // inside girths; hip is 0 where it was not taken, hem +Inf
	hipDepth          float64
	straight          bool
	front, side, back float64 // from waist to hem
}

// girth is how wide the cloth is, all the way round, at a depth s along a direction of the given length.
func (c *cloth) girth(s, length float64) float64 {
	from, to, a, b := 0.0, length, c.waist, c.hem
	if c.hip > 0 && c.hipDepth < length {
		if s <= c.hipDepth {
			to, b = c.hipDepth, c.hip
		} else {
			from, a = c.hipDepth, c.hip
		}
	}
	switch {
	case math.IsInf(b, 1):
		return b
	case c.straight && s > 0 && from == 0:
		return b // gathered into the band
	}
	return a + (b-a)*(s-from)/(to-from)
}

// cut is the profile that the cloth itself has when it is held out everywhere: straight from
// the waist to the hip and from there to the hem.
type cut struct{ knee, at float64 } // part of the length to the hip, and how far out it is there

// cutOf is the garment's own profile along a direction of the given length. Where its girth does not grow, it is a cone.
func (c *cloth) cutOf(length float64) cut {
	if c.hip == 0 || c.hipDepth >= length || math.IsInf(c.hem, 1) || c.hem-c.waist < readable {
		return cut{knee: 1, at: 1}
	}
	return cut{c.hipDepth / length, (c.hip - c.waist) / (c.hem - c.waist)}
}

// out is like Profile.out.
func (k cut) out(v float64) float64 {
	if v <= k.knee {
		return k.at * v / k.knee
	}
	return k.at + (1-k.at)*(v-k.knee)/(1-k.knee)
}

// slope is like Profile.slope.
func (k cut) slope(v float64) float64 {
	if v <= k.knee {
		return k.at / k.knee
	}
	return (1 - k.at) / (1 - k.knee)
}
