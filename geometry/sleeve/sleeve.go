// Package sleeve turns what a tape said of a sleeve into what holds it: a soft arm in two
// pieces, a plain tube, a puff of net.
//
// A support and its sleeve only ever move along each other one way: the part of the support that lies
// farther from the shoulder passes everything between. So nothing below the narrowest place of a
// sleeve can be larger than that place, whether the arm is put in from the armscye or the
// sleeve drawn over the arm; see Passage.
// It does not know cloth, pieces or paper.
package sleeve

import (
	"fmt"
	"math"

	"understructure/geometry/curve"
	"understructure/geometry/measure"
	"understructure/geometry/torso"
)

// Taken is what is known of one sleeve and of the bodice it is set into. Lengths are
// millimetres; 0 stands for what is not known.
type Taken struct {
	Sheet   measure.Sheet // of the sleeve; the smaller of two readings already trusted (measure.TrustedSleeve)
	Armscye float64       // girth of the armscye along its seam
	Bust    float64       // bust girth of the bodice: scales what is drawn from statistics
	Wearer  measure.Wearer
	Year    int // decides where a full sleeve is widest
}

// Sleeve is the inside of a sleeve. Places along it are counted downward from the bottom of the
// armhole: the shoulder seam lies at −Cap, the end at Under. It is not changed once made.
type Sleeve struct {
	Length  float64 // from the shoulder seam down the outside to the end
	Under   float64 // from the bottom of the armhole down the inner seam to the end
	Armscye float64 // girth along the seam
	Elbow   float64 // place of the elbow; at Under or beyond when the sleeve ends above it
	Widest  float64 // place where the sleeve has its upper girth
	Drawn   map[measure.Key]torso.Drawn

	body  body
	girth curve.Monotone
}

// Cap is how far the shoulder seam lies above the bottom of the armhole, along the outside.
func (s Sleeve) Cap() float64 { return s.Length - s.Under }

// Girth is the inside girth of the sleeve at a place; the head of a sleeve that is not full has
// the upper girth.
func (s Sleeve) Girth(at float64) float64 { return s.girth.At(at) }

// Bends reports whether the elbow lies in the sleeve.
func (s Sleeve) Bends() bool { return s.Elbow > nearEnd && s.Elbow < s.Under-nearEnd }

// nearEnd is how near to the end of a sleeve an elbow would be none, mm.
const nearEnd = 20.0

// Support names what holds a sleeve.
type Support string

// The supports. A full sleeve takes a puff besides.
const (
	SoftArm   Support = "arm"
	PlainTube Support = "tube"
)

// Suggested is the support that suits the sleeve: an arm where it reaches below the elbow, else a tube.
// Workshop habit, from memory.
func (s Sleeve) Suggested() Support {
	if s.Bends() {
		return SoftArm
	}
	return PlainTube
}

// passageStep is how finely a sleeve is searched for its narrowest place, mm.
const passageStep = 2.0

// Passage is the girth of the narrowest place from the armscye down to a place: what is to lie there must
// pass it. The armscye is the first.
func (s Sleeve) Passage(at float64) float64 {
	least := math.Min(s.Armscye, s.Girth(at))
	for z := -s.Cap(); z < at; z += passageStep {
		least = math.Min(least, s.Girth(z))
	}
	return least
}

// Of returns the inside of the sleeve that was taken. What was not taken is drawn from
// statistics and listed. A sheet without any reading is an error: there is no sleeve then.
func Of(t Taken) (Sleeve, error) {
	if len(t.Sheet) == 0 {
		return Sleeve{}, fmt.Errorf("sleeve: nothing was taken; want at least one of length, under_length, upper_girth, elbow_girth, wrist_girth")
	}
	for k, v := range t.Sheet {
		if !(v > 0) || math.IsInf(v, 1) {
			return Sleeve{}, fmt.Errorf("sleeve: %s %g mm, want more than 0", k, v)
		}
	}
	d := drawing{taken: t, body: bodyOf(t), drawn: map[measure.Key]torso.Drawn{}}
	s := Sleeve{body: d.body, Drawn: d.drawn}
	s.Armscye = d.armscye()
	s.Length, s.Under = d.lengths(s.Armscye)
	if s.Under >= s.Length {
		return Sleeve{}, fmt.Errorf("sleeve: under_length %.0f mm, want less than the length, %.0f mm", s.Under, s.Length)
	}
	s.Elbow = d.elbow(s.Length) - s.Cap()
	d.girths(&s)
	return s, nil
}
