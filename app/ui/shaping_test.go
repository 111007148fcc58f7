package ui

import (
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"understructure/app/document"
	"understructure/app/pipeline"
	"understructure/app/record"
	"understructure/app/ui/control"
	"understructure/geometry/measure"
)

func hands() (*document.Document, *shaping) {
	d := document.New(document.Rooms{Compute: round, Load: record.Load, Save: record.Save, Post: func(func()) {}})
	d.Start("dress", dress())
	return d, &shaping{doc: d, figure: pipeline.Figure}
}

// While a handle is pulled the tape stays what it was, and the pull is one step.
func TestPullingHoldsTheTape(t *testing.T) {
	for _, handle := range []control.Handle{control.Right, control.Front, control.Left, control.Back} {
		for _, balance := range []bool{false, true} {
			d, s := hands()
			before, err := pipeline.Figure(d.Record())
			if err != nil {
				t.Fatal(err)
			}
			want := before.At(measure.Waist).Girth
			moved := false
			for by := 1.0; by <= 8; by++ {
				ring, said := s.pull(measure.Waist, control.Pull{Handle: handle, By: by, Balance: balance}, "mm")
				if got := ring.Tape(); math.Abs(got-want) > 0.1 {
					t.Errorf("handle %v, balance %v, pulled %v: tape %.2f mm, want %.2f (%v)", handle, balance, by, got, want, said)
				}
				moved = moved || len(d.Record().Mount.Shape) > 0
			}
			s.settle()
			if !moved {
				t.Errorf("handle %v, balance %v: nothing was set", handle, balance)
			}
			d.Undo()
			if len(d.Record().Mount.Shape) > 0 {
				t.Errorf("handle %v, balance %v: one undo leaves %v", handle, balance, d.Record().Mount.Shape)
			}
			d.Close()
		}
	}
}

func TestAHandleFollowsThePointer(t *testing.T) {
	d, s := hands()
	defer d.Close()
	before, _ := pipeline.Figure(d.Record())
	at := before.At(measure.Waist)
	broad := at.Section.Reading(at.Seam).Breadth
	ring, _ := s.pull(measure.Waist, control.Pull{Handle: control.Right, By: 4}, "mm")
	lo, hi := ring.Bounds()
	if got := hi.X - lo.X; math.Abs(got-broad-8) > 0.5 {
		t.Errorf("pulled 4 mm at one side the waist is %.1f mm broad, want %.1f", got, broad+8)
	}
}

// lifted is how far above the waist the bust was set by hand.
func lifted(t *testing.T, b *bench) float64 {
	t.Helper()
	h := b.doc.Record().Mount.Shape[measure.Bust].Height
	if h == nil {
		t.Fatal("the bust was not lifted")
	}
	return *h
}

func TestKeysLiftALevelInOneStepEach(t *testing.T) {
	b := newBench(t)
	e := b.figure.elevation
	e.Resize(fyne.NewSize(700, 500))
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp}) // the bust
	waist := b.figure.plan.StandHeight
	press := func(key fyne.KeyName, m fyne.KeyModifier) {
		e.TypedShortcut(&desktop.CustomShortcut{KeyName: key, Modifier: m})
	}
	for _, step := range []struct {
		do   func()
		want float64
	}{
		{func() { press(fyne.KeyUp, fyne.KeyModifierAlt) }, 1201},
		{func() { press(fyne.KeyDown, fyne.KeyModifierAlt|fyne.KeyModifierShift) }, 1196},
		{func() { e.TypedRune('+') }, 1197},
		{func() { e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyPageUp}) }, 1202},
		{func() { b.menuItem("Undo").Action() }, 1197},
		{func() { b.menuItem("Undo").Action() }, 1196},
	} {
		step.do()
		b.settle()
		if got := lifted(t, b); math.Abs(got-(step.want-waist)) > 1e-6 {
			t.Errorf("the bust is at %.1f, want %.1f", got+waist, step.want)
		}
	}
}

// drag takes the tape of the bust and moves it by pixels, one after the other.
func drag(b *bench, by int) (scale float64) {
	e := b.figure.elevation
	e.Resize(fyne.NewSize(700, 500))
	y, scale := e.Tape("bust")
	at := fyne.NewPos(60, y)
	e.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}, Button: desktop.MouseButtonPrimary})
	for i := 1; i <= by; i++ {
		e.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: at.AddXY(0, float32(-i))}, Dragged: fyne.NewDelta(0, -1)})
	}
	return scale
}

func TestATapeIsDraggedInOneStep(t *testing.T) {
	b := newBench(t)
	scale := drag(b, 10)
	want := 1200 - b.figure.plan.StandHeight + 10/scale
	if y, _ := b.figure.elevation.Tape("bust"); math.Abs(float64(y)-b.yOf(1200)+10) > 1 {
		t.Errorf("the tape is drawn at %v, not under the pointer", y)
	}
	b.figure.elevation.DragEnd()
	b.settle()
	if got := lifted(t, b); math.Abs(got-want) > 0.6 {
		t.Fatalf("the bust was set to %v, want %.0f", got, want)
	}
	b.menuItem("Undo").Action()
	b.settle()
	if len(b.doc.Record().Mount.Shape) > 0 {
		t.Error("the drag was more than one step")
	}
}

// yOf is where a height is drawn, from the top of the figure.
func (b *bench) yOf(z float64) float64 {
	y, scale := b.figure.elevation.Tape("waist")
	return float64(y) - (z-b.figure.plan.StandHeight)*scale
}

// While one drags, a plan that is begun is waited for, and what was dragged meanwhile is set then.
func TestTheFigureFollowsADragInItsOwnTime(t *testing.T) {
	b := newBench(t)
	drag(b, 10)
	first := lifted(t, b)
	b.settle()
	if second := lifted(t, b); second <= first {
		t.Errorf("when the figure had followed to %.0f, the record was at %.0f", first, second)
	}
	if !b.figure.shaping.busy() {
		t.Error("a plan that came took the tape out of the hand")
	}
}

func TestEscapeLeavesATapeWhereItWas(t *testing.T) {
	b := newBench(t)
	b.retype(waist, "63")
	for _, by := range []int{10, 0} {
		drag(b, by)
		b.figure.elevation.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
		b.figure.elevation.DragEnd()
		b.settle()
		if r := b.doc.Record(); len(r.Mount.Shape) > 0 || r.Garment.Bodice[measure.WaistGirth] != 630 {
			t.Errorf("dragged by %d and given up: shape %v", by, r.Mount.Shape)
		}
	}
}

func TestTheWaistIsNotLifted(t *testing.T) {
	b := newBench(t)
	e := b.figure.elevation
	e.TypedRune('+')
	if len(b.doc.Record().Mount.Shape) > 0 || !strings.Contains(b.figure.said[0].Text, "waist") {
		t.Errorf("the waist was moved, or nothing was said but %q", b.figure.said[0].Text)
	}
}

func TestALevelGoesNoFartherThanItsNeighbours(t *testing.T) {
	b := demoBench(t)
	f := b.figure
	f.elevation.Pick("bust")
	f.lift("bust", f.plan.StandHeight+2000)
	if f.said[2].Text == "" {
		t.Error("nothing is said of a level that cannot go farther")
	}
	f.letGo()
	b.settle()
	if got := lifted(t, b); got > 500 {
		t.Errorf("the bust was lifted to %.0f mm over the waist", got)
	}
}

// What is typed in the table counts at once and is one step; Escape takes it back.
func TestAGirthIsTypedInTheTable(t *testing.T) {
	b := newBench(t)
	field := girthField(b.doc.Record(), measure.Bust)
	b.figure.elevation.Pick("bust")
	for _, end := range []struct {
		typed string
		key   fyne.KeyName
		want  float64
	}{{"86", fyne.KeyReturn, 860}, {"88", fyne.KeyEscape, 860}, {"9", fyne.KeyEscape, 860}} {
		b.figure.elevation.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
		e, ok := b.win.Canvas().Focused().(*girthEntry)
		if !ok {
			t.Fatal("Enter does not lead to an entry")
		}
		for _, r := range end.typed {
			e.TypedRune(r)
		}
		e.TypedKey(&fyne.KeyEvent{Name: end.key})
		b.settle()
		if got := *field.Get(b.doc.Record()); got != end.want || b.win.Canvas().Focused() != fyne.Focusable(b.figure.elevation) {
			t.Errorf("after %s and %s: %v, want %v; the keys go to %T", end.typed, end.key, got, end.want, b.win.Canvas().Focused())
		}
	}
	b.menuItem("Undo").Action()
	if got := *field.Get(b.doc.Record()); got != 840 {
		t.Errorf("after one undo %v", got)
	}
}

func TestAGirthIsTypedWhereItStands(t *testing.T) {
	r := dress()
	if f := girthField(r, measure.Bust); f.Path != "garment.bodice.bust_girth" {
		t.Errorf("the bust's girth is kept in %s", f.Path)
	}
	if f := girthField(r, measure.AcrossChest); f.Path != "mount.shape.across-chest.girth" {
		t.Errorf("the girth across the chest is kept in %s", f.Path)
	}
}

// BenchmarkPull is one frame of a drag: what happens on the main thread.
func BenchmarkPull(b *testing.B) {
	d, s := hands()
	defer d.Close()
	s.take(measure.Waist)
	for i := 0; b.Loop(); i++ {
		a := s.pulled(control.Pull{Handle: control.Right, By: float64(i%10) - 5})
		s.torso.Reshape(measure.Waist, a)
	}
}

// BenchmarkTake is what happens when a handle is taken.
func BenchmarkTake(b *testing.B) {
	d, s := hands()
	defer d.Close()
	for b.Loop() {
		s.level = ""
		s.take(measure.Waist)
	}
}

// BenchmarkDrag is all that a frame of a drag of the section does on the main thread but the painting.
func BenchmarkDrag(b *testing.B) {
	w := demoBench(b)
	for i := 0; b.Loop(); i++ {
		w.figure.pull(control.Pull{Handle: control.Right, By: float64(i%10) - 5})
	}
}
