package control

import (
	"math"

	"fyne.io/fyne/v2"

	"understructure/app/ui/picture"
	"understructure/geometry/plane"
)

// photoEye is how near one looks and where: the zoom is 1 and off is nought where the figure is seen whole.
type photoEye struct {
	zoom float64
	off  plane.Point // of the middle of the view, mm
}

// How far one can go away and how near one can come, as multiples of the figure seen whole.
const (
	farthest = 0.2
	nearest  = 40
)

// Room round a figure that is seen whole, and the height of a view in which there is no figure, mm.
const (
	photoAir  = 30
	emptyHigh = 1800
)

// whole is the frame in which the figure, or a person where there is none, is seen whole.
func (s *PhotoStage) whole() picture.Frame {
	w, h := float64(s.Size().Width), float64(s.Size().Height)
	if !s.body.Empty() {
		f := s.body.Stand(s.camera, w-ruleWidth, h, photoAir)
		f.X += ruleWidth
		return f
	}
	return picture.Frame{Scale: max(h-2*photoAir, 1) / emptyHigh, X: w / 2, Y: h - photoAir}
}

// frame is where millimetres of the view fall in the widget.
func (s *PhotoStage) frame() picture.Frame {
	f, w, h := s.whole(), float64(s.Size().Width), float64(s.Size().Height)
	middle := plane.Point{X: (w/2 - f.X) / f.Scale, Y: (f.Y - h/2) / f.Scale}.Add(s.eye.off)
	scale := f.Scale * s.eye.zoom
	return picture.Frame{Scale: scale, X: w/2 - middle.X*scale, Y: h/2 + middle.Y*scale}
}

// inView is the point of the view, in millimetres, at a place of a frame.
func inView(f picture.Frame, x, y float64) plane.Point {
	return plane.Point{X: (x - f.X) / f.Scale, Y: (f.Y - y) / f.Scale}
}

// fromView is the place in a frame of a point of the view.
func fromView(f picture.Frame, p plane.Point) fyne.Position {
	return fyne.NewPos(float32(f.X+p.X*f.Scale), float32(f.Y-p.Y*f.Scale))
}

func (s *PhotoStage) at(p fyne.Position) plane.Point {
	return inView(s.frame(), float64(p.X), float64(p.Y))
}

// Whole shows the figure whole.
func (s *PhotoStage) Whole() { s.look(photoEye{zoom: 1}) }

// Nearer goes nearer by one step, or farther by as many as are below nothing.
func (s *PhotoStage) Nearer(steps int) {
	s.zoomBy(math.Pow(keyStep, float64(steps)), fyne.NewPos(s.Size().Width/2, s.Size().Height/2))
}

// Scrolled goes nearer or farther about the pointer.
func (s *PhotoStage) Scrolled(ev *fyne.ScrollEvent) {
	s.zoomBy(math.Pow(wheelStep, max(-3, min(float64(ev.Scrolled.DY)/10, 3))), ev.Position)
}

// zoomBy changes the scale about a place, which stays where it is.
func (s *PhotoStage) zoomBy(times float64, about fyne.Position) {
	eye, before := s.eye, s.at(about)
	eye.zoom = max(farthest, min(eye.zoom*times, nearest))
	now := s.eye
	s.eye = eye
	eye.off = eye.off.Add(before.Sub(s.at(about)))
	s.eye = now
	s.look(eye)
}

// pan moves the view along.
func (s *PhotoStage) pan(dx, dy float32) {
	scale := s.frame().Scale
	s.look(photoEye{s.eye.zoom, s.eye.off.Add(plane.Point{X: -float64(dx) / scale, Y: float64(dy) / scale})})
}

func (s *PhotoStage) look(eye photoEye) {
	if eye != s.eye {
		s.eye = eye
		s.Refresh()
	}
}
