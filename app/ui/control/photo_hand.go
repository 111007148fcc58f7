package control

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"understructure/geometry/plane"
)

// photoHand is what is being dragged. Nothing of it is told before it is let go, so that the photograph does
// not turn and grow under a point that is still being moved.
type photoHand struct {
	held  bool
	pan   bool // the view is, rather than a grip
	moved bool
	grip  Grip
	pixel plane.Point // where a point is
	shift plane.Point // how far the photograph was moved, millimetres of the view
}

// under is the grip of a point under the pointer, the nearest of them.
func (s *PhotoStage) under(at fyne.Position) (g Grip, found bool) {
	f, least := s.frame(), float32(handleReach*handleReach)
	for i := GripLow; int(i) < s.grips(); i++ {
		d := fromView(f, s.laid.Placing.View(s.pixel(i))).Subtract(at)
		if off := d.X*d.X + d.Y*d.Y; off <= least {
			g, least, found = i, off, true
		}
	}
	return g, found
}

// onPhoto reports whether a place lies on the photograph.
func (s *PhotoStage) onPhoto(at fyne.Position) bool {
	if s.laid.Placing == nil || len(s.laid.Sizes) == 0 {
		return false
	}
	p := s.laid.Placing.Pixel(s.at(at)).Mul(1 / s.laid.Shrunk)
	return image.Pt(int(p.X), int(p.Y)).In(s.laid.Sizes[0].Rect) && p.X >= 0 && p.Y >= 0
}

// MouseDown takes the point under the pointer, or else the photograph, or the view.
func (s *PhotoStage) MouseDown(ev *desktop.MouseEvent) {
	if ev.Button != desktop.MouseButtonPrimary && ev.Button != desktop.MouseButtonTertiary {
		return
	}
	s.hand = photoHand{held: true}
	g, found := s.under(ev.Position)
	switch {
	case ev.Button == desktop.MouseButtonPrimary && found:
		s.hand.pixel, s.hand.grip = s.pixel(g), g
		s.choose(g)
	case ev.Button == desktop.MouseButtonTertiary || s.tracing || !s.onPhoto(ev.Position):
		s.hand.pan = true
	default:
		s.choose(GripWhole)
	}
}

// Dragged moves what is held.
func (s *PhotoStage) Dragged(ev *fyne.DragEvent) {
	h := &s.hand
	if !h.held {
		return
	}
	if h.pan {
		s.pan(ev.Dragged.DX, ev.Dragged.DY)
		return
	}
	scale := s.frame().Scale
	by := plane.Point{X: float64(ev.Dragged.DX) / scale, Y: -float64(ev.Dragged.DY) / scale}
	h.moved = true
	if h.grip == GripWhole {
		h.shift = h.shift.Add(by)
		s.raster.Refresh()
	} else {
		h.pixel = s.nudged(h.pixel, by)
	}
	s.mark()
}

// nudged is the pixel so many millimetres of the view from another.
func (s *PhotoStage) nudged(pixel, by plane.Point) plane.Point {
	return s.laid.Placing.Pixel(s.laid.Placing.View(pixel).Add(by))
}

// MouseUp lets go.
func (s *PhotoStage) MouseUp(*desktop.MouseEvent) { s.DragEnd() }

// DragEnd lets go, and tells where.
func (s *PhotoStage) DragEnd() {
	h := s.hand
	s.hand = photoHand{}
	if !h.held || !h.moved {
		return
	}
	s.OnSettled()
	if h.grip == GripWhole {
		s.OnShifted(h.shift)
	} else {
		s.OnPut(h.grip, h.pixel)
	}
	s.OnSettled()
}

// giveUp leaves what is in the hand where it was.
func (s *PhotoStage) giveUp() {
	s.hand = photoHand{}
	s.Refresh()
}

// Tapped chooses what is under the pointer; while tracing it adds a point, and ends the trace at its ends.
func (s *PhotoStage) Tapped(ev *fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(s); c != nil {
		c.Focus(s)
	}
	if s.laid.Placing == nil {
		return
	}
	g, found := s.under(ev.Position)
	points := len(s.laid.Trace)
	switch last := GripTrace + Grip(points) - 1; {
	case s.tracing && found && points > 1 && g == last:
		s.OnEnded()
	case s.tracing && found && points > 2 && g == GripTrace:
		s.trace(s.laid.Trace[0])
		s.OnEnded()
	case found:
		s.choose(g)
	case s.tracing:
		s.trace(s.laid.Placing.Pixel(s.at(ev.Position)))
	default:
		s.choose(GripWhole)
	}
}

// trace adds a point, which the arrow keys then move.
func (s *PhotoStage) trace(pixel plane.Point) {
	s.OnSettled()
	s.OnTraced(pixel)
	s.OnSettled()
	s.choose(Grip(s.grips() - 1))
}

// Cursor says whether a tap adds a point.
func (s *PhotoStage) Cursor() desktop.Cursor {
	if s.tracing {
		return desktop.CrosshairCursor
	}
	return desktop.PointerCursor
}
