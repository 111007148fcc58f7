package skirt

import (
	"fmt"
	"slices"

	"understructure/geometry/measure"
)

// tableFile, rowFile, rangeFile and evidenceFile are a table as it stands in its file.
type tableFile struct {
	Unit string    `json:"unit"`
	Rows []rowFile `json:"rows"`
}

type rowFile struct {
	From       int            `json:"from"`
	To         int            `json:"to"`
	Wearer     string         `json:"wearer"`
	Garment    string         `json:"garment"`
	Waist      string         `json:"waist"`
	Shoulder   string         `json:"shoulder"`
	Fullness   string         `json:"fullness"`
	Front      string         `json:"front"`
	Side       string         `json:"side"`
	Back       string         `json:"back"`
	Reach      []float64      `json:"reach"`
	Spread     float64        `json:"spread"`
	Hem        *rangeFile     `json:"hem"`
	BackLonger *rangeFile     `json:"back_longer"`
	Cut        string         `json:"cut"`
	Hold       []string       `json:"hold"`
	Source     string         `json:"source"`
	Confidence string         `json:"confidence"`
	Evidence   []evidenceFile `json:"evidence"`
}

type rangeFile struct {
	Least      float64 `json:"least"`
	Most       float64 `json:"most"`
	Confidence string  `json:"confidence"`
	Source     string  `json:"source"`
}

type evidenceFile struct {
	What       string  `json:"what"`
	Value      float64 `json:"value"`
	Count      float64 `json:"count"`
	Source     string  `json:"source"`
	Confidence string  `json:"confidence"`
}

// The years that a table may speak of. Earlier and later a skirt is no matter of this program.
const firstYear, lastYear = 1500, 2100

// The ranges of lengths in a table, mm: of a back that may also be shorter, and of anything measured.
const mostBackLonger, mostShorter, mostValue = 8000.0, 500.0, 12000.0

// row checks a row of the file; the error begins with the place in the row.
func (r rowFile) row(mm float64) (Row, error) {
	out := Row{
		From: r.From, To: r.To, Wearer: measure.Wearer(r.Wearer), Garment: r.Garment, Waist: r.Waist, Shoulder: r.Shoulder,
		Fullness: r.Fullness, Cut: Cut(r.Cut), Source: r.Source, Confidence: Confidence(r.Confidence),
	}
	switch {
	case r.From < firstYear || r.From > lastYear:
		return Row{}, fmt.Errorf(".from: %d, want a year from %d to %d", r.From, firstYear, lastYear)
	case r.To < r.From || r.To > lastYear:
		return Row{}, fmt.Errorf(".to: %d, want a year from %d to %d", r.To, r.From, lastYear)
	case !slices.Contains([]measure.Wearer{measure.Woman, measure.Man, measure.Child}, out.Wearer):
		return Row{}, fmt.Errorf(".wearer: %q, want \"woman\", \"man\" or \"child\"", r.Wearer)
	case r.Garment == "":
		return Row{}, fmt.Errorf(".garment: missing, want a word such as \"dress\"")
	case out.Cut != "" && out.Cut != Gored && out.Cut != Straight:
		return Row{}, fmt.Errorf(".cut: %q, want %q, %q or nothing", r.Cut, Gored, Straight)
	}
	if err := known("", r.Source, r.Confidence); err != nil {
		return Row{}, err
	}
	for i, h := range r.Hold {
		if !slices.Contains(holds, Hold(h)) {
			return Row{}, fmt.Errorf(".hold[%d]: %q, want one of %q", i, h, holds)
		}
		out.Hold = append(out.Hold, Hold(h))
	}
	return out, r.numbers(&out, mm)
}

// numbers fills in the silhouette, the ranges and the evidence.
func (r rowFile) numbers(out *Row, mm float64) (err error) {
	s := &out.Silhouette
	for _, p := range []struct {
		name, word string
		to         *Profile
	}{{"front", r.Front, &s.Front}, {"side", r.Side, &s.Side}, {"back", r.Back, &s.Back}} {
		var ok bool
		if *p.to, ok = ProfileNamed(p.word); !ok {
			return fmt.Errorf(".%s: %q, want %q, %q, %q or %q", p.name, p.word, cone, dome, bell, shelf)
		}
	}
	if len(r.Reach) != 3 {
		return fmt.Errorf(".reach: %d numbers, want three: front, side, back", len(r.Reach))
	}
	s.Reach, s.Spread = Reach{r.Reach[0], r.Reach[1], r.Reach[2]}, r.Spread
	for i, v := range r.Reach {
		if !(v >= leastReach && v <= mostReach) {
			return fmt.Errorf(".reach[%d]: %g, want %g to %g", i, v, leastReach, mostReach)
		}
	}
	if !(s.Spread >= leastSpread && s.Spread <= 1) {
		return fmt.Errorf(".spread: %g, want %g to 1", r.Spread, leastSpread)
	}
	if out.HemGirth, err = r.Hem.within(".hem", mm, leastHem, mostHem); err != nil {
		return err
	}
	if h := out.HemGirth; h != nil {
		s.Hem = (h.Least + h.Most) / 2
	}
	if out.BackLonger, err = r.BackLonger.within(".back_longer", mm, -mostShorter, mostBackLonger); err != nil {
		return err
	}
	out.Evidence, err = evidence(r.Evidence, mm)
	return err
}

func (r *rangeFile) within(name string, mm, least, most float64) (*Range, error) {
	if r == nil {
		return nil, nil
	}
	out := Range{r.Least * mm, r.Most * mm, Confidence(r.Confidence), r.Source}
	switch {
	case !(out.Least >= least && out.Least <= most):
		return nil, fmt.Errorf("%s.least: %g, want %g to %g", name, r.Least, least/mm, most/mm)
	case !(out.Most >= out.Least && out.Most <= most):
		return nil, fmt.Errorf("%s.most: %g, want %g to %g", name, r.Most, r.Least, most/mm)
	}
	return &out, known(name, r.Source, r.Confidence)
}

func evidence(all []evidenceFile, mm float64) ([]Evidence, error) {
	var out []Evidence
	for i, e := range all {
		name := fmt.Sprintf(".evidence[%d]", i)
		switch {
		case e.What == "":
			return nil, fmt.Errorf("%s.what: missing, want words", name)
		case !(e.Value >= 0 && e.Value*mm <= mostValue):
			return nil, fmt.Errorf("%s.value: %g, want 0 to %g", name, e.Value, mostValue/mm)
		case !(e.Count >= 0 && e.Count <= 1000):
			return nil, fmt.Errorf("%s.count: %g, want 0 to 1000", name, e.Count)
		}
		if err := known(name, e.Source, e.Confidence); err != nil {
			return nil, err
		}
		out = append(out, Evidence{e.What, e.Value * mm, e.Count, e.Source, Confidence(e.Confidence)})
	}
	return out, nil
}

// known asks for a source and a confidence.
func known(name, source, confidence string) error {
	if source == "" {
		return fmt.Errorf("%s.source: missing, want where the number comes from, or \"from memory\"", name)
	}
	if c := Confidence(confidence); c != Read && c != Secondary && c != FromMemory {
		return fmt.Errorf("%s.confidence: %q, want %q, %q or %q", name, confidence, Read, Secondary, FromMemory)
	}
	return nil
}
