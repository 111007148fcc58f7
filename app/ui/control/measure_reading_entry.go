package control

import "fyne.io/fyne/v2"

// readingEntry is the entry of one of several readings.
type readingEntry struct {
	wholeEntry
	all    *readings
	line   *reading
	before []float64 // all readings when one came to it
}

func newReadingEntry(s *readings, l *reading) *readingEntry {
	e := &readingEntry{all: s, line: l}
	e.ExtendBaseWidget(e)
	e.OnSubmitted = func(string) { s.step(l, +1) }
	e.OnChanged = func(string) { s.typed() }
	return e
}

// write sets what it says, which is then not taken as typed.
func (e *readingEntry) write(text string) {
	if e.Text == text {
		return
	}
	e.OnChanged = nil
	e.SetText(text)
	e.OnChanged = func(string) { e.all.typed() }
}

// FocusGained shows how the value is taken.
func (e *readingEntry) FocusGained() {
	e.before = e.all.row.measure.all()
	e.wholeEntry.FocusGained()
	e.all.row.list.foot.show(e.all.row.measure)
	e.all.row.list.reveal(e.all.row)
}

// FocusLost ends the typing.
func (e *readingEntry) FocusLost() {
	e.wholeEntry.FocusLost()
	e.all.left(e.line)
}

// TypedKey handles the keys that lead out of the entry.
func (e *readingEntry) TypedKey(ev *fyne.KeyEvent) {
	switch ev.Name {
	case fyne.KeyUp:
		e.all.step(e.line, -1)
	case fyne.KeyDown:
		e.all.step(e.line, +1)
	case fyne.KeyEscape:
		e.all.row.take(e.before, nil)
		e.all.fill()
	default:
		e.Entry.TypedKey(ev)
	}
}
