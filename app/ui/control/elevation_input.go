package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// Tapped picks the tape under the pointer or, in the table, its row; elsewhere on the mount it asks for the place there, and
// beside it picks the level nearest to the pointer. A figure that goes round is held.
func (e *Elevation) Tapped(ev *fyne.PointEvent) {
	e.Halt()
	a := e.arrange(e.Size())
	if !a.inTable(ev.Position) && a.tape(ev.Position) < 0 {
		if s, ok := e.under(ev.Position); ok {
			e.OnPlace(s)
			return
		}
	}
	i := a.nearest(ev.Position)
	if i >= 0 && e.tapes[i].Name == e.picked && a.onTaken(ev.Position) {
		e.typeGirth(i)
		return
	}
	e.choose(i)
}

// takeKeys gives a widget the keys.
func takeKeys(o fyne.Focusable) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(o.(fyne.CanvasObject)); c != nil {
		c.Focus(o)
	}
}

// typeGirth asks for the girth of a level where it stands in the table.
func (e *Elevation) typeGirth(i int) {
	if i >= 0 {
		a := e.arrange(e.Size())
		e.OnType(e.tapes[i].Name, fyne.NewPos(a.table+columns[0], a.rows[i]))
	}
}

// By how much keys move a tape, in millimetres.
const nearNudge, farNudge = 1, 5

// TypedKey picks another level, moves its tape far, or turns the figure.
func (e *Elevation) TypedKey(ev *fyne.KeyEvent) {
	switch i := e.index(e.picked); ev.Name {
	case fyne.KeyUp:
		e.choose(i - 1)
	case fyne.KeyDown:
		e.choose(i + 1)
	case fyne.KeyHome:
		e.choose(0)
	case fyne.KeyEnd:
		e.choose(len(e.tapes) - 1)
	case fyne.KeyPageUp:
		e.nudge(+farNudge)
	case fyne.KeyPageDown:
		e.nudge(-farNudge)
	case fyne.KeyLeft:
		e.turnTo(e.yaws[0] - turnStep)
	case fyne.KeyRight:
		e.turnTo(e.yaws[0] + turnStep)
	case fyne.KeySpace:
		if e.Going() {
			e.Halt()
		} else {
			e.Start()
		}
	case fyne.KeyReturn, fyne.KeyEnter:
		e.typeGirth(i)
	case fyne.KeyEscape:
		e.giveUp()
	}
}

// TypedShortcut moves the picked tape by Alt and an arrow, with Shift farther; what it does not know is for the window.
func (e *Elevation) TypedShortcut(s fyne.Shortcut) {
	far := map[fyne.KeyModifier]float64{fyne.KeyModifierAlt: nearNudge, fyne.KeyModifierAlt | fyne.KeyModifierShift: farNudge}
	if key, ok := s.(*desktop.CustomShortcut); ok {
		switch by := far[key.Modifier]; key.KeyName {
		case fyne.KeyUp:
			e.nudge(by)
			return
		case fyne.KeyDown:
			e.nudge(-by)
			return
		}
	}
	pass(e, s)
}

// pass gives a shortcut that a widget does not know to the window.
func pass(o fyne.CanvasObject, s fyne.Shortcut) {
	if c, ok := fyne.CurrentApp().Driver().CanvasForObject(o).(fyne.Shortcutable); ok {
		c.TypedShortcut(s)
	}
}

// TypedRune moves the picked tape by a millimetre, where Alt and the arrows belong to the desktop.
func (e *Elevation) TypedRune(r rune) {
	switch r {
	case '+':
		e.nudge(+nearNudge)
	case '-', '−':
		e.nudge(-nearNudge)
	}
}

// FocusGained shows that the keys go here.
func (e *Elevation) FocusGained() { e.focused = true; e.marksOnly() }

// FocusLost takes that back.
func (e *Elevation) FocusLost() { e.focused = false; e.marksOnly() }

// MouseIn marks the level under the pointer.
func (e *Elevation) MouseIn(ev *desktop.MouseEvent) { e.MouseMoved(ev) }

// MouseMoved marks the level under the pointer.
func (e *Elevation) MouseMoved(ev *desktop.MouseEvent) {
	a := e.arrange(e.Size())
	tape, under := a.tape(ev.Position), ""
	e.overTape = tape >= 0 && !e.tapes[tape].Fixed
	if i := a.nearest(ev.Position); i >= 0 && (tape >= 0 || a.inTable(ev.Position)) {
		under = e.tapes[i].Name
	}
	if under != e.hovered {
		e.hovered = under
		e.marksOnly()
	}
}

// MouseOut takes the mark away.
func (e *Elevation) MouseOut() {
	e.hovered, e.overTape = "", false
	e.marksOnly()
}

// Cursor is a pointing hand over the table, and says over a tape that it can be moved up and down.
func (e *Elevation) Cursor() desktop.Cursor {
	switch {
	case e.overTape:
		return desktop.VResizeCursor
	case e.hovered != "":
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}
