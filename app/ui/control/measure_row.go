package control

import (
	"errors"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Widths within a row, in the toolkit's units.
const (
	nameWidth  = 110
	entryWidth = 84
	unitWidth  = 50 // with the mark behind it
	markWidth  = 24
)

// measureRow is a label, an entry with its unit, and below them the readings where they are asked for
// and a note when there is something to say.
type measureRow struct {
	widget.BaseWidget
	list     *MeasureList
	measure  Measure
	label    *widget.Label
	entry    *measureEntry
	unit     *widget.Label
	more     *mark
	readings *readings
	note     *widget.Label
	err      error
}

func newMeasureRow(l *MeasureList, m Measure) *measureRow {
	r := &measureRow{list: l, measure: m, label: NewName(m.Label), unit: widget.NewLabel(m.Unit), note: newNote()}
	r.more = newMark("", r.toggle)
	r.readings = newReadings(r)
	r.entry = newMeasureEntry(r)
	r.entry.SetText(r.said())
	r.entry.OnChanged = r.typed
	r.ExtendBaseWidget(r)
	return r
}

// newNote is what is said below an entry.
func newNote() *widget.Label {
	n := widget.NewLabel("")
	n.Wrapping = fyne.TextWrapWord
	n.SizeName = theme.SizeNameCaptionText
	n.Importance = widget.WarningImportance
	n.Hide()
	return n
}

// all are the readings: several, one or none.
func (m Measure) all() []float64 {
	switch {
	case len(m.Readings) > 1:
		return m.Readings
	case m.Value != nil:
		return []float64{*m.Value}
	}
	return nil
}

// said is what the entry says of the value: all readings while they are being typed, else the one that counts.
func (r *measureRow) said() string {
	switch {
	case r.measure.Value == nil:
		return ""
	case r.entry.focused && len(r.measure.Readings) > 1:
		var all []string
		for _, v := range r.measure.Readings {
			all = append(all, r.list.Write(r.measure.Key, v))
		}
		return strings.Join(all, "; ")
	}
	return r.list.Write(r.measure.Key, *r.measure.Value)
}

// show takes over a value unless the entry already says it, or is being typed in while the value stayed.
func (r *measureRow) show(m Measure) {
	before := r.measure
	r.measure = m
	r.hint()
	if before.Unit != m.Unit {
		r.readings.fill()
		r.write()
		return
	}
	r.readings.show()
	typed, err := r.read(r.entry.Text)
	if err == nil && alike(typed, m.all()) || r.entry.focused && alike(before.all(), m.all()) {
		r.tell()
		return
	}
	r.write()
}

// hint shows the unit, in an empty entry what is used instead, and how often the value was taken.
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
	r.more.count(r.measure, r.readings.box.Visible())
}

// write puts the value into the entry.
func (r *measureRow) write() {
	r.err = nil
	if text := r.said(); r.entry.Text != text {
		r.entry.OnChanged = nil
		r.entry.SetText(text)
		r.entry.OnChanged = r.typed
	}
	r.tell()
}

// read takes what was typed, one reading or several with semicolons between them.
func (r *measureRow) read(text string) ([]float64, error) {
	parts := []string{text}
	if r.measure.Most > 1 && strings.Contains(text, ";") {
		parts = strings.FieldsFunc(text, func(c rune) bool { return c == ';' })
	}
	return r.readAll(parts)
}

// readAll takes each text as a reading; those that are empty do not count.
func (r *measureRow) readAll(texts []string) ([]float64, error) {
	var all []float64
	for _, text := range texts {
		if text = strings.TrimSpace(text); text == "" {
			continue
		}
		v, err := r.list.Read(r.measure.Key, text)
		if err != nil {
			return nil, err
		}
		all = append(all, *v)
	}
	switch {
	case len(all) > max(r.measure.Most, 1):
		return nil, errors.New(lang.L("at most {{.N}} readings can be kept", map[string]any{"N": r.measure.Most}))
	case len(all) == 0:
		_, err := r.list.Read(r.measure.Key, "") // whether it can do without
		return nil, err
	}
	return all, nil
}

func (r *measureRow) typed(text string) {
	if r.measure.Most > 1 && strings.Contains(text, ";") {
		r.open(true)
	}
	r.take(r.read(text))
}

// take passes on what was typed, unless it cannot be read.
func (r *measureRow) take(all []float64, err error) {
	r.err = err
	switch key := r.measure.Key; {
	case err != nil:
	case len(all) > 1:
		r.list.OnReadings(key, all)
	case len(all) == 1:
		r.list.OnChanged(key, &all[0])
	default:
		r.list.OnChanged(key, nil)
	}
	r.tell()
}

// tell shows what is wrong with the entry; while one is still typing, only what was wrong with the value.
func (r *measureRow) tell() {
	text := r.measure.Warning
	if r.measure.Wide && !r.readings.box.Visible() {
		text = strings.TrimPrefix(text+"\n"+r.measure.Spread, "\n")
	}
	if r.err != nil && !r.entry.focused && !r.readings.typing() {
		text = r.err.Error()
	}
	if text == r.note.Text && r.note.Visible() == (text != "") {
		return
	}
	r.note.SetText(text)
	r.note.Hidden = text == ""
	r.resize()
}

// resize gives the row the room that it now needs.
func (r *measureRow) resize() {
	r.Refresh()
	r.list.box.Refresh()
}

// alike compares readings as finely as they are written.
func alike(a, b []float64) bool {
	const apart = 0.01 // millimetres: finer than three decimals of an inch
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if d := a[i] - b[i]; !(d < apart && d > -apart) {
			return false
		}
	}
	return true
}
