package ui

import (
	"errors"
	"strings"

	"fyne.io/fyne/v2/lang"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
	"understructure/geometry/measure"
)

// hand is the fitting in hand: one of the record, or one that nothing is noted of yet.
type hand struct {
	at          int            // its place in the record; the number of fittings for a new one
	new         record.Fitting // what is typed of a new one
	seen        int            // what is being corrected of it, −1 for nothing
	path, title string         // of the record that it was last shown for
	shown       bool
}

// settleHand begins a new fitting where the record is another, or where the one in hand was taken back.
func (p *fittingPlace) settleHand(r record.Record) {
	path, title := p.doc.Path(), p.doc.Title()
	if h := p.hand; h.shown && h.path == path && h.title == title && h.at <= len(r.Fittings) {
		if h.seen >= len(p.inHand().Seen) {
			p.hand.seen = -1
		}
		return
	}
	p.hand = hand{at: len(r.Fittings), new: p.fresh(r), seen: -1, path: path, title: title, shown: true}
	p.form.Clear()
}

// fresh is a fitting of today, by whoever did the last one.
func (p *fittingPlace) fresh(r record.Record) record.Fitting {
	f := record.Fitting{On: p.today()}
	if n := len(r.Fittings); n > 0 {
		f.By = r.Fittings[n-1].By
	}
	return f
}

// inHand is the fitting in hand as it now is.
func (p *fittingPlace) inHand() record.Fitting {
	if fs := p.doc.Record().Fittings; p.hand.at < len(fs) {
		return fs[p.hand.at].Clone()
	}
	return p.hand.new.Clone()
}

// put takes a change of the fitting in hand. A new one comes into the record when there is something to say of it.
func (p *fittingPlace) put(f record.Fitting) error {
	switch {
	case p.hand.at < len(p.doc.Record().Fittings):
		return p.doc.ChangeFitting(p.hand.at, f)
	case len(f.Seen) > 0 || strings.TrimSpace(f.Note) != "":
		return p.doc.AddFitting(f)
	}
	if err := f.Check(p.doc.Record().Unit); err != nil {
		return err
	}
	p.hand.new = f.Clone()
	p.show()
	return nil
}

// change makes what takes a typed line into the fitting in hand.
func (p *fittingPlace) change(take func(f *record.Fitting, s string)) func(string) error {
	return func(s string) error {
		f := p.inHand()
		take(&f, strings.TrimSpace(s))
		return bare(p.put(f))
	}
}

// bare is a refusal without its path, for the place beside the value.
func bare(err error) error {
	var no *record.Refusal
	if !errors.As(err, &no) {
		return err
	}
	short := *no
	short.Path = ""
	return &short
}

// open takes a fitting in hand, by its place in the record; beyond the last it is a new one.
func (p *fittingPlace) open(i int) {
	p.doc.Settle()
	r := p.doc.Record()
	p.hand.at, p.hand.seen, p.hand.new = i, -1, p.fresh(r)
	p.form.Clear()
	p.show()
}

// remove takes a fitting out of the record.
func (p *fittingPlace) remove(i int) {
	if p.hand.at > i {
		p.hand.at--
	} else if p.hand.at == i {
		p.hand.shown = false
	}
	if err := p.doc.RemoveFitting(i); err != nil {
		p.doc.Failed(err)
	}
}

// correct takes what was seen into the form again.
func (p *fittingPlace) correct(i int) {
	s := p.inHand().Seen[i]
	n := control.Noted{What: s.What, Level: string(s.Level), Where: s.Where}
	if s.By != nil {
		n.By = document.Length.Format(*s.By, p.doc.Record().Unit)
	}
	p.hand.seen = i
	p.form.Edit(n)
	p.show()
}

// forget takes out what was seen.
func (p *fittingPlace) forget(i int) {
	f := p.inHand()
	f.Seen = append(f.Seen[:i], f.Seen[i+1:]...)
	p.hand.seen = -1
	p.form.Clear()
	p.doc.Settle()
	if err := p.put(f); err != nil {
		p.doc.Failed(err)
	}
	p.doc.Settle()
}

// noted takes what was said in the form into the fitting in hand.
func (p *fittingPlace) noted(n control.Noted) error {
	if n.What == "" {
		return errors.New(lang.L("choose what was seen"))
	}
	by, err := document.Length.Parse(n.By, p.doc.Record().Unit)
	if err != nil {
		return err
	}
	f := p.inHand()
	s := record.Seen{What: n.What, Level: measure.Level(n.Level), Where: n.Where, By: by}
	if record.OfGirth(s.What) {
		s.Built = p.tried(f, s.Level)
	}
	if i := p.hand.seen; i >= 0 {
		f.Seen[i] = s
	} else {
		f.Seen = append(f.Seen, s)
	}
	p.doc.Settle()
	corrected := p.hand.seen
	p.hand.seen = -1
	if err := p.put(f); err != nil {
		p.hand.seen = corrected
		return bare(err)
	}
	p.doc.Settle()
	return nil
}

// tried is the girth at a level of the mount that was tried on at a fitting: as noted there already, else
// as the mount before it is built; nil where that is not known.
func (p *fittingPlace) tried(f record.Fitting, l measure.Level) *float64 {
	for _, s := range f.Seen {
		if s.Level == l && s.Built != nil {
			return s.Built
		}
	}
	return p.before.built(without(p.doc.Record(), p.hand.at), l)
}
