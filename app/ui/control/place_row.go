package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// PlaceRow is one line of a list of places.
type PlaceRow struct {
	widget.BaseWidget
	where    Where
	onPicked func()
	beside   func(by int) *PlaceRow // nil beyond the ends

	marked  bool // one has gone there
	over    bool // the pointer is on it
	focused bool
}

func newPlaceRow(w Where, onPicked func()) *PlaceRow {
	r := &PlaceRow{where: w, onPicked: onPicked}
	r.ExtendBaseWidget(r)
	return r
}

// Where is the place that the line leads to.
func (r *PlaceRow) Where() Where { return r.where }

// Tapped goes there.
func (r *PlaceRow) Tapped(*fyne.PointEvent) { takeKeys(r); r.onPicked() }

// TypedKey goes there, or to the line above or below.
func (r *PlaceRow) TypedKey(ev *fyne.KeyEvent) {
	step := map[fyne.KeyName]int{fyne.KeyUp: -1, fyne.KeyDown: 1}
	switch ev.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		r.onPicked()
	case fyne.KeyUp, fyne.KeyDown:
		if next := r.beside(step[ev.Name]); next != nil {
			takeKeys(next)
			next.onPicked()
		}
	}
}

// TypedRune does nothing.
func (r *PlaceRow) TypedRune(rune) {}

// FocusGained shows that the keys go here.
func (r *PlaceRow) FocusGained() { r.focused = true; r.Refresh() }

// FocusLost takes that back.
func (r *PlaceRow) FocusLost() { r.focused = false; r.Refresh() }

// MouseIn marks the line under the pointer.
func (r *PlaceRow) MouseIn(*desktop.MouseEvent) { r.over = true; r.Refresh() }

// MouseMoved is for the toolkit.
func (r *PlaceRow) MouseMoved(*desktop.MouseEvent) {}

// MouseOut takes the mark away.
func (r *PlaceRow) MouseOut() { r.over = false; r.Refresh() }

// Cursor says that the line leads somewhere.
func (r *PlaceRow) Cursor() desktop.Cursor { return desktop.PointerCursor }

// Measures of a line, in the toolkit's units.
const (
	placeHeight = 23
	rowEdge     = 6
)

// placeRowRenderer has the ground, the swatch of the band, the place and the amount.
type placeRowRenderer struct {
	r      *PlaceRow
	ground *canvas.Rectangle
	swatch *canvas.Raster
	place  *widget.Label
	amount *canvas.Text
}

// CreateRenderer is for the toolkit.
func (r *PlaceRow) CreateRenderer() fyne.WidgetRenderer {
	p := &placeRowRenderer{r: r, ground: canvas.NewRectangle(nil), swatch: swatchOf(r.where.Band), place: widget.NewLabel(r.where.Place), amount: words(r.where.Amount, theme.ColorNameForeground, false)}
	p.ground.CornerRadius = 4
	p.place.SizeName, p.place.Truncation = theme.SizeNameCaptionText, fyne.TextTruncateEllipsis
	p.Refresh()
	return p
}

func (p *placeRowRenderer) Destroy()           {}
func (p *placeRowRenderer) MinSize() fyne.Size { return fyne.NewSize(180, placeHeight) }
func (p *placeRowRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{p.ground, p.swatch, p.place, p.amount}
}

func (p *placeRowRenderer) Layout(size fyne.Size) {
	p.ground.Resize(size)
	p.swatch.Resize(p.swatch.MinSize())
	p.swatch.Move(fyne.NewPos(rowEdge, (size.Height-p.swatch.MinSize().Height)/2))
	place(p.amount, size.Width-rowEdge, size.Height/2, 1)
	left, h := rowEdge+p.swatch.MinSize().Width, p.place.MinSize().Height
	p.place.Move(fyne.NewPos(left, (size.Height-h)/2))
	p.place.Resize(fyne.NewSize(p.amount.Position().X-left, h))
}

func (p *placeRowRenderer) Refresh() {
	p.ground.FillColor = theme.Color(theme.ColorNameBackground)
	switch {
	case p.r.marked:
		p.ground.FillColor = theme.Color(theme.ColorNameSelection)
	case p.r.over:
		p.ground.FillColor = theme.Color(theme.ColorNameHover)
	}
	p.ground.StrokeWidth = 0
	if p.r.focused {
		p.ground.StrokeColor, p.ground.StrokeWidth = theme.Color(theme.ColorNamePrimary), 1
	}
	p.amount.Color = theme.Color(theme.ColorNameForeground)
	for _, o := range p.Objects() {
		o.Refresh()
	}
}
