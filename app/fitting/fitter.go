package fitting

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"understructure/app/record"
	"understructure/geometry/measure"
	"understructure/geometry/torso"
	"understructure/patterns/plan"
)

// unsaid is what a finding without an amount counts for, mm: what the eye sees first of a gap or a
// pull. What makes a mount larger counts for half of it, to err small. Common practice, no published source.
const unsaid = 10.0

// fitter applies fittings one after the other.
type fitter struct {
	out    Applied
	taken  record.Garment // as the tape had it
	byHand measure.Shape  // as the maker set it
	stock  record.Stock
	figure func() (torso.Torso, bool) // that of the tape; false where it makes none
	source string                     // the fitting at hand
	when   string                     // the same in a sentence
}

func newFitter(r record.Record) *fitter {
	f := &fitter{taken: r.Garment, byHand: r.Mount.Shape, figure: figureOf(r), out: Applied{Record: r, Values: map[string]plan.Value{}}}
	f.stock, _ = r.Mount.Stocked(r.Garment.Strength)
	c := &f.out.Record
	c.Garment.Bodice, c.Garment.Skirt = maps.Clone(r.Garment.Bodice), maps.Clone(r.Garment.Skirt)
	c.Mount.Shape, c.Mount.Ease.ByLevel = maps.Clone(r.Mount.Shape), maps.Clone(r.Mount.Ease.ByLevel)
	return f
}

// figureOf draws the figure of a record when it is first asked for.
func figureOf(r record.Record) func() (torso.Torso, bool) {
	var t torso.Torso
	var drawn, ok bool
	return func() (torso.Torso, bool) {
		if !drawn {
			bodice, _ := measure.TrustedSkirt(measure.Trusted(r.Garment.Bodice), r.Garment.Skirt)
			var err error
			t, err = torso.Build(bodice, r.Object.Wearer, r.Object.Year, r.Mount.Shape)
			drawn, ok = true, err == nil
		}
		return t, ok
	}
}

// apply applies one fitting: girths first, since what is limp is filled out of what they leave.
func (f *fitter) apply(each record.Fitting) {
	f.source, f.when = "fitting", "a fitting without a date"
	if each.On != "" {
		f.source, f.when = "fitting "+each.On, "the fitting of "+each.On
	}
	for _, l := range measure.Levels {
		f.girth(l, each.Seen)
	}
	for _, s := range each.Seen {
		switch s.What {
		case record.TooSquare, record.TooSloping:
			f.shoulder(s)
		case record.HemShort, record.HemLong:
			f.hem(s)
		case record.Limp:
			f.limp(s)
		}
	}
}

// amount is what was seen of s, or what stands for it.
func amount(s record.Seen, otherwise float64) float64 {
	if s.By != nil {
		return *s.By
	}
	return otherwise
}

// sheet is one of the garment's sheets: where it stands and which readings it may hold.
type sheet struct {
	path   string
	values *measure.Sheet
	table  []measure.Measure
}

func (f *fitter) bodice() sheet {
	return sheet{"garment.bodice.", &f.out.Record.Garment.Bodice, measure.Keys}
}

func (f *fitter) skirt() sheet {
	return sheet{"garment.skirt.", &f.out.Record.Garment.Skirt, measure.Skirt}
}

// set gives a reading the value that the fitting gives it, within what a record can hold.
func (f *fitter) set(s sheet, k measure.Key, v float64) {
	m, _ := measure.Find(s.table, k)
	within := f.within(v, record.Limit{Least: m.Min, Most: m.Max}, "", s.path+string(k), m.Label)
	if *s.values == nil {
		*s.values = measure.Sheet{}
	}
	(*s.values)[k] = within
	f.gave(s.path+string(k), within)
}

// gave notes a value that the fitting at hand gave.
func (f *fitter) gave(path string, v float64) {
	f.out.Values[path] = plan.Value{Value: v, Source: f.source}
}

// within keeps a value in its limits, and says so where it would leave them.
func (f *fitter) within(v float64, l record.Limit, at measure.Level, path, label string) float64 {
	w := min(max(v, l.Least), l.Most)
	if w != v {
		f.say("fitting-limit", at, path, math.Abs(v-w), "By %s the %s would be %.0f, which no record can hold; %.0f is used. Look at the fitting again.", f.when, label, v, w)
	}
	return w
}

// say adds a notice; of two of one kind about one thing the later counts.
func (f *fitter) say(code string, l measure.Level, path string, amount float64, format string, args ...any) {
	n := measure.Notice{Code: code, Level: l, Key: measure.Key(path), Amount: math.Round(amount*10) / 10, Message: fmt.Sprintf(format, args...)}
	ns := f.out.Notices
	f.out.Notices = append(slices.DeleteFunc(ns, func(o measure.Notice) bool {
		return o.Code == code && o.Level == l && o.Key == n.Key
	}), n)
}
