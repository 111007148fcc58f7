package ui

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/control"
	"understructure/patterns/sheet"
)

// sheetsColumn is the left column of the sheets: the paper, what the pages come to, what is on the page that
// is looked at, and the ways out.
type sheetsColumn struct {
	place        *sheetsPlace
	paper        *paper
	state, share *widget.Label
	warning      *widget.Label
	activity     *widget.Activity
	stop, again  *widget.Button
	list         *widget.List
	marked       int // in the list, -1 for none
	print        *widget.Button
	export       *widget.Button
	blank        *widget.Button
	condition    *widget.Button
	storage      *widget.Button
	trial        *widget.Button
	box          fyne.CanvasObject
}

func newSheetsColumn(s *sheetsPlace) *sheetsColumn {
	c := &sheetsColumn{
		place: s, paper: newPaper(s.doc), state: caption(), share: caption(), warning: caption(), activity: widget.NewActivity(),
		stop: quiet(lang.L("Stop"), nil, s.stop), again: quiet(lang.L("Lay out the pages"), nil, s.again),
		print:     widget.NewButton(lang.L("Print…"), s.print),
		export:    widget.NewButton(lang.L("Export templates…"), s.window.export),
		blank:     widget.NewButton(lang.L("Measuring sheet…"), s.window.measuringSheet),
		condition: widget.NewButton(lang.L("Condition sheet…"), s.window.conditionSheet),
		storage:   widget.NewButton(lang.L("Storage sheet…"), s.window.storageSheet),
		trial:     widget.NewButton(lang.L("Test page for the printer…"), s.window.testPage),
	}
	c.warning.Importance = widget.WarningImportance
	c.warning.Wrapping, c.state.Wrapping, c.share.Wrapping = fyne.TextWrapWord, fyne.TextWrapWord, fyne.TextWrapWord
	c.list = widget.NewList(func() int { return len(c.items()) }, func() fyne.CanvasObject { return newItemRow() },
		func(i int, o fyne.CanvasObject) { o.(*itemRow).show(c.items()[i]) })
	c.list.HideSeparators = true
	c.list.OnSelected = func(i int) { s.pick(c.items()[i].Piece.ID) }
	busy := container.NewBorder(nil, nil, nil, container.NewHBox(c.activity, c.stop, c.again), c.state)
	top := container.NewVBox(control.NewGroup(lang.L("paper")), c.paper.box, busy, c.warning, control.NewGroup(lang.L("on this page")), c.share)
	foot := container.New(layout.NewCustomPaddedLayout(6, 4, 0, 8), container.NewVBox(c.print, c.export, c.blank, container.NewGridWithColumns(2, c.condition, c.storage), c.trial))
	c.box = container.NewBorder(top, foot, nil, nil, c.list)
	return c
}

func caption() *widget.Label {
	l := widget.NewLabel("")
	l.SizeName = theme.SizeNameCaptionText
	return l
}

// items are the pieces on the page that is looked at.
func (c *sheetsColumn) items() []sheet.Item {
	if c.place.at >= len(c.place.laid.pages) {
		return nil
	}
	return c.place.laid.pages[c.place.at].Items
}

// show brings the column to the record and to the pages.
func (c *sheetsColumn) show() {
	s := c.place
	r := s.doc.Record()
	c.paper.show(r, sayings(s.doc).words["mount.paper"])
	busy := s.laying.busy || s.doc.Busy() && !s.current()
	work(c.activity, busy)
	visible(c.stop, s.laying.busy)
	visible(c.again, !busy && !s.current() && s.whole != nil && s.laid.err == nil && s.of != nil && !s.stale())
	set(c.state, c.says(busy))
	warning := ""
	if s.laid.err != nil {
		warning = s.laid.err.Error()
	} else if s.whole != nil {
		if err := s.whole.Refused(); err != nil {
			warning = err.Error()
		}
	}
	set(c.warning, warning)
	visible(c.warning, warning != "")
}

// stale reports whether the pages wait for another plan.
func (s *sheetsPlace) stale() bool { return !sameButPaper(s.doc.Record(), s.from) }

// says sums the pages up.
func (c *sheetsColumn) says(busy bool) string {
	l := c.place.laid
	switch {
	case c.place.laying.busy:
		share := fmt.Sprintf("%.0f %%", 100*c.place.laying.share)
		return lang.L("Laying out {{.Count}} pieces … {{.Share}}", map[string]any{"Count": len(c.place.whole.Pieces), "Share": share})
	case busy:
		return lang.L("Computing …")
	case len(l.pages) == 0:
		return lang.L("There are no pages yet.")
	}
	said := map[string]any{"Count": len(l.pages), "Paper": c.paperName(), "Share": fmt.Sprintf("%.0f %%", 100*l.share())}
	text := lang.L("{{.Count}} pages of {{.Paper}}. Pieces take {{.Share}} of the paper.", said)
	if len(l.pages) == 1 {
		text = lang.L("1 page of {{.Paper}}. Pieces take {{.Share}} of it.", said)
	}
	if !c.place.current() {
		return text + " " + lang.L("They are not of the record as it is now.")
	}
	return text
}

// progress says how far the laying of pages is.
func (c *sheetsColumn) progress() { set(c.state, c.says(true)) }

func (c *sheetsColumn) paperName() string {
	stock, _ := c.place.of.Mount.Stocked(c.place.of.Garment.Strength)
	return stock.Paper.Name
}

// work shows whether something is on its way.
func work(a *widget.Activity, busy bool) {
	if busy == a.Visible() {
		return
	}
	visible(a, busy)
	if busy {
		a.Start()
		return
	}
	a.Stop()
}

// turnTo shows what is on a page.
func (c *sheetsColumn) turnTo(i int) {
	text := ""
	if l := c.place.laid; i < len(l.pages) {
		text = lang.L("Pieces take {{.Share}} of this page.", map[string]any{"Share": fmt.Sprintf("%.0f %%", 100*l.shares[i])})
	}
	set(c.share, text)
	c.list.Refresh()
	c.mark()
}

// mark selects the piece that is picked.
func (c *sheetsColumn) mark() {
	c.marked = slices.IndexFunc(c.items(), func(it sheet.Item) bool {
		return it.Piece.ID == c.place.picked || it.Twin != "" && it.Twin == c.place.picked
	})
	if c.marked < 0 {
		c.list.UnselectAll()
		return
	}
	c.list.Select(c.marked)
}

// visible shows or hides.
func visible(o fyne.CanvasObject, yes bool) {
	if yes != o.Visible() {
		if o.Hide(); yes {
			o.Show()
		}
	}
}

// itemRow is a piece on a page: its ID and its name.
type itemRow struct {
	widget.BaseWidget
	id, name *widget.Label
}

func newItemRow() *itemRow {
	r := &itemRow{id: caption(), name: caption()}
	r.id.TextStyle.Bold = true
	r.id.Truncation, r.name.Truncation = fyne.TextTruncateEllipsis, fyne.TextTruncateEllipsis
	r.ExtendBaseWidget(r)
	return r
}

// CreateRenderer is for the toolkit.
func (r *itemRow) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(together(r.id, r.name))
}

func (r *itemRow) show(it sheet.Item) {
	id := it.Name()
	if it.Twin != "" {
		id += " = " + it.Twin
	}
	set(r.id, id)
	set(r.name, it.Piece.Name)
}
