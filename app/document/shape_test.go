package document

import (
	"testing"

	"understructure/geometry/measure"
)

func TestADragOfTheShapeIsOneStep(t *testing.T) {
	d := newDesk(t, echo)
	d.Start("demo", dress())
	set := func(a measure.Adjustment) {
		t.Helper()
		if err := d.SetShape(measure.Waist, a); err != nil {
			t.Fatal(err)
		}
	}
	named := func(want string) {
		t.Helper()
		if got, ok := d.Undoes(); got != want || !ok {
			t.Errorf("undo names %q, want %q", got, want)
		}
	}
	for _, v := range []float64{200, 205, 210} {
		set(measure.Adjustment{Breadth: mm(v)})
		named("waist breadth")
	}
	d.Settle()
	set(measure.Adjustment{Breadth: mm(210), FrontArc: mm(300)})
	named("waist front arc")
	set(measure.Adjustment{Breadth: mm(212), FrontArc: mm(300)})
	named("waist shape")
	if d.Undo(); *d.Record().Mount.Shape[measure.Waist].Breadth != 210 {
		t.Errorf("one undo leads to %v", *d.Record().Mount.Shape[measure.Waist].Breadth)
	}
	if d.Undo(); d.Record().Mount.Shape != nil || d.Dirty() {
		t.Errorf("two lead to %v", d.Record().Mount.Shape)
	}
}

func TestADragOfAnotherLevelIsAnotherStep(t *testing.T) {
	d := newDesk(t, echo)
	d.Start("demo", dress())
	for _, l := range []measure.Level{measure.Waist, measure.Hip} {
		if err := d.SetShape(l, measure.Adjustment{Height: mm(-10)}); err != nil {
			t.Fatal(err)
		}
	}
	if d.Undo(); len(d.Record().Mount.Shape) != 1 {
		t.Errorf("undo leads to %v, want the waist's", d.Record().Mount.Shape)
	}
}

func TestWhatIsNotSetFollowsTheMeasurements(t *testing.T) {
	d := newDesk(t, echo)
	d.Start("demo", dress())
	breadth := mm(210)
	a := measure.Adjustment{Breadth: breadth}
	if err := d.SetShape(measure.Waist, a); err != nil {
		t.Fatal(err)
	}
	if *breadth = 1; *d.Record().Mount.Shape[measure.Waist].Breadth != 210 {
		t.Error("the record is written to from outside")
	}
	d.Settle()
	if err := d.SetShape(measure.Waist, measure.Adjustment{}); err != nil || d.Record().Mount.Shape != nil {
		t.Errorf("shape %v, %v", d.Record().Mount.Shape, err)
	}
	d.Undo()
	if err := d.SetShape(measure.Waist, measure.Adjustment{Breadth: mm(210)}); err != nil {
		t.Fatal(err)
	}
	if name, _ := d.Redoes(); name != "waist breadth" {
		t.Errorf("setting what is set was a step; redo names %q", name)
	}
	d.ClearShape()
	if name, _ := d.Undoes(); name != "shape by measurements" || d.Record().Mount.Shape != nil {
		t.Errorf("%q leaves %v", name, d.Record().Mount.Shape)
	}
}

func TestAnImpossibleShapeIsRefused(t *testing.T) {
	d := newDesk(t, echo)
	d.Start("demo", dress())
	const want = "mount.shape.waist.breadth: 0.5 cm is not possible; allowed 3–110 cm (30–1100 mm)"
	if err := d.SetShape(measure.Waist, measure.Adjustment{Breadth: mm(5)}); err == nil || err.Error() != want || d.Dirty() {
		t.Errorf("got %v, want %s", err, want)
	}
}
