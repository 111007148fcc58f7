package sleeve

import (
	"fmt"
	"math"

	"understructure/geometry/measure"
)

// Puff is what fills a full sleeve round its arm: frills of soft net, each a strip folded lengthwise and gathered round
// the arm. They lie down to pass a narrow armscye and spring open behind it.
type Puff struct {
	Frills   []Frill // from the shoulder down
	Fullness float64 // length of a strip over the girth of its outer edge
	Bundle   float64 // girth of arm and puff pressed together, where they pass worst
	Passage  float64 // what that place must pass, ease taken off
	Notices  []measure.Notice
}

// Frill is one strip.
type Frill struct {
	At     float64 // place of its gathers; above the bottom of the armhole, where it is negative, it crosses the over-arm alone
	Gather float64 // what the strip is gathered to, mm
	Deep   float64 // how far it stands out, mm
	Outer  float64 // what its outer edge spans, mm
	Length float64 // of the strip, mm
}

// Ratio is the gather ratio.
func (f Frill) Ratio() float64 { return f.Length / f.Gather }

// Fullest and slackest are the fullness between which a frill still springs: a deep frill takes two widths to one
// in handbooks of mounting; the lower is from memory.
const fullest, slackest = 2.0, 1.3

// frillGap is how far two frills lie apart, and leastFrill how far one must stand out to be worth sewing, mm. From memory.
const frillGap, leastFrill = 45.0, 15.0

// netThickness is that of one layer of soft nylon net, mm, and netPacked the part of a pressed bundle that is
// net and not air. From memory.
const netThickness, netPacked = 0.3, 0.4

// Puff returns the puff round an arm in the sleeve; it has no frills where the arm fills the sleeve.
func (s Sleeve) Puff(a Arm, o Options) Puff {
	var p Puff
	lowest := s.Under - o.Short
	for at := -s.Cap() / 2; at < lowest; at += frillGap {
		core := a.round(at)
		deep := (s.Girth(at) - o.Ease - core) / (2 * math.Pi)
		if deep < leastFrill {
			continue
		}
		f := Frill{At: at, Gather: core, Deep: deep, Outer: core + 2*math.Pi*deep}
		if at < 0 {
			f.Gather, f.Outer = f.Gather*overShare, f.Outer*overShare
		}
		p.Frills = append(p.Frills, f)
	}
	for p.Fullness = fullest; ; p.Fullness -= 0.05 {
		for i := range p.Frills {
			p.Frills[i].Length = p.Fullness * p.Frills[i].Outer
		}
		p.Bundle, p.Passage = s.squeezed(p, a, o)
		if p.Bundle <= p.Passage || p.Fullness < slackest+0.05 {
			break
		}
	}
	if len(p.Frills) > 0 && p.Bundle > p.Passage {
		p.Notices = []measure.Notice{{Code: "puff-too-thick", Key: measure.UpperGirth, Amount: p.Bundle - p.Passage, Message: fmt.Sprintf(
			"Pressed together, arm and puff measure about %.0f mm round; only %.0f mm pass. Put the puff in by itself after the arm, or leave frills out.", p.Bundle, p.Passage)}}
	}
	return p
}

// round is the girth of the arm at a place, above the armhole as at it.
func (a Arm) round(at float64) float64 {
	for i := len(a.At) - 1; i > 0; i-- {
		if at <= a.At[i] {
			return a.Girth[i]
		}
		if at < a.At[i-1] {
			t := (at - a.At[i]) / (a.At[i-1] - a.At[i])
			return a.Girth[i] + (a.Girth[i-1]-a.Girth[i])*t
		}
	}
	return a.Girth[0]
}

// squeezed is the girth of the place that passes worst when every frill lies down toward the shoulder, and what it must
// pass: a circle that holds the arm's section and the net over it.
func (s Sleeve) squeezed(p Puff, a Arm, o Options) (bundle, pass float64) {
	worst := math.Inf(-1)
	for _, here := range p.Frills {
		g := a.round(here.At)
		area := g * g / (4 * math.Pi)
		for _, f := range p.Frills {
			if f.At >= here.At && f.At-f.Deep <= here.At {
				area += 2 * netThickness * f.Length / netPacked
			}
		}
		b, q := 2*math.Sqrt(math.Pi*area), s.passes(here.At, o)
		if b-q > worst {
			worst, bundle, pass = b-q, b, q
		}
	}
	return bundle, pass
}
