package control

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/look"
	"understructure/app/ui/picture"
	"understructure/geometry/section"
)

// Map shows the clearance all over the mount, its skin laid out flat. A tap asks for the place under the pointer; the arrows go to
// another.
type Map struct {
	widget.BaseWidget
	OnPicked func(Spot)

	body    *picture.Body
	tapes   []Tape
	spot    *Spot
	painter picture.Painter
	raster  *canvas.Raster
	layer   *fyne.Container
}

// NewMap returns an empty one.
func NewMap() *Map {
	m := &Map{body: new(picture.Body), OnPicked: func(Spot) {}, layer: container.NewWithoutLayout()}
	m.raster = canvas.NewRaster(m.paint)
	m.ExtendBaseWidget(m)
	return m
}

// Draw shows a mount with its levels.
func (m *Map) Draw(body *picture.Body, tapes []Tape) {
	m.body, m.tapes = body, tapes
	m.Refresh()
}

// Point rings a place; nil takes the ring away.
func (m *Map) Point(s *Spot) { m.spot = s; m.mark() }

// Room round the map for words, in the toolkit's units.
const mapLeft, mapTop, mapFoot, mapRight = 88, 10, 30, 12

// unrolled is the map in the room that it has, at so many pixels a unit of the toolkit.
func (m *Map) unrolled(size fyne.Size, pixels float32) picture.Unrolled {
	at := func(x, y float32) image.Point { return image.Pt(int(x*pixels), int(y*pixels)) }
	return m.body.Unroll(image.Rectangle{Min: at(mapLeft, mapTop), Max: at(size.Width-mapRight, size.Height-mapFoot)})
}

func (m *Map) paint(w, h int) image.Image {
	img := m.painter.Sheet(w, h)
	if size := m.Size(); !m.body.Empty() && size.Width > mapLeft+mapRight {
		pixels := float32(w) / size.Width
		s := picture.MapScene{Palette: look.Palette(), Line: float64(pixels)}
		for _, t := range m.tapes {
			s.Levels = append(s.Levels, t.Height)
		}
		m.painter.Map(img, m.unrolled(size, pixels), s)
	}
	return img
}

func (m *Map) mark() {
	m.layer.Objects = nil
	if size := m.Size(); !m.body.Empty() && size.Width > mapLeft+mapRight {
		u := m.unrolled(size, 1)
		for _, t := range m.tapes {
			_, y := u.Spot(t.Height, 0)
			name := words(lang.L(t.Name), look.ColorFaint, false)
			place(name, mapLeft-8, float32(y), 1)
			m.layer.Add(name)
		}
		for _, b := range u.Balances() {
			name := words(SideWord(b.Name), look.ColorFaint, false)
			place(name, float32(b.X), size.Height-mapFoot/2, 0.5)
			m.layer.Add(name)
		}
		if m.spot != nil {
			x, y := u.Spot(m.spot.Height, m.spot.Turn)
			m.layer.Add(ring(float32(x), float32(y)))
		}
	}
	canvas.Refresh(m.layer)
}

// Tapped asks for the place under the pointer.
func (m *Map) Tapped(ev *fyne.PointEvent) {
	if m.body.Empty() {
		return
	}
	takeKeys(m)
	if z, turn, ok := m.unrolled(m.Size(), 1).Place(float64(ev.Position.X), float64(ev.Position.Y)); ok {
		m.OnPicked(Spot{z, turn})
	}
}

// By how much a key moves the ring: millimetres up, and parts of the way round.
const (
	keyRise = 5.0
	keyTurn = section.Directions / 64
)

// TypedKey moves the ring; the first key puts it on the centre front.
func (m *Map) TypedKey(ev *fyne.KeyEvent) {
	step, ok := map[fyne.KeyName]Spot{
		fyne.KeyUp: {Height: keyRise}, fyne.KeyDown: {Height: -keyRise}, fyne.KeyLeft: {Turn: -keyTurn}, fyne.KeyRight: {Turn: keyTurn},
	}[ev.Name]
	if !ok || m.body.Empty() {
		return
	}
	at := Spot{Height: (m.body.Low.Z + m.body.High.Z) / 2, Turn: section.Directions / 4}
	if m.spot != nil {
		at = Spot{m.spot.Height + step.Height, math.Mod(m.spot.Turn+step.Turn+section.Directions, section.Directions)}
	}
	if _, _, ok := m.body.ClearanceAt(at.Height, at.Turn); ok {
		m.OnPicked(at)
	}
}

// TypedRune does nothing.
func (m *Map) TypedRune(rune) {}

// FocusGained is for the toolkit.
func (m *Map) FocusGained() {}

// FocusLost is for the toolkit.
func (m *Map) FocusLost() {}

// Cursor says that places can be pointed at.
func (m *Map) Cursor() desktop.Cursor { return desktop.CrosshairCursor }

// CreateRenderer is for the toolkit.
func (m *Map) CreateRenderer() fyne.WidgetRenderer {
	return marked{m.raster, m.layer, m.mark, always(300, 260)}
}
