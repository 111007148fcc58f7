package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
)

// buildPlace is where it is chosen how the mount is made, and from what. Its stage is the figure or the pieces.
type buildPlace struct {
	doc     *document.Document
	values  *values
	choices []*choice
	ease    *easeChoice
	paper   *paper
	stock   *stock
	look    *control.Switch // at the figure or at the pieces
	pieces  *pieces
	figure  fyne.CanvasObject
	seen    *fyne.Container
	box     fyne.CanvasObject
}

func newBuildPlace(w *Window) *buildPlace {
	d := w.doc
	b := &buildPlace{doc: d, ease: newEaseChoice(d), paper: newPaper(d), stock: newStock(w), pieces: newPieces(w), figure: w.figure.box}
	b.values = newValues(d, b.ease.fields)
	b.ease.then = b.show
	b.choices = []*choice{
		newChoice("build", "mount.build", record.Builds, func(r *record.Record) *string { return &r.Mount.Build }, d),
		newChoice("strength of the cloth", "garment.strength", record.Strengths, func(r *record.Record) *string { return &r.Garment.Strength }, d),
		newChoice("step between slices", "mount.step", record.Steps, func(r *record.Record) *string { return &r.Mount.Step }, d),
	}
	b.values.list.Head = b.choose()
	b.look = control.NewSwitch(lang.L("Figure"), lang.L("Pieces"))
	b.look.OnChosen = func(string) { b.turn() }
	b.look.Choose(lang.L("Figure"))
	b.seen = container.NewStack(b.figure)
	b.pieces.head.Hide()
	bar := container.New(layout.NewCustomPaddedLayout(2, 2, 0, 8), container.NewBorder(nil, nil, nil, b.look, b.pieces.head))
	b.box = container.NewBorder(bar, nil, nil, nil, b.seen)
	return b
}

func (b *buildPlace) name() string             { return "Build" }
func (b *buildPlace) side() fyne.CanvasObject  { return b.values.list }
func (b *buildPlace) stage() fyne.CanvasObject { return b.box }

func (b *buildPlace) show() {
	r, said := b.doc.Record(), sayings(b.doc)
	b.ease.show(r)
	b.values.show()
	for _, c := range b.choices {
		c.show(r, said.words[c.path])
	}
	b.paper.show(r, said.words["mount.paper"])
	b.stock.show(r)
	if b.onPieces() {
		b.pieces.show()
	}
}

func (b *buildPlace) onPieces() bool { return b.look.Chosen() == lang.L("Pieces") }

// turn shows the figure or the pieces.
func (b *buildPlace) turn() {
	b.seen.Objects = []fyne.CanvasObject{b.figure}
	visible(b.pieces.head, b.onPieces())
	if b.onPieces() {
		b.pieces.show()
		b.seen.Objects = []fyne.CanvasObject{b.pieces.box}
	}
	b.seen.Refresh()
}

// choose are the words that are chosen, above the numbers of the mount.
func (b *buildPlace) choose() fyne.CanvasObject {
	box := container.NewVBox(control.NewGroup(lang.L("build")))
	for _, c := range b.choices {
		box.Add(c.row)
	}
	box.Add(b.ease.row)
	box.Add(b.paper.box)
	box.Add(b.stock.box)
	return box
}
