package document

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"understructure/app/record"
	"understructure/geometry/measure"
)

// Field is one number of a record that a person can change.
type Field struct {
	Path  string // key path in the record, such as "garment.bodice.waist_girth"
	Label string // in words
	Where string // where the tape goes, or what the value does: one sentence
	Group string // fields of one group are measured together
	Kind  Kind
	// Min and Max bound what is possible, in millimetres, degrees or kilograms.
	Min, Max float64
	allow    func(v *float64) error // says why a value cannot stand there now; nil allows any
	slot     func(*record.Record) slot
}

// slot is the place of one number in a record.
type slot interface {
	get() *float64
	set(*float64)
}

// Get returns the field's value in r, nil when it was not taken.
func (f Field) Get(r record.Record) *float64 {
	r = clone(r)
	return f.slot(&r).get()
}

// With returns r with the field set to v; r itself stays as it was.
func (f Field) With(r record.Record, v *float64) record.Record {
	r = clone(r)
	f.slot(&r).set(v)
	return r
}

// Read takes what a person wrote in the unit u; nil is not taken. The error is a short sentence for
// the place beside the value.
func (f Field) Read(text, u string) (*float64, error) {
	v, err := f.Kind.Parse(text, u)
	if err == nil && f.allow != nil {
		err = f.allow(v)
	}
	if err != nil || v == nil {
		return nil, err
	}
	if *v < f.Min || *v > f.Max {
		return nil, fmt.Errorf("%s: from %s to %s %s is possible", strings.TrimSpace(text),
			f.Kind.Format(f.Min, u), f.Kind.Format(f.Max, u), f.Kind.Word(u))
	}
	return v, nil
}

// clone copies whatever a slot may write to. Pointers to numbers and lists of readings are
// replaced, never written through.
func clone(r record.Record) record.Record {
	g := &r.Garment
	g.Bodice, g.Skirt, g.Sleeve = clonedSheet(g.Bodice), clonedSheet(g.Skirt), clonedSheet(g.Sleeve)
	g.Readings.Bodice, g.Readings.Skirt, g.Readings.Sleeve = maps.Clone(g.Readings.Bodice), maps.Clone(g.Readings.Skirt), maps.Clone(g.Readings.Sleeve)
	if r.Form != nil {
		form := *r.Form
		form.Bodice, form.Readings = clonedSheet(form.Bodice), maps.Clone(form.Readings)
		r.Form = &form
	}
	if r.Mount.Plank != nil {
		plank := *r.Mount.Plank
		r.Mount.Plank = &plank
	}
	r.Mount.Wadding = slices.Clone(r.Mount.Wadding)
	r.Mount.Ease.ByLevel = maps.Clone(r.Mount.Ease.ByLevel)
	r.Mount.Shape = maps.Clone(r.Mount.Shape)
	r.Fittings, r.Photographs = slices.Clone(r.Fittings), slices.Clone(r.Photographs)
	return r
}

func clonedSheet(s measure.Sheet) measure.Sheet {
	if s == nil {
		return measure.Sheet{}
	}
	return maps.Clone(s)
}

type inPointer struct{ at **float64 }

func (p inPointer) get() *float64  { return *p.at }
func (p inPointer) set(v *float64) { *p.at = v }
