package control

import (
	"image"

	"understructure/app/ui/look"
	"understructure/app/ui/picture"
	"understructure/geometry/unit"
	"understructure/geometry/view"
)

// ahead is a picture of a figure that goes round, painted beside the main thread while the one before is on the screen.
// The painter's two images serve as the two buffers.
type ahead struct {
	yaw unit.Angle
	img *image.RGBA // nil for none
}

// ask has the view from a side painted; it comes through e.turning.next.
func (e *Elevation) ask(yaw unit.Angle) {
	s, body := &e.seen[0], e.body
	w, h, scene := s.wide, s.high, e.scene(0, yaw)
	next := make(chan ahead, 1)
	e.turning.next = next
	go func() {
		img := s.painter.Sheet(w, h)
		s.painter.Figure(img, body, scene)
		next <- ahead{yaw, img}
	}()
}

// await waits until nothing is being painted beside.
func (e *Elevation) await() {
	if e.turning.next != nil {
		<-e.turning.next
		e.turning.next = nil
	}
}

// step is one picture of a figure that goes round: the newest that is ready. One that nobody sees any more stops.
func (e *Elevation) step(yaw unit.Angle) {
	if e.turning.unseen++; e.turning.painted {
		e.turning.unseen = 0
	}
	if e.turning.painted = false; e.turning.unseen > mostUnseen {
		e.Halt()
		return
	}
	if e.renderer == nil || e.seen[0].wide == 0 { // it has not been on the screen yet
		e.yaws = []unit.Angle{yaw}
		return
	}
	if e.turning.next == nil {
		e.ask(yaw)
		return
	}
	select {
	case e.turning.shown = <-e.turning.next:
		e.yaws = []unit.Angle{e.turning.shown.yaw}
		e.renderer.turned()
		e.ask(yaw)
	default: // it is still being painted
	}
}

// paint draws the figure in one view; it runs only when the figure, the view, the size or the colours change.
func (e *Elevation) paint(v, w, h int) image.Image {
	e.turning.painted = true
	if img := e.turning.shown.img; v == 0 && img != nil && img.Rect == image.Rect(0, 0, w, h) {
		return img
	}
	e.await()
	s := &e.seen[v]
	s.wide, s.high = w, h
	img := s.painter.Sheet(w, h)
	if !e.body.Empty() && e.Size().Width > 0 && v < len(e.yaws) {
		s.painter.Figure(img, e.body, e.scene(v, e.yaws[v]))
	}
	if e.Going() {
		e.turning.shown = ahead{e.yaws[0], img}
	}
	return img
}

// scene is how a view is painted from a side.
func (e *Elevation) scene(v int, yaw unit.Angle) picture.Scene {
	a := e.arrange(e.Size())
	f, box, pixels := a.frames[v], a.boxes[v], e.pixels(v)
	return picture.Scene{
		Camera: view.From(yaw, 0), Palette: look.Palette(), Mode: e.mode,
		Frame: picture.Frame{Scale: f.Scale * pixels, X: (f.X - float64(box.at.X)) * pixels, Y: (f.Y - float64(box.at.Y)) * pixels},
	}
}

// pixels is how many a unit of the toolkit has in a view as it was last painted.
func (e *Elevation) pixels(v int) float64 {
	return float64(e.seen[v].wide) / float64(e.arrange(e.Size()).boxes[v].size.Width)
}
