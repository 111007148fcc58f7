package torso

import (
	"math"

	"understructure/geometry/measure"
	"understructure/geometry/section"
)

// statistics is what is usual for a wearer and a year: what a tape cannot tell, or did not.
type statistics struct {
	wearer   measure.Wearer
	shape    map[measure.Level]shape
	valley   float64 // see naturalValley
	profile  map[measure.Level]section.Profile
	girths   map[measure.Level][3]float64 // of bust, waist and hip that add up to a girth not taken
	hip      line                         // hip girth by bust girth
	across   line                         // across back by bust girth
	shoulder line                         // shoulder length by bust girth
	neck     line                         // neck base girth by bust girth
	chest    float64                      // across front, a part of the bust girth
	slope    float64                      // of the shoulder, degrees
	heights  levelHeights
	upper    upperShape
	sources  sources
}

// line is a straight regression on bust girth: at is the value at the mean bust girth.
type line struct{ mean, at, by float64 }

func (l line) of(bust float64) float64 { return l.at + l.by*(bust-l.mean) }

// shape is the usual slice at a level.
type shape struct {
	ratio  float64 // breadth over depth
	spread float64 // standard deviation of its natural logarithm
	arc    float64 // standard deviation of the front arc as a part of the girth
	y      float64 // y of mid-depth before the waist's, in waist depths
	below  float64 // correlation of the ratio with the next level below
	full   float64 // fullness beyond the profile's own
}

// levelHeights are parts of the nape's height above the waist.
type levelHeights struct {
	bust, underarm, highHip, hip float64
	underbust                    float64 // of the bust's height
	acrossChest                  float64 // of the way from the underarm to the shoulder point
	neckAbove, pitBelow          float64 // side neck point above, front neck point below the nape
}

// upperShape is what the figure above the underarm is drawn with.
type upperShape struct {
	chest    float64 // depth at the across-chest level, of that at the underarm
	back     float64 // how far mid-depth lies farther back there, in underarm depths
	nape     float64 // how far the nape lies before the back, in underarm depths
	neckDeep float64 // depth over breadth of the neck base
	neckAt   float64 // the side neck point's place from nape (0) to front neck point (1)
}

type sources struct{ girth, body, neck string }

const (
	ansur = "ANSUR II (Gordon et al., NATICK/TR-15/007, 2014)"
	spain = "sample of 600 Spanish women (R package Anthropometry 1.20)"
	mesh  = "120 women, 80 men and 70 children made from an open parametric body (MakeHuman community, CC0 1.0), measured by us in 2026"
)

// statisticsOf returns what is usual for the wearer, in stays where women wore them.
func statisticsOf(w measure.Wearer, year int) statistics {
	switch w {
	case measure.Man:
		return men
	case measure.Child:
		return children
	}
	s := women
	s.valley = naturalValley
	if waist, ok := lacedWaist(year); ok {
		s.shape, s.valley = map[measure.Level]shape{}, lacedValley
		for l, sh := range women.shape {
			s.shape[l] = sh
		}
		sh := s.shape[measure.Waist]
		sh.ratio, sh.spread = waist, 0.08
		s.shape[measure.Waist] = sh
	}
	return s
}

// lacedWaist is breadth over depth of a waist in stays. That laced waists are rounder is in
// Te Papa's guides to mounting dress and in period health writers; the figures and years are from memory.
func lacedWaist(year int) (ratio float64, laced bool) {
	switch {
	case year == 0:
		return 1.28, true // not known: between laced and natural
	case year >= 1830 && year < 1911:
		return 1.20, true
	case year >= 1700 && year < 1795, year >= 1820 && year < 1830, year >= 1911 && year < 1920:
		return 1.28, true
	}
	return 0, false
}

// perLean and perFullness turn a spread of the front arc and of the girth, as parts of the
// girth, into those of lean and fullness (see ExampleBody_Arcs in package section).
const perLean, perFullness = 0.1 / 0.032, 0.1 / 0.041

// Doubts that do not depend on the level: girth over breadth plus depth varies by 1.3 % (mesh);
// a side seam lies a twentieth of the depth before or behind mid-depth (mesh: so much do the
// widest points of a slice) and one half breadth is 1 % larger, from memory.
const fullnessSpread, seamSpread, balanceSpread = 0.013 * perFullness, 0.05, 0.01

// usual is the slice expected at a level where others have the breadth over depth given.
func (s statistics) usual(l measure.Level, ratio float64, bustShare float64) section.Usual {
	p := s.profile[l]
	if l == measure.Bust && s.wearer == measure.Woman {
		p = s.bustProfile(bustShare)
	}
	const depth = 200 // any: the girth settles the size
	body := section.Shaped(p, ratio*depth, depth)
	body.Front, body.Back = s.shape[l].full, s.shape[l].full
	return section.Usual{
		Body:  body,
		Ratio: s.shape[l].spread, Fullness: fullnessSpread, Lean: s.shape[l].arc * perLean,
		Balance: balanceSpread, Seam: seamSpread,
	}
}

// bustProfile is the usual outline for bust points set apart by a share of the breadth.
func (s statistics) bustProfile(share float64) section.Profile {
	base := s.profile[measure.Bust]
	out := make(section.Profile, len(base))
	for k := range base {
		out[k] = base[k] + bustPointProfile[k]*math.Max(-0.1, math.Min(0.1, share-bustPointShare))
	}
	return out
}

// usualBustShare is the distance of the bust points over the breadth where it was not taken:
// 192.8 mm at a mean bust of 959 mm and a breadth of 0.38 of it (spain, mesh).
const usualBustShare = 0.737

// The depth of the hollow between the bust points over their distance, natural and in stays,
// which press it nearly flat. The tape spans it. From memory.
const naturalValley, lacedValley = 0.15, 0.05

// expected is breadth over depth at a level, moved by what was measured at the nearest levels
// above and below: a figure that is broader than usual at one level is likely so at the
// next. It is the regression on two neighbours of a chain in which each level depends on
// the next alone (A. A. Markov, 1906).
func (s statistics) expected(l measure.Level, known map[measure.Level]float64) float64 {
	sh := s.shape[l]
	above, a := s.nearest(l, known, -1)
	below, b := s.nearest(l, known, 1)
	z := (a*(1-b*b)*above + b*(1-a*a)*below) / (1 - a*a*b*b)
	return sh.ratio * math.Exp(sh.spread*z)
}

// nearest looks from a level up (step −1) or down (1) for one with a measured ratio, and
// returns by how many standard deviations that is unusual and how it correlates with the level's own; 0
// where there is none.
func (s statistics) nearest(l measure.Level, known map[measure.Level]float64, step int) (z, ρ float64) {
	ρ = 1
	for i := levelIndex(l); i+step >= 0 && i+step < len(taped); i += step {
		ρ *= s.shape[taped[min(i, i+step)].level].below
		at := taped[i+step].level
		if ratio, ok := known[at]; ok {
			return math.Log(ratio/s.shape[at].ratio) / s.shape[at].spread, ρ
		}
	}
	return 0, 0
}

func levelIndex(l measure.Level) int {
	for i, t := range taped {
		if t.level == l {
			return i
		}
	}
	return -1
}

// drawGirths settles the girth of every taped level.
func (d *draft) drawGirths() {
	bust, waist := d.sheet[measure.BustGirth], d.sheet[measure.WaistGirth]
	hip := d.take(measure.HipGirth, d.stats.hip.of(bust), d.stats.sources.girth)
	d.girth[measure.Bust], d.girth[measure.Waist], d.girth[measure.Hip] = bust, waist, hip
	for _, t := range taped {
		if c, ok := d.stats.girths[t.level]; ok {
			d.girth[t.level] = d.take(t.girth, c[0]*bust+c[1]*waist+c[2]*hip, d.stats.sources.body)
		}
	}
}
