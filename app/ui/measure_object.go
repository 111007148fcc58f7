package ui

import (
	"strings"

	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
)

// object is what is known of the garment beside its measurements, folded away once it has a name.
type object struct {
	doc     *document.Document
	texts   []*text
	choices []*choice
	fold    *control.Fold
	path    string // of the record that it was last shown for
	title   string
}

func newObject(d *document.Document) *object {
	o := &object{doc: d}
	box := container.NewVBox()
	for _, t := range document.ObjectTexts() {
		row := newText(t, d)
		o.texts = append(o.texts, row)
		box.Add(row.row)
	}
	o.choices = []*choice{
		newChoice("wearer", "object.wearer", record.Wearers, func(r *record.Record) *string { return (*string)(&r.Object.Wearer) }, d),
		newChoice("side of the cloth", "taken.side", record.SidesOf, func(r *record.Record) *string { return &r.Taken.Side }, d),
		newChoice("strength of the cloth", "garment.strength", record.Strengths, func(r *record.Record) *string { return &r.Garment.Strength }, d),
	}
	for _, c := range o.choices {
		box.Add(c.row)
	}
	o.fold = control.NewFold(lang.L("Object"), box)
	return o
}

// show brings it to the record; a record that is newly open is unfolded where it has no name.
func (o *object) show() {
	r, said := o.doc.Record(), sayings(o.doc)
	for _, t := range o.texts {
		t.show(r)
	}
	for _, c := range o.choices {
		c.show(r, said.words[c.path])
	}
	if path, title := o.doc.Path(), o.doc.Title(); path != o.path || title != o.title {
		o.path, o.title = path, title
		o.fold.Fold(strings.TrimSpace(r.Object.Title+r.Object.Number) != "")
	}
}

// text is one line of the record that is typed.
type text struct {
	document.Text
	row *control.TextRow
}

func newText(t document.Text, d *document.Document) *text {
	row := control.NewTextRow(lang.L(t.Label), t.Hint)
	row.OnChanged = func(s string) error { return d.SetText(t, s) }
	row.OnDone = d.Settle
	return &text{t, row}
}

func (t *text) show(r record.Record) { t.row.Say(t.Get(r)) }
