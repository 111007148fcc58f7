package ui

import (
	"fmt"
	"image"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/control"
	"understructure/patterns/piece"
	"understructure/patterns/preview"
)

// onePiece shows one of the pieces large, with its marks and all that is known of it.
type onePiece struct {
	of    *pieces
	easel *easel
	piece piece.Piece
	view  *control.PieceView
	title *widget.Label
	facts *fyne.Container
	said  []string // the facts, line by line
	head  fyne.CanvasObject
	box   fyne.CanvasObject
}

// factsWidth is the room for what is known of a piece, in the toolkit's units.
const factsWidth = 236

func newOnePiece(of *pieces) *onePiece {
	o := &onePiece{of: of, easel: newEasel(of.easel.post, 3), view: control.NewPieceView(), title: widget.NewLabel(""), facts: container.New(layout.NewFormLayout())}
	o.title.TextStyle.Bold = true
	o.title.SizeName = theme.SizeNameSubHeadingText
	o.title.Truncation = fyne.TextTruncateEllipsis
	o.view.Picture, o.view.OnTurned, o.view.OnClosed = o.picture, o.turn, of.close
	all := quiet(lang.L("All pieces"), theme.GridIcon(), of.close)
	before, after := quiet("", theme.NavigateBackIcon(), func() { o.turn(-1) }), quiet("", theme.NavigateNextIcon(), func() { o.turn(1) })
	o.head = container.NewBorder(nil, nil, all, container.NewHBox(before, after), o.title)
	side := container.New(layout.NewGridWrapLayout(fyne.NewSize(factsWidth, 10)))
	facts := container.NewStack(container.NewBorder(side, nil, nil, nil, container.NewVScroll(o.facts)))
	o.box = container.NewBorder(nil, nil, nil, facts, o.view)
	return o
}

// quiet is a button that stands back.
func quiet(label string, icon fyne.Resource, do func()) *widget.Button {
	b := widget.NewButtonWithIcon(label, icon, do)
	b.Importance = widget.LowImportance
	return b
}

// open shows a piece of those that are shown.
func (o *onePiece) open(i int) {
	o.piece = o.of.shown[i]
	o.draw()
	o.of.easel.post(func() { // once it is on the screen
		if c := fyne.CurrentApp().Driver().CanvasForObject(o.view); c != nil {
			c.Focus(o.view)
		}
	})
}

// turn goes on among the pieces shown.
func (o *onePiece) turn(by int) {
	if i := o.index(); i >= 0 && i+by >= 0 && i+by < len(o.of.shown) {
		o.open(i + by)
	}
}

func (o *onePiece) index() int {
	return slices.IndexFunc(o.of.shown, func(pc piece.Piece) bool { return pc.ID == o.piece.ID })
}

// show takes over another plan: the piece of the same name, or none.
func (o *onePiece) show() {
	o.easel.forget()
	if i := slices.IndexFunc(o.of.all, func(pc piece.Piece) bool { return pc.ID == o.piece.ID }); i >= 0 {
		o.piece = o.of.all[i]
		o.draw()
		return
	}
	o.of.close()
}

func (o *onePiece) draw() {
	set(o.title, o.piece.ID+" – "+o.piece.Name)
	o.facts.Objects, o.said = nil, nil
	for _, f := range facts(o.piece, o.of.doc.Record().Unit) {
		name, value := widget.NewLabel(f[0]), widget.NewLabel(f[1])
		name.SizeName, value.SizeName = theme.SizeNameCaptionText, theme.SizeNameCaptionText
		value.TextStyle.Bold = true
		value.Wrapping = fyne.TextWrapWord
		o.facts.Add(name)
		o.facts.Add(value)
		o.said = append(o.said, f[0]+" "+f[1])
	}
	o.facts.Refresh()
	o.view.Refresh()
}

// picture is the piece in the colours in force, with its breadth and height.
func (o *onePiece) picture(w, h int, pixels float64) image.Image {
	pc, ink, u := o.piece, inks(), o.of.doc.Record().Unit
	across, up := sides(pc, u)
	across, up = across+" "+u, up+" "+u
	letter := pixels * float64(theme.CaptionTextSize())
	o.easel.idle()
	return o.easel.picture(fmt.Sprint(pc.ID, ink, w, h, u), func() image.Image {
		img, err := preview.Portrait(pc, w, h, letter, across, up, ink)
		if err != nil {
			return image.NewRGBA(image.Rect(0, 0, 1, 1)) // it cannot be printed either, and the pages say why
		}
		return img
	}, o.view.Refresh)
}
