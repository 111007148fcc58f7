package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
)

// buildPlace is where it is chosen how the mount is made, and from what.
type buildPlace struct {
	doc     *document.Document
	values  *values
	choices []*choice
}

func newBuildPlace(d *document.Document) *buildPlace {
	b := &buildPlace{doc: d, values: newValues(d, fieldsOf("Mount"))}
	b.choices = []*choice{
		newChoice("build", "mount.build", record.Builds, func(r *record.Record) *string { return &r.Mount.Build }, d),
		newChoice("strength of the cloth", "garment.strength", record.Strengths, func(r *record.Record) *string { return &r.Garment.Strength }, d),
		newChoice("step between slices", "mount.step", record.Steps, func(r *record.Record) *string { return &r.Mount.Step }, d),
		newChoice("paper", "mount.paper", record.Papers, func(r *record.Record) *string { return &r.Mount.Paper.Name }, d),
	}
	b.values.list.Head = b.choose()
	return b
}

func (b *buildPlace) name() string             { return "Build" }
func (b *buildPlace) side() fyne.CanvasObject  { return b.values.list }
func (b *buildPlace) stage() fyne.CanvasObject { return nil }

func (b *buildPlace) show() {
	r, said := b.doc.Record(), sayings(b.doc)
	b.values.show()
	for _, c := range b.choices {
		c.show(r, said.words[c.path])
	}
}

// choose are the words that are chosen, above the numbers of the mount.
func (b *buildPlace) choose() fyne.CanvasObject {
	box := container.NewVBox(control.NewGroup("build"))
	for _, c := range b.choices {
		box.Add(c.row)
	}
	return box
}
