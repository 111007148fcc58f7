package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Widths within a row, in the toolkit's units.
const (
	nameWidth  = 110
	entryWidth = 84
	unitWidth  = 30
)

// measureRow is a label, an entry with its unit, and below them a note when there is something to say.
type measureRow struct {
	widget.BaseWidget
	list    *MeasureList
	measure Measure
	label   *widget.Label
	entry   *measureEntry
	unit    *widget.Label
	note    *widget.Label
	err     error
}

func newMeasureRow(l *MeasureList, m Measure) *measureRow {
	r := &measureRow{list: l, measure: m, label: NewName(m.Label), unit: widget.NewLabel(m.Unit), note: widget.NewLabel("")}
	r.note.Wrapping = fyne.TextWrapWord
	r.note.SizeName = theme.SizeNameCaptionText
	r.note.Importance = widget.WarningImportance
	r.note.Hide()
	r.entry = newMeasureEntry(r)
	if m.Value != nil {
		r.entry.SetText(l.Write(m.Key, *m.Value))
	}
	r.entry.OnChanged = r.typed
	r.ExtendBaseWidget(r)
	return r
}

// show takes over a value unless the entry already says it, or is being typed in while the value stayed.
func (r *measureRow) show(m Measure) {
	before := r.measure.Value
	r.measure = m
	r.hint()
	said, err := r.list.Read(m.Key, r.entry.Text)
	if err == nil && same(said, m.Value) || r.entry.focused && same(before, m.Value) {
		r.tell()
		return
	}
	r.write()
}

// hint shows the unit, and in an empty entry what is used instead.
func (r *measureRow) hint() {
	hint := r.measure.Hint
	if r.measure.Drawn != nil {
		hint = r.list.Write(r.measure.Key, *r.measure.Drawn)
	}
	if r.entry.PlaceHolder != hint {
		r.entry.SetPlaceHolder(hint)
	}
	if r.unit.Text != r.measure.Unit {
		r.unit.SetText(r.measure.Unit)
	}
}

// write puts the value into the entry.
func (r *measureRow) write() {
	text := ""
	if r.measure.Value != nil {
		text = r.list.Write(r.measure.Key, *r.measure.Value)
	}
	r.err = nil
	r.entry.OnChanged = nil
	r.entry.SetText(text)
	r.entry.OnChanged = r.typed
	r.tell()
}

func (r *measureRow) typed(text string) {
	var v *float64
	if v, r.err = r.list.Read(r.measure.Key, text); r.err == nil {
		r.measure.Value = v
		r.list.OnChanged(r.measure.Key, v)
	}
	r.tell()
}

// tell shows what is wrong with the entry; while one is still typing, only what was wrong with the value.
func (r *measureRow) tell() {
	text := r.measure.Warning
	if r.err != nil && !r.entry.focused {
		text = r.err.Error()
	}
	if text == r.note.Text && r.note.Visible() == (text != "") {
		return
	}
	r.note.SetText(text)
	r.note.Hidden = text == ""
	r.Refresh()
	r.list.box.Refresh()
}

// same compares two values as finely as they are written.
func same(a, b *float64) bool {
	const apart = 0.01 // millimetres: finer than three decimals of an inch
	return a == nil && b == nil || a != nil && b != nil && *a-*b < apart && *b-*a < apart
}

// CreateRenderer is for the toolkit.
func (r *measureRow) CreateRenderer() fyne.WidgetRenderer { return measureRowRenderer{r} }

type measureRowRenderer struct{ *measureRow }

func (r measureRowRenderer) Destroy() {}
func (r measureRowRenderer) Refresh() { r.Layout(r.Size()) }

func (r measureRowRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.label, r.entry, r.unit, r.note}
}

func (r measureRowRenderer) MinSize() fyne.Size {
	size := fyne.NewSize(nameWidth+entryWidth+unitWidth, r.entry.MinSize().Height)
	if r.note.Visible() {
		size.Height += r.note.MinSize().Height
	}
	return size
}

func (r measureRowRenderer) Layout(size fyne.Size) {
	height := r.entry.MinSize().Height
	middle := func(o fyne.CanvasObject) float32 { return (height - o.MinSize().Height) / 2 }
	right := size.Width - unitWidth
	r.unit.Resize(fyne.NewSize(unitWidth, height))
	r.unit.Move(fyne.NewPos(right-4, middle(r.unit)))
	r.entry.Resize(fyne.NewSize(entryWidth, height))
	r.entry.Move(fyne.NewPos(right-entryWidth, 0))
	r.label.Resize(fyne.NewSize(right-entryWidth, height))
	r.label.Move(fyne.NewPos(0, middle(r.label)))
	r.note.Resize(fyne.NewSize(size.Width, r.note.MinSize().Height))
	r.note.Move(fyne.NewPos(0, height-4))
}

// measureEntry is an entry that is selected whole when one comes to it, goes to its neighbour by
// arrow or Enter, and gives up what was typed by Escape.
type measureEntry struct {
	widget.Entry
	row     *measureRow
	focused bool
	came    bool     // by the press of the mouse that is not yet over
	before  *float64 // when one came to it
}

func newMeasureEntry(r *measureRow) *measureEntry {
	e := &measureEntry{row: r}
	e.ExtendBaseWidget(e)
	e.OnSubmitted = func(string) { e.step(+1) }
	return e
}

// FocusGained shows how the value is taken.
func (e *measureEntry) FocusGained() {
	e.Entry.FocusGained()
	e.focused, e.before = true, e.row.measure.Value
	e.TypedShortcut(&fyne.ShortcutSelectAll{})
	e.row.list.help.SetText(e.row.measure.Where)
	e.row.list.reveal(e.row)
}

// FocusLost ends the typing: what cannot be read is said so.
func (e *measureEntry) FocusLost() {
	e.Entry.FocusLost()
	e.focused = false
	e.row.list.help.SetText(idle)
	e.row.list.OnDone()
	if e.row.err == nil {
		e.row.write()
	}
	e.row.tell()
}

// MouseDown remembers whether one comes to the entry only now.
func (e *measureEntry) MouseDown(ev *desktop.MouseEvent) {
	e.came = !e.focused
	e.Entry.MouseDown(ev)
}

// Tapped selects the whole where one has just come; the next tap puts the cursor.
func (e *measureEntry) Tapped(ev *fyne.PointEvent) {
	e.Entry.Tapped(ev)
	if e.came {
		e.came = false
		e.TypedShortcut(&fyne.ShortcutSelectAll{})
	}
}

// TypedKey handles the keys that lead out of the entry.
func (e *measureEntry) TypedKey(ev *fyne.KeyEvent) {
	switch ev.Name {
	case fyne.KeyUp:
		e.step(-1)
	case fyne.KeyDown:
		e.step(+1)
	case fyne.KeyEscape:
		e.row.measure.Value = e.before
		e.row.list.OnChanged(e.row.measure.Key, e.before)
		e.row.write()
	default:
		e.Entry.TypedKey(ev)
	}
}

func (e *measureEntry) step(by int) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(e); c != nil {
		c.Focus(e.row.list.next(e.row, by).entry)
	}
}
