package control

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/look"
	"understructure/app/ui/picture"
	"understructure/geometry/plane"
	"understructure/geometry/view"
)

// Grip is what of a photograph is moved by hand.
type Grip int

// The grips: the photograph itself, its low and its high point, and the points of the trace from GripTrace on.
const (
	GripWhole Grip = iota
	GripLow
	GripHigh
	GripTrace
)

// Laid is a photograph as it lies behind the figure. View turns a pixel of it into millimetres across and up
// in the view, Pixel the other way round; both are nil while it does not lie anywhere.
type Laid struct {
	Image     *image.RGBA
	Shrunk    float64 // pixels of the photograph to one of Image
	Fade      float64 // 1 is not to be seen
	View      func(pixel plane.Point) plane.Point
	Pixel     func(view plane.Point) plane.Point
	Low, High plane.Point // pixels
	Trace     []plane.Point
}

// PhotoStage shows a photograph behind the outlines of mount and garment. What is dragged is told in millimetres;
// while tracing, a tap asks for another point.
type PhotoStage struct {
	widget.BaseWidget
	OnMoved   func(g Grip, by plane.Point) // since the last time, in millimetres of the view
	OnSettled func()
	OnTraced  func(at plane.Point) // a point to be added, in millimetres of the view
	OnErased  func()               // the last point is to go

	body    *picture.Body
	camera  view.Camera
	laid    Laid
	tracing bool
	grip    Grip
	held    bool
	painter picture.Painter
	raster  *canvas.Raster
	layer   *fyne.Container
}

// NewPhotoStage returns an empty one.
func NewPhotoStage() *PhotoStage {
	s := &PhotoStage{
		OnMoved: func(Grip, plane.Point) {}, OnSettled: func() {}, OnTraced: func(plane.Point) {}, OnErased: func() {},
		body: new(picture.Body), layer: container.NewWithoutLayout(),
	}
	s.raster = canvas.NewRaster(s.paint)
	s.ExtendBaseWidget(s)
	return s
}

// Draw shows a photograph behind a figure seen by a camera.
func (s *PhotoStage) Draw(body *picture.Body, c view.Camera, laid Laid) {
	s.body, s.camera, s.laid = body, c, laid
	s.Refresh()
}

// Trace begins or ends the tracing.
func (s *PhotoStage) Trace(on bool) { s.tracing = on; s.mark() }

func (s *PhotoStage) frame(size fyne.Size) picture.Frame {
	return s.body.Stand(s.camera, float64(size.Width), float64(size.Height), turntableAir)
}

// inView is the point of the view, in millimetres, at a place of the widget.
func inView(f picture.Frame, at fyne.Position) plane.Point {
	return plane.Point{X: (float64(at.X) - f.X) / f.Scale, Y: (f.Y - float64(at.Y)) / f.Scale}
}

func fromView(f picture.Frame, p plane.Point) fyne.Position {
	return fyne.NewPos(float32(f.X+p.X*f.Scale), float32(f.Y-p.Y*f.Scale))
}

// grips are where everything that can be moved lies in the widget, by grip; nil where nothing lies anywhere.
func (s *PhotoStage) grips() []fyne.Position {
	if s.laid.View == nil || s.body.Empty() {
		return nil
	}
	f := s.frame(s.Size())
	out := []fyne.Position{{X: -100, Y: -100}}
	for _, p := range append([]plane.Point{s.laid.Low, s.laid.High}, s.laid.Trace...) {
		out = append(out, fromView(f, s.laid.View(p)))
	}
	return out
}

// MouseDown takes the point under the pointer, or else the whole photograph.
func (s *PhotoStage) MouseDown(ev *desktop.MouseEvent) {
	if ev.Button != desktop.MouseButtonPrimary {
		return
	}
	s.grip, s.held = GripWhole, true
	for i, p := range s.grips() {
		if d := p.Subtract(ev.Position); d.X*d.X+d.Y*d.Y <= handleReach*handleReach {
			s.grip = Grip(i)
		}
	}
}

// MouseUp lets it go.
func (s *PhotoStage) MouseUp(*desktop.MouseEvent) { s.DragEnd() }

// Dragged moves what is held. While tracing the photograph itself stays.
func (s *PhotoStage) Dragged(ev *fyne.DragEvent) {
	if !s.held || s.body.Empty() || s.tracing && s.grip == GripWhole {
		return
	}
	scale := s.frame(s.Size()).Scale
	s.OnMoved(s.grip, plane.Point{X: float64(ev.Dragged.DX) / scale, Y: -float64(ev.Dragged.DY) / scale})
}

// DragEnd lets it go.
func (s *PhotoStage) DragEnd() {
	if s.held {
		s.held = false
		s.OnSettled()
	}
}

// Tapped asks, while tracing, for a point here.
func (s *PhotoStage) Tapped(ev *fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(s); c != nil {
		c.Focus(s)
	}
	if s.tracing && s.grip == GripWhole && !s.body.Empty() {
		s.OnTraced(inView(s.frame(s.Size()), ev.Position))
	}
}

// TypedKey moves what was held last by a pixel of the screen; Backspace takes the last point of the trace away.
func (s *PhotoStage) TypedKey(ev *fyne.KeyEvent) {
	step := map[fyne.KeyName]plane.Point{fyne.KeyLeft: {X: -1}, fyne.KeyRight: {X: 1}, fyne.KeyUp: {Y: 1}, fyne.KeyDown: {Y: -1}}
	if ev.Name == fyne.KeyBackspace {
		s.OnErased()
		return
	}
	if by, ok := step[ev.Name]; ok && !s.body.Empty() {
		s.OnMoved(s.grip, by.Mul(1/s.frame(s.Size()).Scale))
		s.OnSettled()
	}
}

// TypedRune does nothing.
func (s *PhotoStage) TypedRune(rune) {}

// FocusGained is for the toolkit.
func (s *PhotoStage) FocusGained() {}

// FocusLost is for the toolkit.
func (s *PhotoStage) FocusLost() {}

// Cursor says whether a tap adds a point.
func (s *PhotoStage) Cursor() desktop.Cursor {
	if s.tracing {
		return desktop.CrosshairCursor
	}
	return desktop.PointerCursor
}

func (s *PhotoStage) paint(w, h int) image.Image {
	img := s.painter.Sheet(w, h)
	if s.body.Empty() || s.Size().Width == 0 {
		return img
	}
	f, pixels := s.frame(s.Size()), float64(w)/float64(s.Size().Width)
	f = picture.Frame{Scale: f.Scale * pixels, X: f.X * pixels, Y: f.Y * pixels}
	s.lay(img, f)
	s.painter.Figure(img, s.body, picture.Scene{Camera: s.camera, Frame: f, Palette: look.Palette(), Lines: true})
	return img
}

// lay paints the photograph, pixel by pixel of the screen: it is only turned, scaled and moved, so that three
// places tell where all the others lie.
func (s *PhotoStage) lay(img *image.RGBA, f picture.Frame) {
	l := s.laid
	if l.Image == nil || l.Pixel == nil {
		return
	}
	at := func(x, y float64) plane.Point {
		return l.Pixel(plane.Point{X: (x - f.X) / f.Scale, Y: (f.Y - y) / f.Scale}).Mul(1 / l.Shrunk)
	}
	origin := at(0.5, 0.5)
	across, down := at(1.5, 0.5).Sub(origin), at(0.5, 1.5).Sub(origin)
	seen := 1 - l.Fade
	for y := range img.Rect.Dy() {
		p := origin.Add(down.Mul(float64(y)))
		for x := range img.Rect.Dx() {
			u, v := int(math.Floor(p.X)), int(math.Floor(p.Y))
			if (image.Point{X: u, Y: v}).In(l.Image.Rect) {
				from, to := l.Image.PixOffset(u, v), img.PixOffset(x, y)
				for c := range 4 { // alpha-premultiplied, as both images are
					img.Pix[to+c] = uint8(float64(l.Image.Pix[from+c]) * seen)
				}
			}
			p = p.Add(across)
		}
	}
}

func (s *PhotoStage) mark() {
	s.layer.Objects = nil
	grips := s.grips()
	for i := int(GripTrace) + 1; i < len(grips); i++ {
		s.layer.Add(line(grips[i-1].X, grips[i-1].Y, grips[i].X, grips[i].Y, theme.ColorNamePrimary, 2))
	}
	if len(grips) > int(GripHigh) {
		s.layer.Add(line(grips[GripLow].X, grips[GripLow].Y, grips[GripHigh].X, grips[GripHigh].Y, look.ColorWanted, 1))
	}
	for i := 1; i < len(grips); i++ {
		size := float32(7)
		if Grip(i) < GripTrace {
			size = handleSize + 2
		}
		c := canvas.NewCircle(theme.Color(theme.ColorNameBackground))
		c.StrokeColor, c.StrokeWidth = theme.Color(theme.ColorNamePrimary), 2
		c.Move(grips[i].SubtractXY(size/2, size/2))
		c.Resize(fyne.NewSize(size, size))
		s.layer.Add(c)
	}
	canvas.Refresh(s.layer)
}

type photoStageRenderer struct{ *PhotoStage }

// CreateRenderer is for the toolkit.
func (s *PhotoStage) CreateRenderer() fyne.WidgetRenderer { return photoStageRenderer{s} }

func (r photoStageRenderer) Destroy()           {}
func (r photoStageRenderer) MinSize() fyne.Size { return fyne.NewSize(300, 260) }
func (r photoStageRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.raster, r.layer}
}

func (r photoStageRenderer) Layout(size fyne.Size) {
	r.raster.Resize(size)
	r.layer.Resize(size)
	r.mark()
}

func (r photoStageRenderer) Refresh() {
	r.raster.Refresh()
	r.mark()
}
