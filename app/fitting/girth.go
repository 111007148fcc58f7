package fitting

import (
	"math"
	"slices"

	"understructure/app/record"
	"understructure/geometry/measure"
)

// wholeSheets is how far a built girth may lie below the wanted one: what whole sheets leave, mm.
const wholeSheets = 5.0

// contradiction is how many tape errors fitting and tape may lie apart without a word: beyond three
// standard deviations lies one reading in 370 (normal distribution).
const contradiction = 3

// tape is what is read of one level; keys that no sheet has are empty.
type tape struct {
	level                              measure.Level
	girth, front, left, breadth, depth measure.Key
}

var tapes = []tape{
	{measure.NeckBase, measure.NeckBaseGirth, "", "", "", ""},
	{measure.Bust, measure.BustGirth, measure.BustFrontArc, measure.BustLeftArc, measure.BustBreadth, measure.BustDepth},
	{measure.Underbust, measure.UnderbustGirth, "", "", "", ""},
	{measure.Waist, measure.WaistGirth, measure.WaistFrontArc, measure.WaistLeftArc, measure.WaistBreadth, measure.WaistDepth},
	{measure.HighHip, measure.HighHipGirth, "", "", "", ""},
	{measure.Hip, measure.HipGirth, measure.HipFrontArc, measure.HipLeftArc, measure.HipBreadth, measure.HipDepth},
}

// at is the tape of a level; its girth is empty at a level that no tape reads.
func at(l measure.Level) tape {
	i := slices.IndexFunc(tapes, func(t tape) bool { return t.level == l })
	if i < 0 {
		return tape{level: l}
	}
	return tapes[i]
}

// finding is all that one fitting says of the girth of one level.
type finding struct {
	built *float64 // tape girth of the mount tried on; nil where it was not noted
	moves moves    // by how much the mount is to change
	pulls bool     // somewhere it is too large
	slack bool     // somewhere it is too small
}

// found gathers what was seen of the girth at a level; false where that is nothing.
func found(l measure.Level, seen []record.Seen, ease float64) (finding, bool) {
	var f finding
	for _, s := range seen {
		if s.Level != l || !record.OfGirth(s.What) {
			continue
		}
		if f.built == nil {
			f.built = s.Built
		}
		switch s.What {
		case record.FailsToMeet:
			f.pulls = true
			f.moves.add("", -ease) // which is wanted all round, wherever it fails to meet
			f.moves.add(s.Where, -amount(s, unsaid))
		case record.Tight:
			f.pulls = true
			f.moves.add(s.Where, -amount(s, unsaid))
		case record.Slack:
			f.slack = true
			f.moves.add(s.Where, amount(s, unsaid/2))
		}
	}
	return f, f.pulls || f.slack
}

// girth applies what was seen of the girth at a level.
func (f *fitter) girth(l measure.Level, seen []record.Seen) {
	before := f.ease(l)
	now, ok := found(l, seen, before)
	if !ok {
		return
	}
	inside, known := f.inside(l)
	if !known {
		return // there is no figure, and the pipeline says why
	}
	wanted := now.moves.sum() + inside - before
	if now.built != nil {
		wanted = now.moves.sum() + *now.built
	}
	if now.pulls {
		f.unfill(l)
	}
	if t, ok := f.read(f.taken, l); ok && now.pulls && !now.slack {
		wanted = math.Min(wanted, t-f.ease(l))
	}
	f.become(l, inside, wanted+f.ease(l), now)
	f.compare(l, wanted)
}

// inside is the garment's girth at a level as the fittings before have left it: as set by hand, or as
// read, or as the figure has it; false where there is no figure.
func (f *fitter) inside(l measure.Level) (float64, bool) {
	if v := f.out.Record.Mount.Shape[l].Girth; v != nil {
		return *v, true
	}
	if v, ok := f.read(f.out.Record.Garment, l); ok {
		return v, true
	}
	t, ok := f.figure()
	return t.At(l).Girth, ok
}

// read is what the tape says of a garment at a level: of bodice and skirt the smaller.
func (f *fitter) read(g record.Garment, l measure.Level) (float64, bool) {
	k := at(l).girth
	v, ok := g.Bodice[k]
	if s, both := g.Skirt[k]; ok && both {
		v = math.Min(v, s)
	}
	return v, ok
}

// become gives the garment at a level its girth inside: as a reading where a tape goes, else as set by
// hand. A girth set by hand since the fitting stays.
func (f *fitter) become(l measure.Level, from, girth float64, now finding) {
	t, hand, path := at(l), f.out.Record.Mount.Shape[l], shapePath(l, "girth")
	if t.girth != "" {
		f.reread(t.girth, girth)
		path = f.bodice().path + string(t.girth)
	}
	if f.setSince(l, now) && girth > *hand.Girth {
		f.say("fitting-by-hand", l, path, girth-*hand.Girth,
			"At the %s the girth inside was set to %.0f mm by hand; by %s it could be %.0f mm. What was set by hand stays.", l, *hand.Girth, f.when, girth)
		return
	}
	f.reshape(l, t, hand, from, girth, now.moves)
	f.say("fitting-girth", l, path, math.Abs(girth-from),
		"At the %s %s counts: the garment is %.0f mm round inside, where %.0f mm stood before.", l, f.when, girth, from)
}

// setSince reports whether the girth was set by hand after the mount was tried on: that one had another.
func (f *fitter) setSince(l measure.Level, now finding) bool {
	hand := f.out.Record.Mount.Shape[l].Girth
	return hand != nil && hand == f.byHand[l].Girth && now.built != nil && math.Abs(*now.built-(*hand-f.ease(l))) > wholeSheets
}

// reread gives the readings of a girth the values with which the garment has it inside. A skirt's moves with
// the bodice's: the waist as they are worn together, the hip only where it is the smaller, for a
// skirt's fullness there is no contradiction.
func (f *fitter) reread(k measure.Key, girth float64) {
	b, taken := f.out.Record.Garment.Bodice[k]
	s, both := f.out.Record.Garment.Skirt[k]
	switch {
	case taken && both && (k == measure.WaistGirth || s <= b):
		less := math.Min(s, b)
		f.set(f.bodice(), k, b+girth-less)
		f.set(f.skirt(), k, s+girth-less)
	default:
		f.set(f.bodice(), k, girth)
	}
}
