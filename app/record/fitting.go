package record

import (
	"fmt"
	"slices"

	"understructure/geometry/measure"
)

// Fitting is one trial of the garment, or of its toile, on the mount: when (yyyy-mm-dd, "" where
// not noted), by whom, and what was seen. The note may have several lines.
type Fitting struct {
	On, By, Note string
	Seen         []Seen
}

// Seen is one thing that was seen at a fitting. A length that is nil was not taken.
type Seen struct {
	What  string        // one of Faults
	Level measure.Level // "" for a hem, and where the level says nothing
	Where string        // one of Wheres, "" for all round
	By    *float64      // how much, never negative
	Built *float64      // the tape girth, at that level, of the mount that was tried on
}

// What can be seen at a fitting. The first three are about the girth of a level.
const (
	FailsToMeet = "fails to meet"
	Tight       = "tight"
	Slack       = "slack"
	TooSquare   = "too square"
	TooSloping  = "too sloping"
	HemShort    = "hem short"
	HemLong     = "hem long"
	Limp        = "limp"
)

// OfGirth reports whether what was seen is about the girth of a level, which then must be named.
func OfGirth(what string) bool { return what == FailsToMeet || what == Tight || what == Slack }

// OfHem reports whether what was seen is about the hem, which has no level.
func OfHem(what string) bool { return what == HemShort || what == HemLong }

// Check says, as Decode would, why f cannot stand in a record of the given unit; nil where it can.
func (f Fitting) Check(unit string) error {
	return check(unit, func(d *decoder, e encoder) { d.fitting("fitting", e.fitting(f)) })
}

// Clone returns a copy whose list of things seen can be changed.
func (f Fitting) Clone() Fitting {
	f.Seen = slices.Clip(slices.Clone(f.Seen))
	return f
}

func (d *decoder) fitting(path string, n node) Fitting {
	var f Fitting
	d.object(path, n,
		field{"on", blank(d.date(&f.On))},
		field{"by", d.text(&f.By, longestName)},
		field{"note", d.lines(&f.Note, longestNote)},
		field{"seen", items(d, &f.Seen, MostSeen, "things seen", d.seen)},
	)
	return f
}

func (d *decoder) seen(path string, n node) Seen {
	var s Seen
	d.object(path, n,
		field{"what", d.word(&s.What, Faults)},
		field{"level", blank(d.word((*string)(&s.Level), levels()))},
		field{"where", blank(d.word(&s.Where, Wheres))},
		field{"by", d.optional(&s.By, d.lengths(), SeenLimit)},
		field{"built", d.optional(&s.Built, d.lengths(), ShapeGirthLimit)},
	)
	d.must(path, "what", s.What, Faults)
	if OfGirth(s.What) {
		d.must(path, "level", string(s.Level), levels())
	}
	if OfHem(s.What) && s.Level != "" {
		d.refuse(join(path, "level"), fmt.Sprintf("%q", s.Level), "is not possible for a hem", "no level")
	}
	return s
}

func (e encoder) fitting(f Fitting) node {
	var o object
	o.put("on", f.On)
	o.put("by", f.By)
	o.put("note", f.Note)
	o.put("seen", listed(f.Seen, e.seen))
	return o
}

func (e encoder) seen(s Seen) node {
	var o object
	o.put("what", s.What)
	o.put("level", string(s.Level))
	o.put("where", s.Where)
	o.put("by", e.optional(s.By))
	o.put("built", e.optional(s.Built))
	return o
}

func levels() []string {
	var words []string
	for _, l := range measure.Levels {
		words = append(words, string(l))
	}
	return words
}
