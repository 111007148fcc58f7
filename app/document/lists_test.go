package document

import (
	"strings"
	"testing"

	"understructure/app/record"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
)

func TestFittingsAreKeptAndUndone(t *testing.T) {
	d := newDesk(t, echo)
	d.Start("demo", dress())
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	must(d.AddFitting(record.Fitting{On: "2026-03-02"}))
	must(d.AddFitting(record.Fitting{On: "2026-03-09"}))
	for _, note := range []string{"b", "ba", "back"} {
		must(d.ChangeFitting(1, record.Fitting{On: "2026-03-09", Note: note}))
	}
	d.Settle()
	must(d.ChangeFitting(1, record.Fitting{On: "2026-03-09", Note: "back"})) // nothing changes, so it is no step
	if name, _ := d.Undoes(); name != "fitting 2" {
		t.Errorf("undo names %q", name)
	}
	must(d.RemoveFitting(0))
	if f := d.Record().Fittings; len(f) != 1 || f[0].Note != "back" {
		t.Errorf("fittings %+v", f)
	}
	d.Undo()
	if f := d.Record().Fittings; len(f) != 2 || f[1].Note != "back" {
		t.Errorf("after one undo %+v", f)
	}
	d.Undo()
	if f := d.Record().Fittings; len(f) != 2 || f[1].Note != "" {
		t.Errorf("after two undos %+v", f)
	}
	d.Undo()
	if d.Undo(); len(d.Record().Fittings) != 0 || d.Dirty() {
		t.Errorf("after all undos %+v", d.Record().Fittings)
	}
}

// Someone goes on from a fitting of the record twice; neither the record nor the other is written to.
func TestFittingsDoNotShareWhatWasSeen(t *testing.T) {
	d := newDesk(t, echo)
	d.Start("demo", dress())
	seen := make([]record.Seen, 1, 8)
	seen[0] = record.Seen{What: record.Limp}
	if err := d.AddFitting(record.Fitting{Seen: seen}); err != nil {
		t.Fatal(err)
	}
	seen[0].What = "changed from outside"
	first, second := d.Record().Fittings[0].Clone(), d.Record().Fittings[0].Clone()
	first.Seen = append(first.Seen, record.Seen{What: record.HemLong})
	second.Seen = append(second.Seen, record.Seen{What: record.HemShort})
	first.Seen[0].What = "changed"
	if got := d.Record().Fittings[0].Seen[0].What; got != record.Limp || first.Seen[1].What != record.HemLong {
		t.Errorf("the record says %q, the first copy %q", got, first.Seen[1].What)
	}
}

func TestAPhotographIsLaidWithoutComputing(t *testing.T) {
	d := newDesk(t, echo)
	d.Start("demo", dress())
	d.computed(t)
	told := 0
	d.Changed = func() { told++ }
	p := record.Photograph{View: "front", File: "front.jpg"}
	if err := d.AddPhotograph(p); err != nil {
		t.Fatal(err)
	}
	for i := range 5 {
		p.Low = plane.Point{X: float64(i), Y: 10}
		if err := d.ChangePhotograph(0, p); err != nil {
			t.Fatal(err)
		}
	}
	if d.Busy() || told != 6 {
		t.Errorf("busy %v, told %d times; want 6 and nothing to compute", d.Busy(), told)
	}
	d.Undo()
	if got := d.Record().Photographs[0].Low; got != (plane.Point{}) {
		t.Errorf("one undo leads to %v, want where the drag began", got)
	}
	if err := d.RemovePhotograph(0); err != nil || len(d.Record().Photographs) != 0 {
		t.Errorf("photographs %v, %v", d.Record().Photographs, err)
	}
	if name, _ := d.Undoes(); name != "photograph 1 taken out" {
		t.Errorf("undo names %q", name)
	}
}

func TestWhatARecordCannotHoldIsRefused(t *testing.T) {
	d := newDesk(t, echo)
	d.Start("demo", dress())
	for want, err := range map[string]error{
		"there is no fitting 1; the record has 0":             d.ChangeFitting(0, record.Fitting{}),
		"there is no photograph 0; the record has 0":          d.RemovePhotograph(-1),
		"photograph.file: must be given":                      d.AddPhotograph(record.Photograph{View: "side"}),
		"fitting.seen[0].by: -1 cm is not possible":           d.AddFitting(record.Fitting{Seen: []record.Seen{{What: record.Tight, Level: measure.Bust, By: mm(-10)}}}),
		"fitting.seen[0].level: must be given":                d.AddFitting(record.Fitting{Seen: []record.Seen{{What: record.Tight}}}),
		"fitting.on: \"2026-02-30\" is not possible; allowed": d.AddFitting(record.Fitting{On: "2026-02-30"}),
	} {
		if err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("got %v, want %s", err, want)
		}
	}
	if d.Dirty() {
		t.Error("what was refused has changed the record")
	}
	for range record.MostPhotographs {
		if err := d.AddPhotograph(record.Photograph{View: "side", File: "a.jpg"}); err != nil {
			t.Fatal(err)
		}
	}
	if err := d.AddPhotograph(record.Photograph{View: "side", File: "a.jpg"}); err == nil || err.Error() != "a record holds at most 12 photographs" {
		t.Errorf("the thirteenth: %v", err)
	}
}

func TestTheUnitIsAStep(t *testing.T) {
	d := newDesk(t, echo)
	d.Start("demo", dress())
	if err := d.SetUnit("in"); err != nil || d.Record().Unit != "in" || d.Record().Garment.Bodice[measure.WaistGirth] != 580 {
		t.Errorf("%+v, %v", d.Record(), err)
	}
	if err := d.SetUnit("in"); err != nil {
		t.Error(err)
	}
	if err := d.SetUnit("ell"); err == nil || d.Record().Unit != "in" {
		t.Errorf("an ell was taken: %v", err)
	}
	if name, _ := d.Undoes(); name != "unit" {
		t.Errorf("undo names %q", name)
	}
	if d.Undo(); d.Record().Unit != "cm" || d.Dirty() {
		t.Errorf("one undo leads to %s", d.Record().Unit)
	}
}
