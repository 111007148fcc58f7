package fit

import (
	"fmt"
	"math"

	"understructure/geometry/measure"
)

// What a person carries alone, kg, and the heaviest garment that is published of the usual kind, kg: guideline weight
// for women at waist height in HSE guidance L23 (from memory); a velvet dress of 2.7 kg and a fur dolman of 3.6 (New York
// Times, 1883) lie below 5.
const aloneMost, garmentMost = 16.0, 5.0

// offAxis is how far a centre of gravity may lie from over the base's middle without a word, mm. From memory.
const offAxis = 20.0

// Cautions says what to heed about a mount on a base, and always that the check is no promise.
func (b Balance) Cautions(base Base, garment float64) []measure.Notice {
	var out []measure.Notice
	say := func(code string, amount float64, format string, values ...any) {
		out = append(out, measure.Notice{Code: code, Amount: amount, Message: fmt.Sprintf(format, values...)})
	}
	c := b.On(base)
	if c.ShortBy > 0 {
		say("may-tip", c.ShortBy, "On this base the mount may tip: its edge lies %.0f mm too near. Take a round base of %.0f mm radius or a square one of %.0f mm%s. Do not leave it standing free before that.",
			c.ShortBy, math.Ceil(b.Round()), math.Ceil(b.Square()), ballastWords(c))
	}
	if b.Aside() > offAxis {
		say("off-balance", b.Aside(), "The weight lies %.0f mm %s the middle of the base. Set the base under the weight, or turn its longer side that way.", b.Aside(), b.side())
	}
	if b.Mass > aloneMost {
		say("heavy", 0, "Mount and garment weigh about %.0f kg: two people lift it, and never by the garment.", b.Mass)
	}
	if garment > garmentMost {
		say("heavy-garment", 0, "The garment weighs %.1f kg, more than most: let its weight hang from waist and shoulders together, and dress it with two people.", garment)
	}
	say("standing-self-check", 0, "How it stands was reckoned after IEC 60335-1 (floor leaning by 10 degrees) and IEC 62368-1 (push of 13 %% of the weight at up to 1.5 m), which are not written for dressed figures. It is no promise: local rules, insurers and the owner of the building decide. Keep visitors at arm's length or fix the base.")
	return out
}

func ballastWords(c Check) string {
	if math.IsInf(c.Ballast, 1) || c.Ballast <= 0 {
		return ""
	}
	return fmt.Sprintf(", or put %.1f kg low in the middle of this one", math.Ceil(c.Ballast*10)/10)
}

// side is where the centre of gravity lies.
func (b Balance) side() string {
	switch {
	case math.Abs(b.At.Y) >= math.Abs(b.At.X) && b.At.Y < 0:
		return "behind"
	case math.Abs(b.At.Y) >= math.Abs(b.At.X):
		return "before"
	case b.At.X < 0:
		return "to the left of"
	}
	return "to the right of"
}
