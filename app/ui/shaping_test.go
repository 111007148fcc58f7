package ui

import (
	"math"
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
					t.Errorf("handle %v, balance %v, pulled %v: tape %.2f mm, want %.2f (%s)", handle, balance, by, got, want, said)
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

func TestALevelIsLiftedInOneStep(t *testing.T) {
	b := newBench(t)
	e := b.figure.elevation
	e.Resize(fyne.NewSize(700, 500))
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp}) // the bust
	for range 3 {
		e.TypedRune('-')
	}
	b.settle()
	got := b.doc.Record().Mount.Shape[measure.Bust].Height
	if got == nil || math.Abs(*got-(1197-b.figure.plan.StandHeight)) > 1e-6 {
		t.Fatalf("the bust was set to %v", *got)
	}
	b.menuItem("Undo").Action()
	b.settle()
	if got := b.doc.Record().Mount.Shape[measure.Bust].Height; got == nil || math.Abs(*got-(1198-b.figure.plan.StandHeight)) > 1e-6 {
		t.Errorf("after one undo %v", got)
	}
}

func TestATapeIsDraggedInOneStep(t *testing.T) {
	b := newBench(t)
	e := b.figure.elevation
	e.Resize(fyne.NewSize(700, 500))
	y, scale := e.Tape("bust")
	at := fyne.NewPos(60, y)
	e.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}, Button: desktop.MouseButtonPrimary})
	for i := 1; i <= 10; i++ {
		e.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: at.AddXY(0, float32(-i))}})
	}
	e.DragEnd()
	b.settle()
	got := b.doc.Record().Mount.Shape[measure.Bust].Height
	if want := 1200 - b.figure.plan.StandHeight + 10/scale; got == nil || math.Abs(*got-want) > 0.6 {
		t.Fatalf("the bust was set to %v, want %.0f", *got, want)
	}
	b.menuItem("Undo").Action()
	b.settle()
	if len(b.doc.Record().Mount.Shape) > 0 {
		t.Error("the drag was more than one step")
	}
}

func TestTheWaistIsNotLifted(t *testing.T) {
	b := newBench(t)
	b.figure.lift("waist", 1100)
	if len(b.doc.Record().Mount.Shape) > 0 || b.figure.numbers.Text == "" {
		t.Error("the waist was moved, or nothing was said")
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
