package control

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

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

// Placing says how a photograph lies in a view: there pixels become millimetres across to the right and up
// from the floor.
type Placing interface {
	View(pixel plane.Point) plane.Point
	Pixel(view plane.Point) plane.Point
	Scale() float64 // millimetres in a pixel
}

// Laid is a photograph as it lies behind the figure. Its points are pixels of the photograph.
type Laid struct {
	Sizes     []*image.RGBA // the largest first, each with half the width and height of the one before; none is nothing to be seen
	Shrunk    float64       // pixels of the photograph to one of the first
	Fade      float64       // from 0, as it is, to 1, not to be seen
	Placing   Placing       // nil: there is no photograph
	Low, High plane.Point
	Apart     string // how far the two are apart, in words
	Trace     []plane.Point
	Widths    []Width // how broad the traced silhouette is at some heights
}

// Width is the extent of a silhouette at a height, in millimetres of the view.
type Width struct{ Height, Left, Right float64 }

// Mark is a level line behind which the photograph lies.
type Mark struct {
	Name   string
	Height float64 // millimetres above the floor
}

// PhotoStage shows a photograph behind the outlines of mount and garment. It is moved by dragging it, and the
// points on it by dragging them: what is told then are pixels of the photograph, except for the photograph itself.
// The wheel and the keys + − 0 go nearer and farther; dragging beside the photograph, or with the middle button,
// moves the view. Page Up and Page Down choose what the arrow keys move, by a pixel, with Shift by ten.
//
// While tracing, a tap adds a point and Backspace takes the last away; a tap on the last point, as a double tap makes,
// or Enter ends it, and one on the first closes the line.
type PhotoStage struct {
	widget.BaseWidget
	OnShifted func(by plane.Point)            // the photograph was moved, millimetres of the view
	OnPut     func(g Grip, pixel plane.Point) // a point was put somewhere else
	OnSettled func()                          // what was told before is a step of its own
	OnTraced  func(pixel plane.Point)         // a point is added to the trace
	OnErased  func(i int)                     // a point of the trace is taken away
	OnEnded   func()                          // tracing is over

	body    *picture.Body
	camera  view.Camera
	marks   []Mark
	rule    Rule
	laid    Laid
	tracing bool
	focused bool
	chosen  Grip
	hand    photoHand
	eye     photoEye

	painter picture.Painter
	ground  photoGround
	raster  *canvas.Raster
	layer   *fyne.Container
}

// NewPhotoStage returns an empty one.
func NewPhotoStage() *PhotoStage {
	s := &PhotoStage{
		OnShifted: func(plane.Point) {}, OnPut: func(Grip, plane.Point) {}, OnSettled: func() {},
		OnTraced: func(plane.Point) {}, OnErased: func(int) {}, OnEnded: func() {},
		body: new(picture.Body), camera: view.From(view.Front, 0), eye: photoEye{zoom: 1}, layer: container.NewWithoutLayout(),
	}
	s.raster = canvas.NewRaster(s.paint)
	s.ExtendBaseWidget(s)
	return s
}

// Figure shows the outlines of a figure as a camera sees it, with level lines and a rule.
func (s *PhotoStage) Figure(body *picture.Body, c view.Camera, marks []Mark, rule Rule) {
	same := s.body == body && s.camera == c
	s.body, s.camera, s.marks, s.rule = body, c, marks, rule
	if !same {
		s.raster.Refresh()
	}
	s.mark()
}

// Lay shows another photograph, or the same one lying otherwise. What is in the hand stays there.
func (s *PhotoStage) Lay(laid Laid) {
	s.laid = laid
	if last := Grip(s.grips() - 1); s.chosen > last {
		s.chosen = GripWhole
		if last >= GripTrace {
			s.chosen = last
		}
	}
	if s.hand.held && int(s.hand.grip) >= s.grips() {
		s.hand = photoHand{}
	}
	if s.ground.of != s.groundNow(s.Size()) {
		s.raster.Refresh()
	}
	s.mark()
}

// Trace begins or ends the tracing.
func (s *PhotoStage) Trace(on bool) {
	s.tracing = on
	if n := len(s.laid.Trace); on && n > 0 {
		s.choose(GripTrace + Grip(n) - 1)
	}
	s.mark()
}

// Tracing reports whether a tap adds a point.
func (s *PhotoStage) Tracing() bool { return s.tracing }

// Chosen is what the arrow keys move.
func (s *PhotoStage) Chosen() Grip { return s.chosen }

// grips is how many grips there are: none without a photograph.
func (s *PhotoStage) grips() int {
	if s.laid.Placing == nil {
		return 0
	}
	return int(GripTrace) + len(s.laid.Trace)
}

// pixel is where a grip lies on the photograph, or is held over it.
func (s *PhotoStage) pixel(g Grip) plane.Point {
	switch {
	case s.hand.held && s.hand.grip == g:
		return s.hand.pixel
	case g == GripLow:
		return s.laid.Low
	case g == GripHigh:
		return s.laid.High
	}
	return s.laid.Trace[g-GripTrace]
}

// choose settles what was chosen before, and chooses another.
func (s *PhotoStage) choose(g Grip) {
	if g != s.chosen {
		s.OnSettled()
		s.chosen = g
	}
	s.mark()
}
