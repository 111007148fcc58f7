package control

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"understructure/geometry/unit"
)

// tapeInHand is what a drag does: it lifts the tape at which it began, or turns the figure.
type tapeInHand struct {
	down    bool
	at      fyne.Position // where the drag began
	tape    int           // under it, -1 for none
	name    string        // of the tape that is lifted, "" while none is
	off     float32       // from the pointer to the tape, in the toolkit's units
	turns   bool
	yaw     unit.Angle // as it was at the beginning
	refused bool       // that the tape cannot be moved has been said
}

// Distances in the toolkit's units: how near one must come to a tape to take it, and how far one must drag before it
// is known which way.
const grasp, firm = 6, 3

// MouseDown takes what is under the pointer.
func (e *Elevation) MouseDown(ev *desktop.MouseEvent) {
	if ev.Button == desktop.MouseButtonPrimary {
		takeKeys(e)
		e.take(ev.Position)
	}
}

func (e *Elevation) take(p fyne.Position) {
	a := e.arrange(e.Size())
	e.hand = tapeInHand{down: true, at: p, tape: a.tape(p), yaw: e.yaws[a.view(p)]}
	if i := e.hand.tape; i >= 0 {
		e.hand.off = a.levels[i] - p.Y
	}
}

// MouseUp lets it go.
func (e *Elevation) MouseUp(*desktop.MouseEvent) { e.DragEnd() }

// Dragged moves the tape in hand up and down or, where there is none, turns the figure from side to side: its skin
// follows the pointer where it is nearest.
func (e *Elevation) Dragged(ev *fyne.DragEvent) {
	if !e.hand.down {
		e.take(ev.Position.Subtract(ev.Dragged))
	}
	by := ev.Position.Subtract(e.hand.at)
	if e.hand.name == "" && !e.hand.turns && !e.decide(by) {
		return
	}
	if e.hand.turns {
		a := e.arrange(e.Size())
		e.turnTo(e.hand.yaw + unit.Angle(float64(by.X)/max(a.frames[0].Scale*e.body.Reach(), 1)))
		return
	}
	f := e.arrange(e.Size()).frames[0]
	e.move(e.hand.name, (f.Y-float64(ev.Position.Y+e.hand.off))/f.Scale)
}

// decide finds out what a drag is to do, and reports whether it is known.
func (e *Elevation) decide(by fyne.Position) bool {
	across, up := math.Abs(float64(by.X)), math.Abs(float64(by.Y))
	switch i := e.hand.tape; {
	case e.body.Empty() || max(across, up) < firm || e.arrange(e.Size()).inTable(e.hand.at):
		return false
	case across > up:
		e.hand.turns = true
		return true
	case i >= 0 && e.tapes[i].Fixed:
		if !e.hand.refused {
			e.hand.refused = true
			e.OnHeld(e.tapes[i].Name)
		}
		return false
	case i >= 0:
		e.hand.name = e.tapes[i].Name
		e.choose(i)
		return true
	}
	return false
}

// move puts a tape at a height at once, without waiting for the figure to follow.
func (e *Elevation) move(name string, height float64) {
	i := e.index(name)
	height = math.Round(height)
	if i < 0 || height == e.tapes[i].Height {
		return
	}
	e.tapes[i].Height = height
	e.marksOnly()
	e.OnMoved(name, height)
}

// Hold puts the tape in hand where it may go, if it was dragged farther.
func (e *Elevation) Hold(name string, height float64) {
	if i := e.index(name); i >= 0 && e.tapes[i].Height != height {
		e.tapes[i].Height = height
		e.marksOnly()
	}
}

// DragEnd lets go what is in the hand.
func (e *Elevation) DragEnd() {
	lifted := e.hand.name != ""
	if e.hand = (tapeInHand{}); lifted {
		e.marksOnly()
		e.OnSettled()
	}
}

// giveUp leaves the tape in hand where it was taken.
func (e *Elevation) giveUp() {
	if e.hand.name != "" {
		e.hand = tapeInHand{}
		e.OnGivenUp()
	}
}

// nudge moves the picked tape by millimetres.
func (e *Elevation) nudge(by float64) {
	switch i := e.index(e.picked); {
	case i < 0 || by == 0:
	case e.tapes[i].Fixed:
		e.OnHeld(e.picked)
	default:
		e.move(e.picked, e.tapes[i].Height+by)
		e.OnSettled()
	}
}

// Tape returns where the tape of a level is drawn, from the top of the widget, and the scale there: units a millimetre.
func (e *Elevation) Tape(name string) (y float32, scale float64) {
	a := e.arrange(e.Size())
	return a.levels[e.index(name)], a.frames[0].Scale
}
