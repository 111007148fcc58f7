package control

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Measure is one value that can be typed.
type Measure struct {
	Key      string
	Label    string
	Where    string // one sentence on how it is taken
	Group    string
	Unit     string
	Value    *float64  // nil: not taken
	Most     int       // how many readings can be kept; below two it is taken once
	Readings []float64 // all readings, in the order taken, where it was; Value is the one that counts
	Spread   string    // how far the readings lie apart, in words
	Wide     bool      // whether that is too far
	Drawn    *float64  // what statistics say instead; nil: nothing is said
	Hint     string    // what an empty entry says where that is not one number
	Warning  string
	Again    string // quiet words beside the name: that it should be measured again; "" where it need not
	Why      string // a sentence on that, said where the value is in hand
}

// MeasureList shows values in groups, one entry each. A value counts as soon as it is typed and
// can be read; an empty entry is a value not taken.
type MeasureList struct {
	widget.BaseWidget
	Read       func(key, text string) (*float64, error) // the error is shown beside the entry
	Write      func(key string, v float64) string
	OnChanged  func(key string, v *float64)
	OnReadings func(key string, all []float64)                 // two or more readings of a value that repeats
	OnDone     func()                                          // the entry was left
	Head       fyne.CanvasObject                               // above the values, scrolled with them; may be nil
	Draw       func(key string, width, height int) image.Image // shows how a value is taken, "" is none; nil: nothing is drawn

	rows   []*measureRow
	box    *fyne.Container
	scroll *container.Scroll
	foot   *measureFoot
	ground color.Color // of the theme that the list was last painted in
}

// NewMeasureList returns an empty list.
func NewMeasureList() *MeasureList {
	l := &MeasureList{
		OnChanged: func(string, *float64) {}, OnReadings: func(string, []float64) {}, OnDone: func() {},
		box: container.NewVBox(), foot: newMeasureFoot(),
	}
	l.scroll = container.NewVScroll(l.box)
	l.ExtendBaseWidget(l)
	return l
}

// Fill brings the list to these values. Rows stay, with what is being typed in them, as long as
// the keys are the same.
func (l *MeasureList) Fill(measures []Measure) {
	if !l.same(measures) {
		l.build(measures)
	}
	for i, m := range measures {
		l.rows[i].show(m)
	}
	l.repaint()
	l.foot.redraw()
}

// repaint takes over the colours of another theme, which the toolkit does not tell a list that is hidden.
func (l *MeasureList) repaint() {
	ground := theme.Color(theme.ColorNameBackground)
	if ground == l.ground {
		return
	}
	l.ground = ground
	l.box.Refresh()
	l.foot.help.Refresh()
	for _, r := range l.rows {
		for _, o := range (measureRowRenderer{r}).Objects() {
			o.Refresh()
		}
	}
}

// Entry returns the entry of a key, nil when the list has none.
func (l *MeasureList) Entry(key string) *widget.Entry {
	if r := l.row(key); r != nil {
		return &r.entry.Entry
	}
	return nil
}

// Focus gives the entry of a key the keys, and reports whether the list has it.
func (l *MeasureList) Focus(key string) bool {
	r := l.row(key)
	if r != nil {
		r.focus(r.entry)
	}
	return r != nil
}

// Note returns what is shown beside the entry of a key.
func (l *MeasureList) Note(key string) string {
	if r := l.row(key); r != nil && r.note.Visible() {
		return r.note.Text
	}
	return ""
}

func (l *MeasureList) row(key string) *measureRow {
	for _, r := range l.rows {
		if r.measure.Key == key {
			return r
		}
	}
	return nil
}

func (l *MeasureList) same(measures []Measure) bool {
	if len(measures) != len(l.rows) {
		return false
	}
	for i, m := range measures {
		if l.rows[i].measure.Key != m.Key {
			return false
		}
	}
	return true
}

func (l *MeasureList) build(measures []Measure) {
	l.rows, l.box.Objects = nil, nil
	if l.Head != nil {
		l.box.Add(l.Head)
	}
	for i, m := range measures {
		if i == 0 || measures[i-1].Group != m.Group {
			l.box.Add(NewGroup(m.Group))
		}
		row := newMeasureRow(l, m)
		l.rows = append(l.rows, row)
		l.box.Add(row)
	}
	l.box.Refresh()
	l.scroll.ScrollToTop()
}

// next is the row after r, or r itself when it is the last.
func (l *MeasureList) next(r *measureRow, by int) *measureRow {
	for i, other := range l.rows {
		if other == r {
			return l.rows[min(max(i+by, 0), len(l.rows)-1)]
		}
	}
	return r
}

// reveal scrolls so far that the row is seen.
func (l *MeasureList) reveal(r *measureRow) {
	top, bottom := r.Position().Y, r.Position().Y+r.Size().Height
	offset := l.scroll.Offset
	switch {
	case top < offset.Y:
		offset.Y = top
	case bottom > offset.Y+l.scroll.Size().Height:
		offset.Y = bottom - l.scroll.Size().Height
	default:
		return
	}
	l.scroll.ScrollToOffset(offset)
}

// CreateRenderer is for the toolkit.
func (l *MeasureList) CreateRenderer() fyne.WidgetRenderer {
	foot := container.NewVBox(widget.NewSeparator(), l.foot.box(l.Draw))
	return widget.NewSimpleRenderer(container.NewBorder(nil, foot, nil, nil, l.scroll))
}
