package control

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/look"
	"understructure/app/ui/picture"
)

// Tape is one level of the figure and what is to be said of it.
type Tape struct {
	Name      string
	Height    float64 // millimetres above the floor
	Taken     string
	Built     string
	Clearance string
	Strains   bool
}

// Rule says how the height rule is marked: a tick every Step millimetres, a number at every
// Count-th of them, which is its height divided by Unit, and over all of it the unit's name.
type Rule struct {
	Name  string
	Step  float64
	Count int
	Unit  float64
}

// Spot is a place on the mount: its height in millimetres, and its direction as package section counts it.
type Spot struct{ Height, Turn float64 }

// Elevation shows a figure from the front and from the side with a tape at every level. A level is
// picked with the mouse or with the arrow keys, and moved by dragging its tape or with the keys
// + − PageUp PageDown.
type Elevation struct {
	widget.BaseWidget
	OnPicked  func(name string)
	OnMoved   func(name string, height float64) // as long as it is dragged; millimetres above the floor
	OnSettled func()                            // it was let go
	OnType    func(name string, at fyne.Position)

	body    *picture.Body
	mode    picture.Mode
	spot    *Spot
	painter [2]picture.Painter
	drag    drag
	rule    Rule
	tapes   []Tape // from the top down
	picked  string
	hovered string
	focused bool

	overTape bool               // the pointer is where a tape can be taken
	renderer *elevationRenderer // nil until the widget is shown
}

// NewElevation returns an empty one.
func NewElevation() *Elevation {
	e := &Elevation{
		body: new(picture.Body), OnPicked: func(string) {}, OnMoved: func(string, float64) {}, OnSettled: func() {},
		OnType: func(string, fyne.Position) {},
	}
	e.ExtendBaseWidget(e)
	return e
}

// Draw shows another figure; the picked level stays picked if it has it, and a tape in hand stays in the hand.
func (e *Elevation) Draw(body *picture.Body, tapes []Tape, rule Rule) {
	held, i := 0.0, e.index(e.drag.name)
	if i >= 0 {
		held = e.tapes[i].Height
	}
	e.body, e.tapes, e.rule = body, tapes, rule
	if i = e.index(e.drag.name); i >= 0 {
		e.tapes[i].Height = held
	}
	e.Refresh()
}

// Paint chooses what the colours of the mount say.
func (e *Elevation) Paint(m picture.Mode) {
	if e.mode != m {
		e.mode = m
		e.Refresh()
	}
}

// Point rings a place on the mount; nil takes the ring away.
func (e *Elevation) Point(s *Spot) {
	e.spot = s
	e.marksOnly()
}

// Pick marks a level without telling OnPicked.
func (e *Elevation) Pick(name string) {
	e.picked = name
	e.marksOnly()
}

// Picked is the name of the marked level.
func (e *Elevation) Picked() string { return e.picked }

func (e *Elevation) index(name string) int {
	for i, t := range e.tapes {
		if t.Name == name {
			return i
		}
	}
	return -1
}

func (e *Elevation) choose(i int) {
	if i < 0 || i >= len(e.tapes) || e.tapes[i].Name == e.picked {
		return
	}
	e.Pick(e.tapes[i].Name)
	e.OnPicked(e.picked)
}

// Tapped picks the level nearest to the pointer.
func (e *Elevation) Tapped(ev *fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(e); c != nil {
		c.Focus(e)
	}
	a := e.arrange(e.Size())
	i := a.nearest(ev.Position)
	if i >= 0 && e.tapes[i].Name == e.picked && a.onTaken(ev.Position) {
		e.typeGirth(i)
		return
	}
	e.choose(i)
}

// typeGirth asks for the girth of a level where it stands in the table.
func (e *Elevation) typeGirth(i int) {
	a := e.arrange(e.Size())
	e.OnType(e.tapes[i].Name, fyne.NewPos(a.table+columns[0]-takenWidth, a.rows[i]))
}

// TypedKey goes up and down the levels.
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
		e.nudge(+5)
	case fyne.KeyPageDown:
		e.nudge(-5)
	case fyne.KeyReturn, fyne.KeyEnter:
		if i >= 0 {
			e.typeGirth(i)
		}
	case fyne.KeyEscape:
		e.giveUp()
	}
}

// TypedRune moves the picked level by a millimetre.
func (e *Elevation) TypedRune(r rune) {
	switch r {
	case '+':
		e.nudge(+1)
	case '-', '−':
		e.nudge(-1)
	}
}

// FocusGained shows that the arrow keys go here.
func (e *Elevation) FocusGained() { e.focused = true; e.marksOnly() }

// FocusLost takes that back.
func (e *Elevation) FocusLost() { e.focused = false; e.marksOnly() }

// MouseIn marks the level under the pointer.
func (e *Elevation) MouseIn(ev *desktop.MouseEvent) { e.MouseMoved(ev) }

// MouseMoved marks the level under the pointer.
func (e *Elevation) MouseMoved(ev *desktop.MouseEvent) {
	a := e.arrange(e.Size())
	e.overTape = a.tape(ev.Position) >= 0
	if i := a.nearest(ev.Position); i >= 0 && e.tapes[i].Name != e.hovered {
		e.hovered = e.tapes[i].Name
		e.marksOnly()
	}
}

// MouseOut takes the mark away.
func (e *Elevation) MouseOut() { e.hovered = ""; e.marksOnly() }

// Cursor is a pointing hand over the table, and says over a tape that it can be moved up and down.
func (e *Elevation) Cursor() desktop.Cursor {
	if e.hovered != "" && e.overTape {
		return desktop.VResizeCursor
	}
	return desktop.PointerCursor
}

// paint draws the figure; it runs only when the figure, the size or the colours change.
func (e *Elevation) paint(w, h int) image.Image {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	if e.body.Empty() || e.Size().Width == 0 {
		return img
	}
	a := e.arrange(e.Size())
	pixels := float64(w) / float64(e.Size().Width)
	for v, f := range a.frames {
		f := picture.Frame{Scale: f.Scale * pixels, X: f.X * pixels, Y: f.Y * pixels}
		e.painter[v].Figure(img, e.body, picture.Scene{Camera: picture.View(v).Camera(), Frame: f, Palette: look.Palette(), Mode: e.mode})
	}
	return img
}
