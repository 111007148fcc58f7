package control

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// drag is a tape in the hand.
type drag struct {
	name   string // "" for none
	height float64
	off    float32 // from the pointer to the tape, in the toolkit's units
}

// grasp is how near one must come to a tape to take it, in the toolkit's units.
const grasp = 6

// tape returns the index of the tape at a point of the figure, -1 where there is none.
func (a arrangement) tape(p fyne.Position) int {
	if p.X > a.table-leader && p.X < a.table+tableWidth+leader {
		return -1
	}
	best, least := -1, float32(grasp)
	for i, y := range a.levels {
		if d := float32(math.Abs(float64(y - p.Y))); d <= least {
			best, least = i, d
		}
	}
	return best
}

// takenWidth is that of the column of the garment's girths.
const takenWidth = 46

// onTaken reports whether a point lies where the garment's girth of a row stands.
func (a arrangement) onTaken(p fyne.Position) bool {
	return p.X > a.table+columns[0]-takenWidth && p.X < a.table+columns[0]+4
}

// MouseDown takes the tape under the pointer.
func (e *Elevation) MouseDown(ev *desktop.MouseEvent) {
	a := e.arrange(e.Size())
	if i := a.tape(ev.Position); i >= 0 && ev.Button == desktop.MouseButtonPrimary {
		e.drag = drag{name: e.tapes[i].Name, height: e.tapes[i].Height, off: a.levels[i] - ev.Position.Y}
	}
}

// MouseUp lets it go.
func (e *Elevation) MouseUp(*desktop.MouseEvent) { e.DragEnd() }

// Dragged moves the tape in hand.
func (e *Elevation) Dragged(ev *fyne.DragEvent) {
	if e.drag.name == "" {
		return
	}
	e.choose(e.index(e.drag.name))
	f := e.arrange(e.Size()).frames[0]
	e.move(e.drag.name, (f.Y-float64(ev.Position.Y+e.drag.off))/f.Scale)
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

// DragEnd lets the tape go.
func (e *Elevation) DragEnd() {
	if e.drag.name != "" {
		e.drag = drag{}
		e.OnSettled()
	}
}

// giveUp puts the tape in hand back to where it was taken.
func (e *Elevation) giveUp() {
	if e.drag.name != "" {
		e.move(e.drag.name, e.drag.height)
		e.DragEnd()
	}
}

// nudge moves the picked tape by millimetres.
func (e *Elevation) nudge(by float64) {
	if i := e.index(e.picked); i >= 0 {
		e.move(e.picked, e.tapes[i].Height+by)
		e.OnSettled()
	}
}

// Tape returns where the tape of a level is drawn, from the top of the widget, and the scale there: units a millimetre.
func (e *Elevation) Tape(name string) (y float32, scale float64) {
	a := e.arrange(e.Size())
	return a.levels[e.index(name)], a.frames[0].Scale
}
