package ui

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
)

// fittingPlace is where it is typed what was seen at a trial fitting, and shown what that changes.
type fittingPlace struct {
	window *Window
	doc    *document.Document
	today  func() string // yyyy-mm-dd
	hand   hand
	before *before
	stand  *changing // the stage

	title       *widget.Label
	on, by      *control.TextRow
	seen        *control.LogList
	form        *control.FittingForm
	notes       *control.Notes
	again       *widget.Button
	log         *control.LogList
	logHead     fyne.CanvasObject
	column, box *fyne.Container
}

func newFittingPlace(w *Window) *fittingPlace {
	p := &fittingPlace{
		window: w, doc: w.doc, today: func() string { return time.Now().Format(time.DateOnly) },
		title: widget.NewLabel(""), notes: control.NewNotes(lang.L("What else was seen, and what was done")),
		on: control.NewTextRow(lang.L("date"), "yyyy-mm-dd"), by: control.NewTextRow(lang.L("by whom"), ""),
		seen: control.NewLogList(), log: control.NewLogList(),
	}
	p.before = newBefore(w.options.Rooms, p.show)
	p.stand = newChanging(p.export)
	p.title.TextStyle.Bold = true
	p.on.OnChanged = p.change(func(f *record.Fitting, s string) { f.On = s })
	p.by.OnChanged = p.change(func(f *record.Fitting, s string) { f.By = s })
	p.notes.OnChanged = p.change(func(f *record.Fitting, s string) { f.Note = s })
	p.on.OnDone, p.by.OnDone, p.notes.OnDone = p.doc.Settle, p.doc.Settle, p.doc.Settle
	p.form = newFittingForm(p)
	p.seen.OnOpen, p.seen.OnRemove = p.correct, p.forget
	p.log.OnOpen, p.log.OnRemove = p.open, p.remove
	p.again = widget.NewButton(lang.L("New fitting"), func() { p.open(len(p.doc.Record().Fittings)) })
	p.again.Importance = widget.LowImportance
	p.layOut()
	return p
}

func (p *fittingPlace) name() string             { return "Fitting" }
func (p *fittingPlace) side() fyne.CanvasObject  { return p.box }
func (p *fittingPlace) stage() fyne.CanvasObject { return p.stand.box }

// layOut puts the fitting in hand over the log of all.
func (p *fittingPlace) layOut() {
	p.logHead = control.NewGroup(lang.L("log of fittings"))
	p.column = container.NewVBox(
		container.NewBorder(nil, nil, nil, p.again, p.title), p.on, p.by,
		control.NewGroup(lang.L("what was seen")), p.seen, p.form,
		control.NewGroup(lang.L("notes")), p.notes,
		p.logHead, p.log)
	p.box = container.NewStack(container.NewVScroll(p.column))
}

// show brings the place to the record, and to what is known of the mount that was tried on.
func (p *fittingPlace) show() {
	r := p.doc.Record()
	p.settleHand(r)
	f := p.inHand()
	set(p.title, p.titled(r))
	p.on.Say(f.On)
	p.by.Say(f.By)
	p.notes.Say(f.Note)
	p.seen.Fill(sentences(f.Seen, r.Unit), p.hand.seen)
	p.form.SetUnit(r.Unit)
	p.form.Tell()
	p.showLog(r)
	p.column.Refresh()
	p.compare(r)
	p.showChanges()
}

// showLog lists all fittings of the record.
func (p *fittingPlace) showLog(r record.Record) {
	chosen := -1
	if p.hand.at < len(r.Fittings) {
		chosen = p.hand.at
	}
	p.log.Fill(logged(r.Fittings), chosen)
	p.logHead.Hide()
	p.again.Hide()
	if len(r.Fittings) > 0 {
		p.logHead.Show()
	}
	if chosen >= 0 {
		p.again.Show()
	}
}
