package control

import (
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"understructure/geometry/fit"
	"understructure/geometry/section"
	"understructure/geometry/unit"
	"understructure/geometry/view"
)

// goingRound sets a figure going. The toolkit for tests makes no steps of its own.
func goingRound(t *testing.T) *Elevation {
	t.Helper()
	e, _ := shownElevation(t)
	fyne.CurrentApp().Driver().CanvasForObject(e).Capture()
	e.Start()
	if !e.Going() || len(e.Yaws()) != 1 {
		t.Fatalf("going %v, seen from %v", e.Going(), e.Yaws())
	}
	return e
}

func TestAFigureThatIsSeenGoesRound(t *testing.T) {
	e := goingRound(t)
	c := fyne.CurrentApp().Driver().CanvasForObject(e)
	var last unit.Angle
	for i := range 40 {
		yaw := unit.Angle(i) * unit.Degree
		for deadline := time.Now().Add(time.Minute); e.turning.shown.yaw < yaw && time.Now().Before(deadline); {
			e.step(yaw)
			time.Sleep(time.Millisecond)
			e.turning.unseen = 0 // waiting is not looking away
		}
		c.Capture()
		if now := e.Yaws()[0]; now < last || now != e.turning.shown.yaw {
			t.Fatalf("after %v it is seen from %v, painted from %v", last, now, e.turning.shown.yaw)
		}
		last = e.Yaws()[0]
	}
	if !e.Going() {
		t.Error("it has stopped by itself")
	}
}

func TestAFigureThatNobodySeesStops(t *testing.T) {
	e := goingRound(t)
	told := 0
	e.OnTurned = func() { told++ }
	for i := range mostUnseen + 2 {
		e.step(unit.Angle(i) * unit.Degree)
	}
	if e.Going() || told == 0 {
		t.Errorf("after %d steps that nobody looked at: going %v, told %d times", mostUnseen+2, e.Going(), told)
	}
	e.Start()
	e.Hide()
	if e.Going() {
		t.Error("a hidden figure goes on")
	}
}

func TestADragToTheSideTurnsTheFigure(t *testing.T) {
	e, picked := shownElevation(t)
	e.Look(view.Front)
	a := e.arrange(e.Size())
	at := fyne.NewPos(float32(a.frames[0].X), a.levels[2]) // upon a tape, which stays where it is
	e.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}, Button: desktop.MouseButtonPrimary})
	moved := false
	e.OnMoved = func(string, float64) { moved = true }
	reach := float32(a.frames[0].Scale * e.body.Reach())
	for i := range 11 {
		e.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: at.AddXY(reach*float32(i)/10, 1)}})
	}
	e.DragEnd()
	if got := e.Yaws()[0]; got < 0.99 || got > 1.01 {
		t.Errorf("dragged by the figure's reach it is turned by %v, want one radian", got)
	}
	if moved || len(*picked) > 0 {
		t.Error("turning moved or picked a tape")
	}
}

func TestAFixedTapeSaysSo(t *testing.T) {
	e, _ := shownElevation(t)
	e.tapes[2].Fixed = true
	held, moved := 0, 0
	e.OnHeld = func(string) { held++ }
	e.OnMoved = func(string, float64) { moved++ }
	a := e.arrange(e.Size())
	at := fyne.NewPos(float32(a.frames[0].X), a.levels[2])
	e.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}, Button: desktop.MouseButtonPrimary})
	for i := range 20 {
		e.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: at.AddXY(0, float32(i))}})
	}
	e.DragEnd()
	if held != 1 || moved != 0 || e.tapes[2].Height != 1050 {
		t.Errorf("said %d times, moved %d times, to %v", held, moved, e.tapes[2].Height)
	}
}

func TestATapOnTheMountAsksForThePlace(t *testing.T) {
	e, _ := shownElevation(t)
	var got []Spot
	e.OnPlace = func(s Spot) { got = append(got, s) }
	fyne.CurrentApp().Driver().CanvasForObject(e).Capture()
	a := e.arrange(e.Size())
	f := a.frames[0]
	test.TapAt(e, fyne.NewPos(float32(f.X), float32(f.Y-1150*f.Scale)))
	if len(got) != 1 || got[0].Height < 1147 || got[0].Height > 1153 || got[0].Turn < section.Directions/4-2 || got[0].Turn > section.Directions/4+2 {
		t.Fatalf("a tap at 1150 mm on the centre front found %v", got)
	}
	if !e.Sees(got[0]) || e.Sees(Spot{1150, 3 * section.Directions / 4}) {
		t.Error("the centre front is not seen, or the centre back is, from the front and the left side")
	}
	e.Look(Facing(Spot{1150, 3 * section.Directions / 4}))
	if !e.Sees(Spot{1150, 3 * section.Directions / 4}) || e.Sees(got[0]) {
		t.Error("facing the centre back one sees the front")
	}
}

// The picked tape is drawn where it lies in every view, and all views have the table.
func TestEveryViewHasItsTapes(t *testing.T) {
	e, picked := shownElevation(t)
	for _, yaw := range []unit.Angle{view.Front, view.ThreeQuarter, view.LeftSide, view.Back, 1.234} {
		e.Look(yaw)
		a := e.arrange(e.Size())
		for i, tape := range tapes {
			e.Pick("")
			*picked = nil
			test.TapAt(e, fyne.NewPos(float32(a.frames[0].X), a.levels[i]))
			test.TapAt(e, fyne.NewPos(a.table+20, a.rows[i]))
			if len(*picked) != 1 || (*picked)[0] != tape.Name {
				t.Errorf("from %v, %s: picked %v", yaw, tape.Name, *picked)
			}
		}
		if w := e.Size().Width; a.table+tableWidth > w || a.rule < 0 || a.boxes[0].at.X < a.rule {
			t.Errorf("from %v the rule is at %v, the figure from %v, the table at %v of %v", yaw, a.rule, a.boxes[0].at.X, a.table, w)
		}
	}
}

// BenchmarkTurned900 is one picture of a figure that goes round, without the toolkit's own work.
func BenchmarkTurned900(b *testing.B) {
	e := NewElevation()
	e.Draw(barrel(), tapes, Rule{})
	e.Resize(fyne.NewSize(1200, 968))
	e.Look(view.Front)
	for i := 0; b.Loop(); i++ {
		e.yaws[0] = unit.Angle(i) / 100
		e.paint(0, 900, 900)
	}
}

func TestPlaceListMarkup(t *testing.T) {
	newApp(t)
	l := NewPlaceList("mm at the point", "Nothing.")
	l.Fill([]Where{
		{Band: fit.Straining, Place: "Bust, left front", Amount: "strain  −6", Spot: Spot{1168, 100}},
		{Band: fit.Slack, Place: "Waist −12, back", Amount: "slack  9", Spot: Spot{1018, 192}},
	})
	w := test.NewTempWindow(t, l)
	w.Resize(fyne.NewSize(262, 150))
	l.Point(&Spot{1018, 192})
	test.AssertObjectRendersToMarkup(t, "places.xml", l)
}

func TestKeysLeadThroughThePlaces(t *testing.T) {
	newApp(t)
	l := NewPlaceList("mm", "Nothing.")
	var got []float64
	l.OnPicked = func(s Spot) { got = append(got, s.Height) }
	l.Fill([]Where{{Spot: Spot{Height: 1}}, {Spot: Spot{Height: 2}}})
	test.NewTempWindow(t, l)
	press := func(k fyne.KeyName) {
		fyne.CurrentApp().Driver().CanvasForObject(l).Focused().TypedKey(&fyne.KeyEvent{Name: k})
	}
	takeKeys(l.Rows()[0])
	for _, k := range []fyne.KeyName{fyne.KeyReturn, fyne.KeyDown, fyne.KeyDown, fyne.KeyUp, fyne.KeySpace} {
		press(k)
	}
	if !slices.Equal(got, []float64{1, 2, 1, 1}) {
		t.Errorf("went to %v", got)
	}
}

func TestLegendMarkup(t *testing.T) {
	newApp(t)
	test.AssertObjectRendersToMarkup(t, "legend.xml", NewLegend())
}

func TestTheRingGoesRoundTheMapByKeys(t *testing.T) {
	newApp(t)
	m := NewMap()
	m.Draw(barrel(), tapes)
	var at Spot
	m.OnPicked = func(s Spot) { at = s; m.Point(&s) }
	for _, k := range []fyne.KeyName{fyne.KeyUp, fyne.KeyUp, fyne.KeyRight, fyne.KeyDown} {
		m.TypedKey(&fyne.KeyEvent{Name: k})
	}
	if want := (Spot{1150, section.Directions/4 + keyTurn}); at != want {
		t.Errorf("the ring is at %v, want %v", at, want)
	}
}
