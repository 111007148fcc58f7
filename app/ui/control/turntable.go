package control

import (
	"image"
	"math"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/look"
	"understructure/app/ui/picture"
	"understructure/geometry/unit"
	"understructure/geometry/view"
)

// Turntable shows a figure from any side. It is turned by dragging or with the arrow keys, and the space
// bar sets it going. A tap asks for the place under the pointer.
type Turntable struct {
	widget.BaseWidget
	OnPicked func(Spot)

	body    *picture.Body
	tapes   []float64 // heights
	picked  float64
	mode    picture.Mode
	spot    *Spot
	yaw     unit.Angle
	going   *fyne.Animation // nil while it stands
	painter picture.Painter
	raster  *canvas.Raster
	layer   *fyne.Container
}

// NewTurntable returns an empty one.
func NewTurntable() *Turntable {
	t := &Turntable{body: new(picture.Body), OnPicked: func(Spot) {}, layer: container.NewWithoutLayout()}
	t.raster = canvas.NewRaster(t.paint)
	t.ExtendBaseWidget(t)
	return t
}

// Draw shows a figure with tapes at these heights, one of which is picked.
func (t *Turntable) Draw(body *picture.Body, tapes []float64, picked float64) {
	t.body, t.tapes, t.picked = body, tapes, picked
	t.Refresh()
}

// Paint chooses what the colours of the mount say.
func (t *Turntable) Paint(m picture.Mode) { t.mode = m; t.Refresh() }

// Point rings a place; nil takes the ring away.
func (t *Turntable) Point(s *Spot) { t.spot = s; t.Refresh() }

// Turn shows the figure from a side, and stops it.
func (t *Turntable) Turn(yaw unit.Angle) {
	t.Stop()
	t.yaw = yaw
	t.Refresh()
}

// Yaw is the side from which it is seen.
func (t *Turntable) Yaw() unit.Angle { return t.yaw }

// lap is how long the figure takes to turn once.
const lap = 12 * time.Second

// Start sets it going from where it stands.
func (t *Turntable) Start() {
	if t.going != nil {
		return
	}
	from := t.yaw
	t.going = fyne.NewAnimation(lap, func(done float32) {
		if !t.Visible() {
			t.Stop()
			return
		}
		t.yaw = from + unit.Angle(2*math.Pi*float64(done))
		t.Refresh()
	})
	t.going.Curve, t.going.RepeatCount = fyne.AnimationLinear, fyne.AnimationRepeatForever
	t.going.Start()
}

// Stop holds it.
func (t *Turntable) Stop() {
	if t.going != nil {
		t.going.Stop()
		t.going = nil
	}
}

// Going reports whether it turns.
func (t *Turntable) Going() bool { return t.going != nil }

// Hide stops it too.
func (t *Turntable) Hide() { t.Stop(); t.BaseWidget.Hide() }

// Dragged turns the figure: its skin follows the pointer where it is nearest.
func (t *Turntable) Dragged(ev *fyne.DragEvent) {
	t.Turn(t.yaw + unit.Angle(float64(ev.Dragged.DX)/max(t.reach(), 1)))
}

// reach is the figure's largest distance from its axis, in the toolkit's units.
func (t *Turntable) reach() float64 {
	lo, hi := t.body.Low, t.body.High
	return t.frame(t.Size()).Scale * max(hi.X, -lo.X, hi.Y, -lo.Y)
}

// DragEnd is for the toolkit.
func (t *Turntable) DragEnd() {}

// Tapped asks for the place under the pointer.
func (t *Turntable) Tapped(ev *fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(t); c != nil {
		c.Focus(t)
	}
	size := t.Size()
	if t.body.Empty() || size.Width == 0 {
		return
	}
	s := t.scene(t.frame(size))
	t.painter.Figure(image.NewRGBA(image.Rect(0, 0, int(size.Width), int(size.Height))), t.body, s)
	if z, turn, ok := t.painter.Under(s, float64(ev.Position.X), float64(ev.Position.Y)); ok {
		t.OnPicked(Spot{z, turn})
	}
}

// TypedKey turns the figure by fifteen degrees, or sets it going.
func (t *Turntable) TypedKey(ev *fyne.KeyEvent) {
	const turn = 15 * unit.Degree
	switch ev.Name {
	case fyne.KeyLeft:
		t.Turn(t.yaw - turn)
	case fyne.KeyRight:
		t.Turn(t.yaw + turn)
	case fyne.KeySpace:
		if t.Going() {
			t.Stop()
		} else {
			t.Start()
		}
	}
}

// TypedRune does nothing.
func (t *Turntable) TypedRune(rune) {}

// FocusGained is for the toolkit.
func (t *Turntable) FocusGained() {}

// FocusLost is for the toolkit.
func (t *Turntable) FocusLost() {}

// Cursor says that the figure can be turned.
func (t *Turntable) Cursor() desktop.Cursor { return desktop.HResizeCursor }

// turntableAir is the room round the figure.
const turntableAir = 18

func (t *Turntable) frame(size fyne.Size) picture.Frame {
	return t.body.Stand(view.From(t.yaw, 0), float64(size.Width), float64(size.Height), turntableAir)
}

func (t *Turntable) scene(f picture.Frame) picture.Scene {
	p := look.Palette()
	s := picture.Scene{Camera: view.From(t.yaw, 0), Frame: f, Palette: p, Mode: t.mode}
	for _, z := range t.tapes {
		tape := picture.Tape{Height: z, Colour: p.Faint, Width: 1}
		if z == t.picked {
			tape.Colour, tape.Width = p.Wanted, 2.2
		}
		s.Tapes = append(s.Tapes, tape)
	}
	return s
}

func (t *Turntable) paint(w, h int) image.Image {
	img := t.painter.Sheet(w, h)
	if t.body.Empty() || t.Size().Width == 0 {
		return img
	}
	f, pixels := t.frame(t.Size()), float64(w)/float64(t.Size().Width)
	s := t.scene(picture.Frame{Scale: f.Scale * pixels, X: f.X * pixels, Y: f.Y * pixels})
	for i := range s.Tapes {
		s.Tapes[i].Width *= pixels
	}
	t.painter.Figure(img, t.body, s)
	return img
}

func (t *Turntable) mark() {
	t.layer.Objects = nil
	if size := t.Size(); t.spot != nil && !t.body.Empty() && size.Width > 0 {
		if at, seen := t.body.SpotOn(view.From(t.yaw, 0), t.frame(size), t.spot.Height, t.spot.Turn); seen {
			t.layer.Add(ring(float32(at.X), float32(at.Y)))
		}
	}
	canvas.Refresh(t.layer)
}

type turntableRenderer struct{ *Turntable }

// CreateRenderer is for the toolkit.
func (t *Turntable) CreateRenderer() fyne.WidgetRenderer { return turntableRenderer{t} }

func (r turntableRenderer) Destroy()           { r.Stop() }
func (r turntableRenderer) MinSize() fyne.Size { return fyne.NewSize(200, 260) }
func (r turntableRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.raster, r.layer}
}

func (r turntableRenderer) Layout(size fyne.Size) {
	r.raster.Resize(size)
	r.layer.Resize(size)
	r.mark()
}

func (r turntableRenderer) Refresh() {
	r.raster.Refresh()
	r.mark()
}
