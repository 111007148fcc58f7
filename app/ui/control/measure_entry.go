package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// wholeEntry is an entry that is selected whole when one comes to it.
type wholeEntry struct {
	widget.Entry
	focused bool
	came    bool // by the press of the mouse that is not yet over
}

// FocusGained selects the whole.
func (e *wholeEntry) FocusGained() {
	e.Entry.FocusGained()
	e.focused = true
	e.TypedShortcut(&fyne.ShortcutSelectAll{})
}

// FocusLost is for the toolkit.
func (e *wholeEntry) FocusLost() {
	e.Entry.FocusLost()
	e.focused = false
}

// MouseDown remembers whether one comes to the entry only now.
func (e *wholeEntry) MouseDown(ev *desktop.MouseEvent) {
	e.came = !e.focused
	e.Entry.MouseDown(ev)
}

// Tapped selects the whole where one has just come; the next tap puts the cursor.
func (e *wholeEntry) Tapped(ev *fyne.PointEvent) {
	e.Entry.Tapped(ev)
	if e.came {
		e.came = false
		e.TypedShortcut(&fyne.ShortcutSelectAll{})
	}
}

// measureEntry is the entry of a row: it goes to its neighbour by arrow or Enter, and gives up what was
// typed by Escape.
type measureEntry struct {
	wholeEntry
	row    *measureRow
	before []float64 // when one came to it
}

func newMeasureEntry(r *measureRow) *measureEntry {
	e := &measureEntry{row: r}
	e.ExtendBaseWidget(e)
	e.OnSubmitted = func(string) { e.row.step(+1) }
	return e
}

// FocusGained shows how the value is taken, and all that was read of it.
func (e *measureEntry) FocusGained() {
	e.focused, e.before = true, e.row.measure.all()
	if len(e.before) > 1 {
		e.row.write()
	}
	e.wholeEntry.FocusGained()
	e.row.list.foot.show(e.row.measure)
	e.row.list.reveal(e.row)
}

// FocusLost ends the typing: what cannot be read is said so.
func (e *measureEntry) FocusLost() {
	e.wholeEntry.FocusLost()
	e.row.left()
}

// TypedKey handles the keys that lead out of the entry.
func (e *measureEntry) TypedKey(ev *fyne.KeyEvent) {
	switch ev.Name {
	case fyne.KeyUp:
		e.row.step(-1)
	case fyne.KeyDown:
		e.row.step(+1)
	case fyne.KeyEscape:
		e.row.take(e.before, nil)
		e.row.write()
	default:
		e.Entry.TypedKey(ev)
	}
}

// left ends the typing in a row.
func (r *measureRow) left() {
	r.list.foot.rest()
	r.list.OnDone()
	if r.err == nil {
		r.write()
	}
	r.tell()
}

// step goes to the row before or after.
func (r *measureRow) step(by int) { r.focus(r.list.next(r, by).entry) }

// focus gives an entry of this row or another the keys. An entry that was only just made is not yet
// known to the toolkit, so that its canvas is that of the row.
func (r *measureRow) focus(e fyne.Focusable) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(r.entry); c != nil {
		c.Focus(e)
	}
}
