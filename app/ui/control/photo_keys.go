package control

import (
	"fyne.io/fyne/v2"

	"understructure/geometry/plane"
)

// TypedKey moves what is chosen, chooses another, or goes on with the trace.
func (s *PhotoStage) TypedKey(ev *fyne.KeyEvent) {
	if s.laid.Placing == nil {
		return
	}
	arrows := map[fyne.KeyName]plane.Point{fyne.KeyLeft: {X: -1}, fyne.KeyRight: {X: 1}, fyne.KeyUp: {Y: 1}, fyne.KeyDown: {Y: -1}}
	switch way, arrow := arrows[ev.Name]; {
	case arrow:
		s.nudge(way, balancing()) // Shift is held
	case ev.Name == fyne.KeyPageDown:
		s.choose((s.chosen + 1) % Grip(s.grips()))
	case ev.Name == fyne.KeyPageUp:
		s.choose((s.chosen + Grip(s.grips()) - 1) % Grip(s.grips()))
	case ev.Name == fyne.KeyBackspace:
		s.erase(GripTrace + Grip(len(s.laid.Trace)) - 1)
	case ev.Name == fyne.KeyDelete:
		s.erase(s.chosen)
	case ev.Name == fyne.KeyEscape && s.hand.held:
		s.giveUp()
	case s.tracing && (ev.Name == fyne.KeyEscape || ev.Name == fyne.KeyReturn || ev.Name == fyne.KeyEnter):
		s.OnEnded()
	}
}

// nudge moves what is chosen by a pixel of the photograph, or by ten. As long as the same is moved that is one step.
func (s *PhotoStage) nudge(way plane.Point, far bool) {
	step := s.laid.Placing.Scale()
	if far {
		step *= 10
	}
	if s.chosen == GripWhole {
		s.OnShifted(way.Mul(step))
		return
	}
	s.OnPut(s.chosen, s.nudged(s.pixel(s.chosen), way.Mul(step)))
}

// erase takes a point of the trace away.
func (s *PhotoStage) erase(g Grip) {
	if g >= GripTrace {
		s.OnSettled()
		s.OnErased(int(g - GripTrace))
		s.OnSettled()
	}
}

// TypedRune goes nearer and farther.
func (s *PhotoStage) TypedRune(r rune) {
	switch r {
	case '+', '=':
		s.Nearer(1)
	case '-', '−':
		s.Nearer(-1)
	case '0':
		s.Whole()
	}
}

// FocusGained shows what the arrow keys move.
func (s *PhotoStage) FocusGained() { s.focused = true; s.mark() }

// FocusLost takes that back, and settles what they moved.
func (s *PhotoStage) FocusLost() {
	s.focused = false
	s.OnSettled()
	s.mark()
}
