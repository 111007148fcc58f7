package sleeve

import (
	"math"

	"understructure/geometry/curve"
	"understructure/geometry/measure"
	"understructure/geometry/torso"
)

// body is the arm of the usual wearer, mm.
type body struct {
	outseam, upper, wrist float64
	source                string
}

const ansur = "ANSUR II (Gordon et al., NATICK/TR-15/007, 2014)"

// The means of ANSUR II: sleeve outseam, flexed upper arm, wrist, and the chest girth that they go with.
var (
	women = body{543.6, 305.6, 154.8, ansur + ", women"}
	men   = body{593.1, 358.1, 175.9, ansur + ", men"}
)

const womensChest, mensChest = 946.9, 1058.7

// bodyOf is the arm that goes with a bust: girths in proportion to it. Lengths are the mean, a
// child's in proportion to the bust too (a boy of six has two thirds of a man's chest and
// arm in the tailors' scales of the 1890s; a rough guide).
func bodyOf(t Taken) body {
	b, chest := women, womensChest
	if t.Wearer == measure.Man {
		b, chest = men, mensChest
	}
	if t.Bust <= 0 {
		return b
	}
	scale := t.Bust / chest
	b.upper, b.wrist = b.upper*scale, b.wrist*scale
	b.source += ", in proportion to the bust girth"
	if t.Wearer == measure.Child {
		b.outseam *= scale
	}
	return b
}

// forearm is where the girth at the elbow lies between wrist (0) and upper arm (1): 0.67 for the forearms of 260
// women, 0.64 for those of 247 men (Heinz, Peterson, Johnson and Kerk, Journal of Statistics Education 11, 2003).
const forearm = 0.65

func (b body) elbow() float64 { return b.wrist + forearm*(b.upper-b.wrist) }

// drawing settles what was not taken.
type drawing struct {
	taken Taken
	body  body
	drawn map[measure.Key]torso.Drawn
}

// take returns a reading, or the usual value, which it lists as drawn.
func (d drawing) take(k measure.Key, usual float64, source string) float64 {
	if v, ok := d.taken.Sheet[k]; ok {
		return v
	}
	d.drawn[k] = torso.Drawn{Value: usual, Source: source}
	return usual
}

// armscyeShare is the girth of an armscye as a part of the bust girth: 350 of 885 mm in a cotton dress
// of about 1851 (Victoria and Albert Museum O368547).
const armscyeShare = 350. / 885

func (d drawing) armscye() float64 {
	if d.taken.Armscye > 0 {
		return d.taken.Armscye
	}
	bust := d.taken.Bust
	if bust <= 0 {
		bust = womensChest
	}
	a := armscyeShare * bust
	d.drawn[measure.ArmscyeGirth] = torso.Drawn{Value: a, Source: "0.4 of the bust girth, as in a dress of about 1851 (Victoria and Albert Museum O368547)"}
	return a
}

// capShare is the height of a sleeve's head as a part of the armscye, and mostCap the greatest part of a
// sleeve that is head. Common drafting practice, no published source.
const capShare, mostCap = 1. / 3, 0.6

func (d drawing) lengths(armscye float64) (length, under float64) {
	head := capShare * armscye
	usual, source := d.body.outseam, d.body.source
	if u, ok := d.taken.Sheet[measure.UnderLength]; ok {
		usual, source = u+head, "the inner seam and a third of the armscye; common practice, no published source"
	}
	length = d.take(measure.SleeveLength, usual, source)
	under = d.take(measure.UnderLength, length-math.Min(head, mostCap*length),
		"the length less a third of the armscye; common practice, no published source")
	return length, under
}

// elbowShare is where the elbow lies on a whole arm from the shoulder; wholeArm is the part of the
// usual arm from which a sleeve counts as a whole one. From memory.
const elbowShare, wholeArm = 0.57, 0.8

// elbow is how far the elbow lies from the shoulder seam along the outside. A sleeve of which the elbow
// was measured has one.
func (d drawing) elbow(length float64) float64 {
	if _, taken := d.taken.Sheet[measure.ElbowGirth]; !taken && length < wholeArm*d.body.outseam {
		return elbowShare * d.body.outseam
	}
	return elbowShare * length
}

// girths settles the girths from the armhole to the end.
func (d drawing) girths(s *Sleeve) {
	upper := d.take(measure.UpperGirth, math.Min(d.body.upper, s.Armscye), d.body.source)
	usual, source := math.Min(d.body.wrist, upper), d.body.source
	if !s.Bends() {
		usual, source = upper, "the upper girth: the sleeve ends above the elbow"
	}
	end := d.take(measure.WristGirth, usual, source)
	var at, girth []float64
	if s.Widest = d.widest(s, upper); s.Widest > 0 {
		at, girth = append(at, -s.Cap()), append(girth, s.Armscye)
	}
	at, girth = append(at, s.Widest), append(girth, upper)
	if s.Bends() {
		at, girth = append(at, s.Elbow), append(girth, d.elbowGirth(s, upper, end))
	}
	s.girth = curve.Through(append(at, s.Under), append(girth, end))
}

// elbowGirth is straight between upper and wrist girth; a full sleeve is taken as close to the arm there.
func (d drawing) elbowGirth(s *Sleeve, upper, end float64) float64 {
	if s.full(upper) {
		return d.take(measure.ElbowGirth, math.Max(d.body.elbow(), end), d.body.source+"; forearms of 507 adults (Heinz et al., Journal of Statistics Education 11, 2003)")
	}
	t := (s.Elbow - s.Widest) / (s.Under - s.Widest)
	return d.take(measure.ElbowGirth, upper+(end-upper)*t, "straight between upper and wrist girth")
}

// A sleeve of much more than the armscye is a full one. The fullness of the 1830s hangs half way to the elbow, that
// of the 1890s stands at the shoulder. From memory.
const (
	fullSleeve       = 1.25 // upper girth over armscye
	hanging, upright = 0.5, 0.2
)

// full reports whether a sleeve is one that needs a puff.
func (s Sleeve) full(upper float64) bool { return upper > fullSleeve*s.Armscye }

// widest is where the upper girth lies: below the armhole, in a full sleeve where its year has the fullness.
func (d drawing) widest(s *Sleeve, upper float64) float64 {
	if !s.full(upper) {
		return 0
	}
	if !s.Bends() {
		return hanging * s.Under
	}
	if d.taken.Year >= 1824 && d.taken.Year < 1840 {
		return hanging * s.Elbow
	}
	return upright * s.Elbow
}
