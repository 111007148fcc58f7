package skirt

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"understructure/geometry/curve"
	"understructure/geometry/measure"
	"understructure/geometry/section"
)

// Comparison sets a skirt beside the rows of a table, the likest first in each list. A list
// is empty where the readings it needs were not taken. It helps to date, and never decides.
type Comparison struct {
	Distribution []Match // by the lengths in front, at the sides and behind
	Hem          []Match // by the hem girth
	Together     []Match // by both
	Sentence     string  // both in words, with the evidence
}

// Match is how like a row the skirt is.
type Match struct {
	Row Row
	Off float64 // 0 is within what the row has; 1 is a difference that one would see
	Why string  // what was compared, with the evidence
}

// What one would see, ours: a back longer by 50 mm, a hem that reaches 20 % farther on one
// side, a hem girth a quarter larger. From memory.
const seenLength, seenReach, seenGirth = 50.0, 0.2, 0.25

// NoVerdict ends every comparison.
const NoVerdict = "This is a help to dating, never a verdict: single garments differ from their year, and many were altered."

// Compare sets a skirt beside the rows of one wearer's garment.
func (t Table) Compare(s Skirt, w measure.Wearer, garment string) Comparison {
	var c Comparison
	_, front := s.taken[measure.FrontLength]
	_, back := s.taken[measure.BackLength]
	hem, hemTaken := s.taken[measure.HemGirth]
	for _, r := range t.Of(w, garment) {
		lengths, girth := front && back, hemTaken && r.HemGirth != nil
		var d, h Match
		if lengths {
			d = s.distribution(r)
			c.Distribution = append(c.Distribution, d)
		}
		if girth {
			h = Match{r, outside(math.Log(hem), math.Log(r.HemGirth.Least), math.Log(r.HemGirth.Most)) / math.Log1p(seenGirth),
				fmt.Sprintf("hem %.0f mm; there %s%s", hem, r.HemGirth.words(), r.cite("hem"))}
			c.Hem = append(c.Hem, h)
		}
		if lengths && girth {
			c.Together = append(c.Together, Match{r, math.Hypot(d.Off, h.Off), d.Why + "; " + h.Why})
		}
	}
	for _, list := range [][]Match{c.Distribution, c.Hem, c.Together} {
		slices.SortStableFunc(list, likerFirst)
	}
	c.Sentence = c.words()
	return c
}

func (c Comparison) words() string {
	out := []string{
		likest("front/back distribution", "front and back length", c.Distribution),
		likest("hem girth", "hem girth", c.Hem),
	}
	if len(c.Together) > 0 {
		out = append(out, fmt.Sprintf("Both together fit %s best.", c.Together[0].Row.Years()))
	}
	return strings.Join(append(out, NoVerdict), " ")
}

// likerFirst puts the likest first, and of those alike the one whose hem was read.
func likerFirst(a, b Match) int {
	read := func(m Match) int {
		if m.Row.HemGirth != nil && m.Row.HemGirth.Confidence == Read {
			return 0
		}
		return 1
	}
	return cmp.Or(cmp.Compare(a.Off, b.Off), read(a)-read(b))
}

// nearly is how much farther off a row may be and still fit nearly as well.
const nearly = 0.25

func likest(what, needs string, list []Match) string {
	if len(list) == 0 {
		return fmt.Sprintf("The %s cannot be compared: the %s was not taken, or the table has none.", what, needs)
	}
	best := list[0]
	var also []string
	for _, m := range list[1:] {
		if m.Off <= best.Off+nearly {
			also = append(also, m.Row.Years())
		}
	}
	words := fmt.Sprintf("The %s fits %s best (%s).", what, best.Row.Years(), best.Why)
	if also != nil {
		words += fmt.Sprintf(" Nearly as well: %s.", strings.Join(also, ", "))
	}
	return words
}

// distribution compares how much longer the back is and, for a skirt without a train, how far
// it would reach all round if it were as wide as the row has it.
func (s Skirt) distribution(r Row) Match {
	longer := s.taken[measure.BackLength] - s.taken[measure.FrontLength]
	m := Match{Row: r}
	var why []string
	if r.BackLonger != nil {
		m.Off = outside(longer, r.BackLonger.Least, r.BackLonger.Most) / seenLength
		why = append(why, fmt.Sprintf("back %.0f mm longer than the front; there %s%s", longer, r.BackLonger.words(), r.cite("back longer", "front length", "back length")))
	}
	if got, ok := s.reachOn(r.Silhouette); ok && longer < trained {
		want := r.Silhouette.oval(got.Girth())
		off := 0.0
		for _, d := range [][2]float64{{got.Front, want.Front}, {got.Right, want.Right}, {got.Back, want.Back}} {
			off += math.Pow(math.Log(d[0]/d[1]), 2) / 3
		}
		m.Off = math.Hypot(m.Off, math.Sqrt(off)/seenReach)
		why = append(why, fmt.Sprintf("it would reach %.2f times as far behind as in front; there %.2f, %s", got.Back/got.Front, want.Back/want.Front, r.Confidence))
	}
	m.Why = strings.Join(why, "; ")
	return m
}

// reachOn is how far a level hem reaches, as a cone, when it is as wide as a silhouette has it.
func (s Skirt) reachOn(sil Silhouette) (Oval, bool) {
	hem, ok := s.taken[measure.HemGirth]
	if !ok {
		hem = sil.Hem
	}
	waist := Through(s.body.Waist)
	out := func(length, level float64) float64 { return math.Sqrt(math.Max(0, (length-level)*(length+level))) }
	at := func(level float64) Oval {
		side := out(s.lengths[section.Right], level)
		return Oval{waist.Right + side, waist.Left + side, waist.Front + out(s.lengths[section.Front], level), waist.Back + out(s.lengths[section.Back], level)}
	}
	shortest := min(s.lengths[section.Right], s.lengths[section.Front], s.lengths[section.Back])
	level, err := curve.Root(func(l float64) float64 { return at(l).Girth() - sil.Spread*hem }, leastDrop*shortest, shortest, 1e-6)
	if err != nil {
		level = shortest
	}
	return at(level), hem > 0
}

// outside is how far x lies beyond a range; 0 inside it.
func outside(x, least, most float64) float64 { return math.Max(0, math.Max(least-x, x-most)) }

func (r Range) words() string {
	if r.Least == r.Most {
		return fmt.Sprintf("%.0f mm, %s", r.Least, r.Confidence)
	}
	return fmt.Sprintf("%.0f to %.0f mm, %s", r.Least, r.Most, r.Confidence)
}

// cite lists what the row's evidence has on some things.
func (r Row) cite(what ...string) string {
	var out []string
	for _, e := range r.Evidence {
		if slices.Contains(what, e.What) {
			out = append(out, fmt.Sprintf("%s %.0f mm, %s (%s)", e.What, e.Value, e.Source, e.Confidence))
		}
	}
	if out == nil {
		return ""
	}
	return ": " + strings.Join(out, ", ")
}
