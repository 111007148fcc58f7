package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/picture"
	"understructure/geometry/unit"
)

// Tape is one level of the figure and what is to be said of it.
type Tape struct {
	Name      string
	Height    float64 // millimetres above the floor
	Taken     string
	Built     string
	Clearance string
	Strains   bool
	Fixed     bool // it cannot be moved
}

// Rule says how the height rule is marked: a tick every Step millimetres, a number at every
// Count-th of them, which is its height divided by Unit, and over all of it the unit's name. A tape's height is written
// with so many Digits after the point.
type Rule struct {
	Name   string
	Step   float64
	Count  int
	Unit   float64
	Digits int
}

// Spot is a place on the mount: its height in millimetres, and its direction as package section counts it.
type Spot struct{ Height, Turn float64 }

// Elevation shows a figure with a tape at every level, from the front and from the left side or from any one side, and a table
// of the tapes beside it. It is worked with the mouse and with the keys alike: a level is picked by a tap or
// by the arrows up and down; its tape is dragged, or moved by Alt and the arrows or + and −, by 1 mm, with Shift or the
// Page keys by 5; its girth is typed after a second tap or Enter. The figure is turned by a drag to the side or by the arrows left and right; the
// space bar sets it going.
type Elevation struct {
	widget.BaseWidget
	OnPicked  func(name string)
	OnPlace   func(Spot)                        // a place of the mount, away from the tapes
	OnMoved   func(name string, height float64) // as long as it is dragged; millimetres above the floor
	OnHeld    func(name string)                 // somebody pulls at a tape that cannot be moved
	OnSettled func()                            // it was let go
	OnGivenUp func()                            // it is to be where it was
	OnType    func(name string, at fyne.Position)
	OnTurned  func() // by hand: it is seen from another side

	body    *picture.Body
	mode    picture.Mode
	spot    *Spot
	yaws    []unit.Angle // one a view
	turning turning
	seen    [2]seen
	hand    tapeInHand
	rule    Rule
	tapes   []Tape // from the top down
	picked  string
	hovered string
	focused bool

	overTape bool               // the pointer is where a tape can be taken
	renderer *elevationRenderer // nil until the widget is shown
}

// seen is one view as it was last painted.
type seen struct {
	painter    picture.Painter
	wide, high int // pixels
}

// NewElevation returns an empty one.
func NewElevation() *Elevation {
	e := &Elevation{
		body: new(picture.Body), yaws: frontAndSide(),
		OnPicked: func(string) {}, OnPlace: func(Spot) {}, OnMoved: func(string, float64) {}, OnHeld: func(string) {},
		OnSettled: func() {}, OnGivenUp: func() {}, OnType: func(string, fyne.Position) {}, OnTurned: func() {},
	}
	e.ExtendBaseWidget(e)
	return e
}

// Draw shows another figure; the picked level stays picked if it has it, and a tape in hand stays in the hand.
func (e *Elevation) Draw(body *picture.Body, tapes []Tape, rule Rule) {
	held, i := 0.0, e.index(e.hand.name)
	if i >= 0 {
		held = e.tapes[i].Height
	}
	e.body, e.tapes, e.rule = body, tapes, rule
	if i = e.index(e.hand.name); i >= 0 {
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

// under returns the place on the mount that is painted at a point.
func (e *Elevation) under(p fyne.Position) (Spot, bool) {
	a := e.arrange(e.Size())
	for v, yaw := range e.yaws {
		at, pixels := p.Subtract(a.boxes[v].at), e.pixels(v)
		if z, turn, ok := e.seen[v].painter.Under(e.scene(v, yaw), float64(at.X)*pixels, float64(at.Y)*pixels); ok {
			return Spot{z, turn}, true
		}
	}
	return Spot{}, false
}
