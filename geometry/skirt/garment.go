package skirt

import (
	"fmt"
	"math"

	"understructure/geometry/measure"
	"understructure/geometry/section"
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

// cloth is the garment with every length known, in every direction.
type cloth struct {
	length                section.Section // from waist to hem
	waist, hip, hem       float64         // inside girths; hip is 0 where it was not taken, hem +Inf
	hipDepth              float64
	straight              bool
	front, side, backward float64
}

// spread finds the length in every direction: as taken in front, at the sides and behind, and
// between them as a cone has it whose hem is an Oval, so that no direction is longer or
// shorter than its neighbours ask for.
func (c *cloth) spread(waist Oval) {
	least := math.Min(c.front, math.Min(c.side, c.backward))
	out := func(l float64) float64 { return math.Sqrt((l - least) * (l + least)) }
	hem := Oval{waist.Right + out(c.side), waist.Left + out(c.side), waist.Front + out(c.front), waist.Back + out(c.backward)}
	for j := range c.length {
		d := section.Direction(j)
		c.length[j] = math.Hypot(least, hem.Reach(d)-waist.Reach(d))
	}
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

// cut is the profile that the cloth itself has when it is held out everywhere.
type cut struct{ knee, above, below float64 } // part of the length to the hip, slopes above and below it

// cutOf is the garment's own profile along a direction of the given length.
func (c *cloth) cutOf(length float64) cut {
	k := cut{above: 1, below: 1}
	if c.hip == 0 || c.hipDepth >= length || math.IsInf(c.hem, 1) {
		return k
	}
	k.knee = c.hipDepth / length
	above, below := (c.hip-c.waist)/k.knee, (c.hem-c.hip)/(1-k.knee)
	if most := math.Max(math.Abs(above), math.Abs(below)); most > 0 {
		k.above, k.below = above/most, below/most
	}
	return k
}

// out is like Profile.out.
func (k cut) out(v float64) float64 {
	return k.above*math.Min(v, k.knee) + k.below*math.Max(0, v-k.knee)
}
