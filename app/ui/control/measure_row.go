package control

import (
	"strings"

	"fyne.io/fyne/v2"
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
	again    *widget.Label
	entry    *measureEntry
	unit     *widget.Label
	more     *mark
	readings *readings
	note     *widget.Label
	err      error
}

func newMeasureRow(l *MeasureList, m Measure) *measureRow {
	r := &measureRow{list: l, measure: m, label: NewName(m.Label), unit: widget.NewLabel(m.Unit), note: newNote()}
	r.again = newAgain()
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
	r.markAgain()
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
