package skirt

import (
	"fmt"

	"understructure/geometry/measure"
	"understructure/geometry/section"
)

// PracticeSource stands beside every Practice.
const PracticeSource = "common practice, no published source"

// Practice is what those who mount dresses look for in the skirts of some years.
type Practice struct {
	From, To int
	Says     string
	holds    func(Skirt, measure.Sheet) (Finding, string)
}

// Finding is whether a skirt does what a practice says.
type Finding string

// The three findings.
const (
	Agrees  Finding = "agrees"
	Differs Finding = "differs"
	Unknown Finding = "cannot be told"
)

// Observation is a practice and what this skirt does.
type Observation struct {
	Practice
	Source  string // PracticeSource
	Finding Finding
	Seen    string // in words
}

// practices in order of years; the shares in them are ours.
var practices = []Practice{
	{1850, 1859, "The fullness goes all the way round, and the shoulder droops.", evenAndDrooping},
	{1865, 1869, "The fullness goes slightly to the back.", func(s Skirt, _ measure.Sheet) (Finding, string) { return s.behind(1.05, 1.6) }},
	{1870, 1879, "There is a bustle, and the fabric is drawn right back, often into a train.", drawnBack},
	{1880, 1889, "The front is straight, and the drapery is at the top.", straightFront},
}

// Practices says how a skirt stands to common practice in its year. The bodice adds the
// shoulder, where it was taken; it may be nil.
func Practices(year int, s Skirt, bodice measure.Sheet) []Observation {
	var out []Observation
	for _, p := range practices {
		if year < p.From || year > p.To {
			continue
		}
		o := Observation{Practice: p, Source: PracticeSource}
		o.Finding, o.Seen = p.holds(s, bodice)
		out = append(out, o)
	}
	return out
}

// behind compares how much farther the hem reaches behind than in front.
func (s Skirt) behind(least, most float64) (Finding, string) {
	ratio := s.Back.Reach() / s.Front.Reach()
	seen := fmt.Sprintf("the hem reaches %.2f times as far behind as in front", ratio)
	if ratio < least || ratio > most {
		return Differs, seen
	}
	return Agrees, seen
}

// drooping is the least slope of a shoulder that droops, degrees: the mean of 600 women of today is 24.3
// (landmarks in the R package Anthropometry).
const drooping = 25.0

func evenAndDrooping(s Skirt, bodice measure.Sheet) (Finding, string) {
	found, seen := s.behind(1/1.25, 1.25)
	slope, ok := bodice[measure.ShoulderSlope]
	switch {
	case !ok:
		return found, seen + "; the shoulder's slope was not taken"
	case slope < drooping:
		return Differs, fmt.Sprintf("%s; the shoulder slopes by %.0f degrees only", seen, slope)
	}
	return found, fmt.Sprintf("%s; the shoulder slopes by %.0f degrees", seen, slope)
}

func drawnBack(s Skirt, _ measure.Sheet) (Finding, string) {
	found, seen := s.behind(1.25, 100)
	if s.Back.Train > readable {
		return found, fmt.Sprintf("%s, with %.0f mm of train", seen, s.Back.Train)
	}
	return found, seen + ", without a train"
}

// straight is the most that a straight front leans out, as a part of its length.
const straight = 0.15

func straightFront(s Skirt, _ measure.Sheet) (Finding, string) {
	out := s.Front.Foot - s.body.at(s.Front.Drop)[section.Front]
	seen := fmt.Sprintf("the front leans out by %.0f mm; where the drapery lies is not measured", out)
	if out > straight*s.Front.Length {
		return Differs, seen
	}
	return Agrees, seen
}
