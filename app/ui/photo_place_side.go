package ui

import (
	"errors"
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
)

// lengthRow is a length that is typed in the unit of the record.
type lengthRow struct {
	row  *control.TextRow
	unit *widget.Label
	box  fyne.CanvasObject
}

func newLengthRow(name string) *lengthRow {
	l := &lengthRow{row: control.NewTextRow(name, "0"), unit: widget.NewLabel("")}
	l.box = container.New(lengthLayout{}, l.row, l.unit)
	return l
}

// lengthLayout puts the unit behind the length, within the width of a row without one.
type lengthLayout struct{}

// lengthUnit is the room for a unit, and beside it for the bar of a scrolled column.
const lengthUnit = 38

// MinSize is that of the row.
func (lengthLayout) MinSize(o []fyne.CanvasObject) fyne.Size { return o[0].MinSize() }

// Layout gives the unit its room and the row the rest.
func (lengthLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	o[0].Resize(fyne.NewSize(size.Width-lengthUnit, size.Height))
	o[1].Move(fyne.NewPos(size.Width-lengthUnit, 0))
	o[1].Resize(fyne.NewSize(lengthUnit, o[1].MinSize().Height))
}

// show says what the length is, as it was typed where that says the same.
func (l *lengthRow) show(mm float64, u string) {
	set(l.unit, u)
	text := strings.TrimSpace(l.row.Entry().Text)
	if typed, err := typedLength(text, u); err != nil || math.Abs(typed-mm) > 1e-6 {
		text = document.Length.Format(mm, u)
	}
	l.row.Say(text)
}

// typedLength is what was typed, in millimetres; nothing is none.
func typedLength(text, u string) (float64, error) {
	v, err := document.Length.Parse(text, u)
	if err != nil || v == nil {
		return 0, err
	}
	return *v, nil
}

// listen follows what is typed, as long as it is a length.
func (l *lengthRow) listen(d *document.Document, take func(mm float64) error) {
	l.row.OnChanged = func(text string) error {
		mm, err := typedLength(text, d.Record().Unit)
		if err != nil {
			return err
		}
		return take(mm)
	}
	l.row.OnDone = d.Settle
}

// wrapped is small text over several lines.
func wrapped(text string) *widget.Label {
	l := caption()
	l.Wrapping = fyne.TextWrapWord
	l.SetText(text)
	return l
}

// build makes everything and lays it out.
func (p *photoPlace) build() {
	p.list, p.changes, p.stand = control.NewLogList(), control.NewProposalList(), control.NewPhotoStage()
	p.notice, p.hint, p.head, p.busy = wrapped(""), wrapped(""), widget.NewLabel(""), widget.NewActivity()
	p.notice.Importance = widget.WarningImportance
	p.head.TextStyle.Bold = true
	p.busy.Hide()
	p.add = quiet(lang.L("Add…"), theme.ContentAddIcon(), p.choose)
	p.find, p.keep = quiet(lang.L("Find the file…"), nil, p.refind), quiet(lang.L("It is the right one"), nil, p.trust)
	p.seen = newPick(record.Views, func(word string) { p.step(func(f *record.Photograph) { f.View = word }) })
	p.length, p.height, p.cloth = newLengthRow(lang.L("distance")), newLengthRow(lang.L("lower point")), newLengthRow(lang.L("cloth outside"))
	p.fade = widget.NewSlider(0, 1)
	p.fade.Step = 0.02
	p.trace, p.clear = widget.NewButton("", p.turnTrace), quiet(lang.L("Start anew"), nil, p.clearTrace)
	p.apply = widget.NewButton("", p.take)
	p.advice = wrapped(lang.L("A photograph of the garment, or of a dress of its years, helps to get the silhouette right. Add one, or drop it on the window.") + "\n\n" +
		lang.L("It must be taken from far away and level: perspective is not corrected."))
	p.layOut()
}

func (p *photoPlace) layOut() {
	head := container.NewBorder(nil, nil, control.NewGroup(lang.L("photographs")), container.NewHBox(p.busy, p.add))
	scale := wrapped(lang.L("Drag the two points to places whose distance you know, one straight above the other, and type it. Drag the photograph to where the figure is."))
	fade := container.New(control.ChoiceLayout{}, control.NewName(lang.L("fade")), p.fade)
	far := wrapped(lang.L("Perspective is not corrected: only a photograph taken from far away and level tells a breadth."))
	p.scale = control.NewFold(lang.L("Scale and upright"), container.NewVBox(scale, p.length.box, p.height.box))
	p.fit = container.NewVBox(p.cloth.box, p.head, p.changes, p.apply, far)
	p.one = container.NewVBox(
		pickRow(lang.L("seen from"), p.seen), fade, p.scale,
		control.NewGroup(lang.L("silhouette")), container.NewHBox(p.trace, p.clear), p.hint, p.fit)
	column := container.NewVBox(head, p.list, p.advice, p.notice, container.NewHBox(p.find, p.keep), p.one)
	edge := layout.NewCustomPaddedLayout(0, 0, 0, 8) // for the bar
	p.box = container.NewVScroll(container.New(edge, column))
}

// listen connects what a person does to what happens.
func (p *photoPlace) listen() {
	p.list.OnOpen, p.list.OnRemove = p.open, p.remove
	p.length.listen(p.doc, func(mm float64) error {
		if mm <= 0 {
			return errors.New(lang.L("Give the distance between the two points."))
		}
		return p.change(func(f *record.Photograph) { f.Length = mm })
	})
	p.height.listen(p.doc, func(mm float64) error { return p.change(func(f *record.Photograph) { f.At.Y = mm }) })
	p.cloth.listen(p.doc, p.setOutside)
	p.fade.OnChanged = func(v float64) { p.tell(p.change(func(f *record.Photograph) { f.Fade = v })) }
	p.fade.OnChangeEnded = func(float64) { p.doc.Settle() }
	p.changes.OnTicked = p.tick
	p.stand.OnShifted, p.stand.OnPut, p.stand.OnSettled = p.shift, p.put, p.doc.Settle
	p.stand.OnTraced, p.stand.OnErased, p.stand.OnEnded = p.traced, p.erased, p.endTrace
}
