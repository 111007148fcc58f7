package ui

import (
	"fmt"
	"image"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"understructure/app/document"
	"understructure/app/ui/control"
	"understructure/app/ui/look"
	"understructure/patterns/piece"
	"understructure/patterns/preview"
)

// pieces are the templates as cards with pictures, and one of them large.
type pieces struct {
	doc             *document.Document
	easel           *easel
	open            openRecord
	all             []piece.Piece // of the newest whole plan
	shown           []piece.Piece // that the choices leave
	material, layer *widget.Select
	count           *widget.Label
	grid            *control.PieceGrid
	one             *onePiece
	choices         fyne.CanvasObject // material and layer
	head            *fyne.Container   // the choices over the cards, the title over one piece
	box             *fyne.Container
}

// mostCards is how many small pictures are kept: more than any mount has pieces, and 30 MB of memory on a fine screen.
const mostCards = 400

// cardScale is how many units of the toolkit a millimetre becomes on a card at the most.
const cardScale = 2.5

func newPieces(w *Window) *pieces {
	p := &pieces{doc: w.doc, easel: newEasel(w.options.Rooms.Post, mostCards), count: widget.NewLabel(""), grid: control.NewPieceGrid()}
	p.count.SizeName = theme.SizeNameCaptionText
	p.material, p.layer = widget.NewSelect(nil, func(string) { p.choose() }), widget.NewSelect(nil, func(string) { p.filter() })
	p.grid.Picture, p.grid.OnPicked = p.card, p.enlarge
	p.one = newOnePiece(p)
	p.choices = container.NewHBox(p.material, p.layer, p.count)
	p.head, p.box = container.NewStack(p.choices), container.NewStack(p.grid)
	return p
}

// show takes over the newest plan once it is whole; until then the pieces before are looked at.
func (p *pieces) show() {
	if open := opened(p.doc); open != p.open {
		p.open = open
		if p.doc.Busy() { // not merely another name for the same
			p.take(nil)
		}
	}
	if now, err := p.doc.Plan(); err == nil && !p.doc.Busy() && !same(now.Pieces, p.all) {
		p.take(now.Pieces)
	}
}

func (p *pieces) take(all []piece.Piece) {
	p.all = all
	p.easel.forget()
	p.material.Options = append([]string{lang.L("all materials")}, p.materials()...)
	if !slices.Contains(p.material.Options, p.material.Selected) {
		p.material.Selected = p.material.Options[0]
	}
	p.material.Refresh()
	p.choose()
	p.one.show()
}

// same reports whether two lists are one and the same.
func same(a, b []piece.Piece) bool {
	return len(a) == len(b) && (len(a) == 0 || &a[0] == &b[0])
}

func (p *pieces) materials() []string {
	var names []string
	for _, pc := range p.all {
		if !slices.Contains(names, pc.Material) {
			names = append(names, pc.Material)
		}
	}
	return names
}

// choose offers the layers of the chosen material.
func (p *pieces) choose() {
	options := []string{lang.L("all layers")}
	for _, pc := range p.all {
		if name := layerName(pc); p.ofMaterial(pc) && !slices.Contains(options, name) {
			options = append(options, name)
		}
	}
	p.layer.Options = options
	if !slices.Contains(options, p.layer.Selected) {
		p.layer.Selected = options[0]
	}
	p.layer.Refresh()
	p.filter()
}

func layerName(pc piece.Piece) string {
	return lang.L("layer {{.Number}}", map[string]any{"Number": pc.Layer})
}

func (p *pieces) ofMaterial(pc piece.Piece) bool {
	return p.material.SelectedIndex() <= 0 || pc.Material == p.material.Selected
}

// filter shows the pieces that were chosen.
func (p *pieces) filter() {
	p.shown = nil
	var cards []control.Piece
	for _, pc := range p.all {
		if p.ofMaterial(pc) && (p.layer.SelectedIndex() <= 0 || layerName(pc) == p.layer.Selected) {
			p.shown = append(p.shown, pc)
			cards = append(cards, p.describe(pc))
		}
	}
	set(p.count, lang.L("{{.Shown}} of {{.All}} pieces", map[string]any{"Shown": len(p.shown), "All": len(p.all)}))
	p.grid.Draw(cards)
}

// describe is what the card of a piece says.
func (p *pieces) describe(pc piece.Piece) control.Piece {
	u := p.doc.Record().Unit
	across, up := sides(pc, u)
	return control.Piece{Name: pc.ID, Lines: [3]string{
		pc.Name,
		fmt.Sprintf("%s · %s · %s", layerName(pc), lang.L("cut {{.Count}}", map[string]any{"Count": pc.Count}), pc.Material),
		fmt.Sprintf("%s × %s %s · %s", across, up, u, lang.L("strain {{.Strain}}", map[string]any{"Strain": percent(pc.Strain)})),
	}}
}

// card is the small picture of a piece in the colours in force.
func (p *pieces) card(i int) image.Image {
	pc, ink, pixels := p.shown[i], inks(), pixelsOf(p.grid)
	w, h := int(control.CardWidth*pixels), int(control.CardHeight*pixels)
	return p.easel.picture(fmt.Sprint(pc.ID, ink, w), func() image.Image { return preview.Card(pc, w, h, cardScale*float64(pixels), ink) }, func() {
		if k := slices.IndexFunc(p.shown, func(other piece.Piece) bool { return other.ID == pc.ID }); k >= 0 {
			p.grid.Ready(k)
		}
	})
}

func inks() preview.Ink {
	return preview.Ink{Cloth: shade(theme.ColorNameButton), Line: shade(look.ColorInk), Faint: shade(look.ColorFaint)}
}

// pixelsOf is how many pixels of the screen a unit of the toolkit is wide.
func pixelsOf(o fyne.CanvasObject) float32 {
	if c := fyne.CurrentApp().Driver().CanvasForObject(o); c != nil {
		return c.Scale()
	}
	return 1
}

// enlarge shows one piece large.
func (p *pieces) enlarge(i int) {
	p.one.open(i)
	p.turnTo(p.one.head, p.one.box)
}

// close goes back to the cards.
func (p *pieces) close() { p.turnTo(p.choices, p.grid) }

func (p *pieces) turnTo(head, box fyne.CanvasObject) {
	p.head.Objects, p.box.Objects = []fyne.CanvasObject{head}, []fyne.CanvasObject{box}
	p.head.Refresh()
	p.box.Refresh()
}
