package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/look"
	"understructure/geometry/fit"
)

// Where is one line of a list of places on the mount: in which band its clearance lies, where it is, how much
// that is in millimetres, and what the line leads to.
type Where struct {
	Band   fit.Band
	Place  string
	Amount string
	Spot   Spot
}

// PlaceList lists places on the mount; one goes to each by a tap or by keyboard.
type PlaceList struct {
	widget.BaseWidget
	OnPicked func(Spot)

	head  string // over the amounts
	empty string // what is said where there are none
	rows  []*PlaceRow
	box   *fyne.Container
}

// NewPlaceList returns a list, with what stands over the amounts and what is said where there are none.
func NewPlaceList(head, empty string) *PlaceList {
	l := &PlaceList{OnPicked: func(Spot) {}, head: head, empty: empty, box: container.New(layout.NewCustomPaddedVBoxLayout(0))}
	l.ExtendBaseWidget(l)
	l.Fill(nil)
	return l
}

// Fill brings the list to these places.
func (l *PlaceList) Fill(places []Where) {
	l.rows, l.box.Objects = nil, nil
	if len(places) == 0 {
		note := widget.NewLabel(l.empty)
		note.Wrapping, note.SizeName = fyne.TextWrapWord, theme.SizeNameCaptionText
		l.box.Add(note)
		return
	}
	head := words(l.head, look.ColorFaint, false)
	head.Alignment = fyne.TextAlignTrailing
	l.box.Add(container.New(layout.NewCustomPaddedLayout(0, 0, 0, rowEdge), head))
	for i, p := range places {
		row := newPlaceRow(p, func() { l.OnPicked(p.Spot) })
		row.beside = func(by int) *PlaceRow { return l.row(i + by) }
		l.rows = append(l.rows, row)
		l.box.Add(row)
	}
}

// row is one of the list; nil beyond its ends.
func (l *PlaceList) row(i int) *PlaceRow {
	if i < 0 || i >= len(l.rows) {
		return nil
	}
	return l.rows[i]
}

// Point marks the line of a place, if there is one; nil marks none.
func (l *PlaceList) Point(s *Spot) {
	for _, r := range l.rows {
		if at := s != nil && r.where.Spot == *s; at != r.marked {
			r.marked = at
			r.Refresh()
		}
	}
}

// Rows are the lines of the list.
func (l *PlaceList) Rows() []*PlaceRow { return l.rows }

// placesHeight holds five places.
const placesHeight = 133

// CreateRenderer is for the toolkit.
func (l *PlaceList) CreateRenderer() fyne.WidgetRenderer {
	scroll := container.NewVScroll(l.box)
	scroll.SetMinSize(fyne.NewSize(0, placesHeight))
	return widget.NewSimpleRenderer(scroll)
}
