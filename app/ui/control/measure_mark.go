package control

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// mark is a sign behind an entry that can be tapped. Keys pass it by: what it does can be typed as well.
type mark struct {
	widget.BaseWidget
	text   *canvas.Text
	tapped func()
	over   bool // the pointer is on it
}

func newMark(sign string, tapped func()) *mark {
	m := &mark{text: words(sign, theme.ColorNamePlaceHolder, false), tapped: tapped}
	m.text.Alignment = fyne.TextAlignCenter
	m.ExtendBaseWidget(m)
	return m
}

// count says how often a value was taken: once, and can be again; or more often.
func (m *mark) count(v Measure, open bool) {
	sign := ""
	switch {
	case v.Most < 2:
	case open:
		sign = "–"
	case len(v.Readings) > 1:
		sign = fmt.Sprintf("%d×", len(v.Readings))
	case v.Value != nil:
		sign = "+"
	}
	if m.text.Text != sign {
		m.text.Text = sign
		m.Refresh()
	}
}

// Tapped is for the toolkit.
func (m *mark) Tapped(*fyne.PointEvent) {
	if m.text.Text != "" {
		m.tapped()
	}
}

// MouseIn shows that it can be tapped.
func (m *mark) MouseIn(*desktop.MouseEvent) { m.hover(true) }

// MouseMoved is for the toolkit.
func (m *mark) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is for the toolkit.
func (m *mark) MouseOut() { m.hover(false) }

func (m *mark) hover(over bool) {
	m.over = over
	m.Refresh()
}

// CreateRenderer is for the toolkit.
func (m *mark) CreateRenderer() fyne.WidgetRenderer { return markRenderer{m} }

type markRenderer struct{ *mark }

func (r markRenderer) Destroy()                     {}
func (r markRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.text} }
func (r markRenderer) MinSize() fyne.Size           { return fyne.NewSize(markWidth, r.text.MinSize().Height) }
func (r markRenderer) Layout(size fyne.Size)        { r.text.Resize(size) }

func (r markRenderer) Refresh() {
	colour := theme.ColorNamePlaceHolder
	if r.over {
		colour = theme.ColorNamePrimary
	}
	r.text.Color, r.text.TextSize = theme.Color(colour), theme.CaptionTextSize()
	r.text.Refresh()
}
