package control

import (
	"fmt"
	"math"
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"understructure/geometry/section"
	"understructure/geometry/unit"
	"understructure/geometry/view"
)

// turning is a figure that goes round by itself.
type turning struct {
	going   *fyne.Animation // nil while it stands
	shown   ahead           // what is on the screen
	next    chan ahead      // what is being painted; nil for nothing
	painted bool            // the last step has been looked at
	unseen  int             // steps since somebody last looked
}

// frontAndSide are the two views that a draughtsman draws.
func frontAndSide() []unit.Angle { return []unit.Angle{view.Front, view.LeftSide} }

// LookBoth shows the figure from the front and from its left side.
func (e *Elevation) LookBoth() { e.look(frontAndSide()...) }

// Look shows the figure from one side.
func (e *Elevation) Look(yaw unit.Angle) { e.look(yaw) }

func (e *Elevation) look(yaws ...unit.Angle) {
	e.Stop()
	e.yaws = yaws
	e.Refresh()
}

// Yaws are the sides from which the figure is seen.
func (e *Elevation) Yaws() []unit.Angle { return slices.Clone(e.yaws) }

// Facing is the side from which one looks straight at a place.
func Facing(s Spot) unit.Angle {
	return unit.Angle(s.Turn*2*math.Pi/section.Directions - math.Pi/2)
}

// Sees reports whether a place is on a side that is shown.
func (e *Elevation) Sees(s Spot) bool {
	a := e.arrange(e.Size())
	for v, yaw := range e.yaws {
		if _, seen := e.body.SpotOn(view.From(yaw, 0), a.frames[v], s.Height, s.Turn); seen {
			return true
		}
	}
	return false
}

// turnTo shows the figure from one side, as somebody has turned it.
func (e *Elevation) turnTo(yaw unit.Angle) {
	one := len(e.yaws) == 1
	e.Stop()
	e.yaws = []unit.Angle{yaw}
	if one && e.renderer != nil {
		e.renderer.turned()
	} else {
		e.Refresh()
	}
	e.OnTurned()
}

// lap is how long the figure takes to go round once.
const lap = 12 * time.Second

// Start sets the figure going from where it stands.
func (e *Elevation) Start() {
	if e.Going() || e.body.Empty() {
		return
	}
	from := e.yaws[0]
	e.turnTo(from)
	e.turning.going = fyne.NewAnimation(lap, func(done float32) {
		e.step(from + unit.Angle(2*math.Pi*float64(done)))
	})
	e.turning.going.Curve, e.turning.going.RepeatCount = fyne.AnimationLinear, fyne.AnimationRepeatForever
	e.turning.going.Start()
	e.OnTurned()
}

// mostUnseen is how many steps a figure turns unseen before it stops: half a second.
const mostUnseen = 30

// Stop holds it.
func (e *Elevation) Stop() {
	if e.Going() {
		e.turning.going.Stop()
		e.await()
		e.turning = turning{}
	}
}

// Halt holds it, and says so.
func (e *Elevation) Halt() {
	if e.Going() {
		e.Stop()
		e.Refresh()
		e.OnTurned()
	}
}

// Going reports whether it goes round.
func (e *Elevation) Going() bool { return e.turning.going != nil }

// Hide stops it too.
func (e *Elevation) Hide() { e.Halt(); e.BaseWidget.Hide() }

// turnStep is by how much a key turns the figure.
const turnStep = 15 * unit.Degree

// viewNames are what a view from each side is called.
func viewNames() map[int]string {
	return map[int]string{
		0: lang.L("front"), 45: lang.L("three-quarter"), 90: lang.L("left side"), 180: lang.L("back"), 270: lang.L("right side"),
	}
}

// viewName is what a view is called, or by how much the figure is turned.
func viewName(yaw unit.Angle) string {
	degrees := (int(math.Round(float64(yaw/unit.Degree)))%360 + 360) % 360
	if name, ok := viewNames()[degrees]; ok {
		return name
	}
	return fmt.Sprintf("%d°", degrees)
}
