package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"
)

// Where is one line of a list of places: what it says, and what it leads to.
type Where struct {
	Text string
	Spot Spot
}

// PlaceList lists places on the mount; one goes to each by a tap or by keyboard.
type PlaceList struct {
	widget.BaseWidget
	OnPicked func(Spot)

	empty string // what is said where there are none
	rows  []*widget.Button
	box   *fyne.Container
}

// NewPlaceList returns a list that says so where it is empty.
func NewPlaceList(empty string) *PlaceList {
	l := &PlaceList{OnPicked: func(Spot) {}, empty: empty, box: container.New(layout.NewCustomPaddedVBoxLayout(-6))}
	l.ExtendBaseWidget(l)
	l.Fill(nil)
	return l
}

// Fill brings the list to these places.
func (l *PlaceList) Fill(places []Where) {
	l.rows, l.box.Objects = nil, nil
	for _, p := range places {
		b := widget.NewButton(p.Text, func() { l.OnPicked(p.Spot) })
		b.Importance, b.Alignment = widget.LowImportance, widget.ButtonAlignLeading
		l.rows = append(l.rows, b)
		l.box.Add(b)
	}
	if len(places) == 0 {
		note := widget.NewLabel(l.empty)
		note.Wrapping = fyne.TextWrapWord
		l.box.Add(note)
	}
	l.box.Refresh()
}

// Rows are the buttons of the list.
func (l *PlaceList) Rows() []*widget.Button { return l.rows }

// placesHeight holds four places.
const placesHeight = 136

// CreateRenderer is for the toolkit.
func (l *PlaceList) CreateRenderer() fyne.WidgetRenderer {
	scroll := container.NewVScroll(l.box)
	scroll.SetMinSize(fyne.NewSize(0, placesHeight))
	return widget.NewSimpleRenderer(scroll)
}
