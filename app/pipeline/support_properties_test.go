package pipeline_test

import (
	"math"

	"understructure/app/record"
	"understructure/geometry/measure"
	"understructure/patterns/plan"
)

// readable is the least that a tape can tell, mm.
const readable = 0.5

// skirt: the support is nowhere wider than the garment, the hem hangs where it was asked to, and what was taken is
// what was built.
func (j *judge) skirt() {
	s := j.p.Skirt
	if s == nil {
		return
	}
	ease := 0.0
	for _, l := range j.p.Levels {
		if l.Name == string(measure.Waist) {
			ease = l.Ease
			if d := math.Abs(l.Height - j.p.StandHeight); !(d < 1e-6) {
				j.find("the waist stands at the stand's height", d, "%.1f", l.Height)
			}
		}
	}
	if j.said("waist-over-skirt", "waist") || j.said("skirt-without-ease", "") {
		ease = 0 // the mount has taken it up already
	}
	for _, g := range s.Girths {
		if g.Garment != nil && !(g.Support <= *g.Garment-ease+readable) && !j.bodyOver() {
			j.find("a support is never wider than its skirt", g.Support-*g.Garment+ease, "%.1f", g.Height)
		}
	}
	top := len(s.Heights) - 1
	if d := math.Abs(s.Heights[top] - j.p.StandHeight); !(d < 1e-6) {
		j.find("a skirt hangs from the waist", d, "%.1f", s.Heights[top])
	}
	for i, h := range s.Heights {
		j.ring("skirt", s.Garment[i], h)
		if s.Support[i] == nil {
			continue
		}
		j.ring("skirt support", s.Support[i], h)
		cloth, ok := clothAt(s.Girths, h)
		most := math.Max(cloth, s.Garment[i].Tape()) // where the back hangs much longer, a level cuts the cloth at many depths
		if ok && !(s.Support[i].Tape() <= most+readable) && !j.bodyOver() {
			j.find("a petticoat is never wider than its skirt", s.Support[i].Tape()-most, "%.1f", h)
		}
	}
	j.floor()
	j.skirtAsTaken()
}

// bodyOver reports whether it is said that the mount itself is wider than the skirt: nothing below adds to that.
func (j *judge) bodyOver() bool {
	return j.said("body-over-skirt", "hip") || j.said("skirt-hip-not-taken", "hip")
}

// clothAt is the garment's girth at a height, straight between the two depths nearest to it; false where nothing
// says or there is none.
func clothAt(girths []plan.SkirtGirth, h float64) (float64, bool) {
	for i := 1; i < len(girths); i++ {
		a, b := girths[i-1], girths[i]
		if h >= a.Height && h < b.Height && a.Garment != nil {
			return *a.Garment + (*b.Garment-*a.Garment)*(h-a.Height)/(b.Height-a.Height), true
		}
	}
	return 0, false
}

// floor: no hem is nearer to the floor than wanted, unless cloth is meant or said to lie there.
func (j *judge) floor() {
	s := j.p.Skirt
	least, shortest := math.Inf(1), math.Inf(1)
	above := 0.0
	for _, f := range s.Falls {
		least = math.Min(least, f.Above)
		if f.Length < shortest {
			shortest, above = f.Length, f.Above
		}
	}
	if j.said("hem-on-floor", "") || j.said("cloth-on-floor", "") {
		return
	}
	if !s.Trained && least < s.FloorGap-readable {
		j.find("the hem clears the floor by the gap", s.FloorGap-least, "%.1f above it", least)
	}
	if s.Hold == record.HoldSilhouette && above < s.FloorGap-readable {
		j.find("the shortest length clears the floor by the gap", s.FloorGap-above, "%.1f above it", above)
	}
}

func (j *judge) skirtAsTaken() {
	_, taken := measure.TrustedSkirt(measure.Trusted(j.r.Garment.Bodice), j.r.Garment.Skirt)
	for i, k := range []measure.Key{measure.FrontLength, measure.SideLength, measure.SideLength, measure.BackLength} {
		if v, ok := taken[k]; ok && !(math.Abs(j.p.Skirt.Falls[i].Length-v) < 1e-6) {
			j.find("a skirt is as long as taken", j.p.Skirt.Falls[i].Length-v, "%s", k)
		}
	}
	if v, ok := taken[measure.HemGirth]; ok && (j.p.Skirt.Hem.Girth == nil || *j.p.Skirt.Hem.Girth != v) {
		j.find("a hem is as wide as taken", v, "hem")
	}
}

// told is what a tape can tell round a sleeve, mm: an arm is cut straight between rows 12 mm apart.
const told = 1.0

// sleeves: what holds a sleeve passes every place above it.
func (j *judge) sleeves() {
	if j.p.Sleeves == nil {
		return
	}
	for _, at := range j.p.Sleeves.Places {
		if at.Support != nil && !(*at.Support <= at.Passage+told) {
			j.find("a sleeve's support passes", *at.Support-at.Passage, "%.1f", at.At)
		}
	}
}
