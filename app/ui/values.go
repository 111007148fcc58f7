package ui

import (
	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
)

// values is a list of numbers of the record, each of which can be typed.
type values struct {
	doc    *document.Document
	list   *control.MeasureList
	fields func(record.Record) []document.Field
}

// newValues makes the list of the fields that a record has. They are looked up anew at each event,
// since they depend on the record.
func newValues(d *document.Document, fields func(record.Record) []document.Field) *values {
	v := &values{doc: d, list: control.NewMeasureList(), fields: fields}
	v.list.Read = func(key, text string) (*float64, error) { return v.field(key).Read(text, d.Record().Unit) }
	v.list.Write = func(key string, x float64) string { return v.field(key).Kind.Format(x, d.Record().Unit) }
	v.list.OnChanged = func(key string, x *float64) { d.Set(v.field(key), x) }
	v.list.OnReadings = v.several
	v.list.OnDone = d.Settle
	return v
}

// several takes two or more readings of one measure.
func (v *values) several(key string, all []float64) {
	if err := v.doc.SetReadings(v.field(key), all); err != nil {
		v.doc.Failed(err)
	}
}

// show brings the list to the record, and beside each value what the newest plan says of it.
func (v *values) show() { v.fill(sayings(v.doc)) }

// fill brings the list to the record, and beside each value what is said of it.
func (v *values) fill(s said) {
	r := v.doc.Record()
	v.list.Fill(s.measures(v.fields(r), r))
}

func (v *values) field(path string) document.Field {
	for _, f := range v.fields(v.doc.Record()) {
		if f.Path == path {
			return f
		}
	}
	panic("ui: no field " + path)
}

// fieldsOf returns what finds the fields of one place of the document.
func fieldsOf(name string) func(record.Record) []document.Field {
	return func(r record.Record) []document.Field {
		for _, p := range document.Places(r) {
			if p.Name == name {
				return p.Fields
			}
		}
		return nil
	}
}
