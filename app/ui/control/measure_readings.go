package control

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"
)

// readings are all readings of a value, below its row. Each can be changed or taken out; the last line
// is empty, for one more.
type readings struct {
	row    *measureRow
	lines  []*reading
	inner  *fyne.Container // of the lines
	spread *widget.Label
	box    *fyne.Container
}

func newReadings(r *measureRow) *readings {
	s := &readings{row: r, inner: container.New(layout.NewCustomPaddedVBoxLayout(3)), spread: newNote()}
	s.box = container.New(layout.NewCustomPaddedVBoxLayout(-3), s.inner, s.spread)
	s.box.Hide()
	return s
}

// toggle opens the readings for one more, or closes them.
func (r *measureRow) toggle() {
	r.open(!r.readings.box.Visible())
	if all := r.readings; all.box.Visible() {
		r.focus(all.lines[len(all.lines)-1].entry)
		return
	}
	r.focus(r.entry)
}

func (r *measureRow) open(open bool) {
	if r.measure.Most < 2 || open == r.readings.box.Visible() {
		return
	}
	r.readings.box.Hidden = !open
	r.readings.fill()
	r.hint()
	r.tell()
	r.resize()
}

// typing reports whether one of the readings is being typed.
func (s *readings) typing() bool {
	return slices.ContainsFunc(s.lines, func(l *reading) bool { return l.entry.focused })
}

func (s *readings) texts() []string {
	var all []string
	for _, l := range s.lines {
		all = append(all, l.entry.Text)
	}
	return all
}

// show takes over the readings of the value, unless that is what the lines say.
func (s *readings) show() {
	if !s.box.Visible() {
		return
	}
	typed, err := s.row.readAll(s.texts())
	if err != nil && s.typing() || err == nil && alike(typed, s.row.measure.all()) {
		s.tell()
		return
	}
	s.fill()
}

// fill makes the lines anew, as far as they say something else.
func (s *readings) fill() {
	if !s.box.Visible() {
		return
	}
	all := s.row.measure.all()
	for len(s.lines) < len(all) {
		s.lines = append(s.lines, newReading(s))
	}
	s.lines = s.lines[:min(len(s.lines), len(all)+1)] // one that is being typed in stays
	for i, l := range s.lines {
		text := ""
		if i < len(all) {
			text = s.row.list.Write(s.row.measure.Key, all[i])
		}
		l.entry.write(text)
	}
	s.grow()
	s.tell()
}

// grow keeps an empty line at the end, while one more reading can be kept.
func (s *readings) grow() {
	if n := len(s.lines); n < s.row.measure.Most && (n == 0 || s.lines[n-1].entry.Text != "") {
		s.lines = append(s.lines, newReading(s))
	}
	var objects []fyne.CanvasObject
	for _, l := range s.lines {
		objects = append(objects, l.box)
	}
	if !slices.Equal(objects, s.inner.Objects) {
		s.inner.Objects = objects
		s.row.resize()
	}
}

// tell marks the reading that is kept, and says how far they lie apart.
func (s *readings) tell() {
	m := s.row.measure
	kept := -1
	if len(m.Readings) > 1 {
		kept = slices.IndexFunc(m.Readings, func(v float64) bool { return alike([]float64{v}, []float64{*m.Value}) })
	}
	for i, l := range s.lines {
		l.tell(i, i == kept)
	}
	importance := widget.MediumImportance
	if m.Wide {
		importance = widget.WarningImportance
	}
	if s.spread.Text != m.Spread || s.spread.Importance != importance {
		s.spread.Importance = importance
		s.spread.SetText(m.Spread)
	}
	if hidden := m.Spread == ""; s.spread.Hidden != hidden {
		s.spread.Hidden = hidden
		s.row.resize()
	}
}

// typed passes the lines on.
func (s *readings) typed() {
	s.row.take(s.row.readAll(s.texts()))
	s.grow()
}

// left takes a line out that was emptied; the last stays.
func (s *readings) left(l *reading) {
	if i := slices.Index(s.lines, l); i >= 0 && i < len(s.lines)-1 && l.entry.Text == "" {
		s.lines = slices.Delete(s.lines, i, i+1)
		s.grow()
		s.tell()
	}
	s.row.left()
}

// remove takes a reading out; where the value cannot do without, it comes back.
func (s *readings) remove(l *reading) {
	i := slices.Index(s.lines, l)
	if i < 0 || l.entry.Text == "" {
		return
	}
	s.lines = slices.Delete(s.lines, i, i+1)
	s.grow()
	s.typed()
	if s.row.err != nil {
		s.fill()
	}
	s.row.list.OnDone()
	s.row.focus(s.lines[min(i, len(s.lines)-1)].entry)
}

// step goes from a line to the one before or after, and from the first and the last out of the readings.
func (s *readings) step(from *reading, by int) {
	switch to := slices.Index(s.lines, from) + by; {
	case to < 0:
		s.row.focus(s.row.entry)
	case to >= len(s.lines):
		s.row.step(+1)
	default:
		s.row.focus(s.lines[to].entry)
	}
}
