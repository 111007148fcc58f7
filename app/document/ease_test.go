package document

import (
	"maps"
	"testing"

	"understructure/app/record"
	"understructure/geometry/measure"
)

func TestTheEaseOfALevelLeavesTheOthers(t *testing.T) {
	r := dress()
	r.Mount.Ease.All = mm(20)
	d := newDesk(t, echo)
	d.Start("demo", r)
	waist, hip := EaseFields(r)[6], EaseFields(r)[8]
	if waist.Path != "mount.ease.waist" || *waist.Get(r) != 20 {
		t.Fatalf("%s is %v", waist.Path, *waist.Get(r))
	}
	d.Set(waist, mm(12))
	if got := d.Record().Mount.Ease; got.All != nil || len(got.ByLevel) != len(measure.Levels) || *waist.Get(d.Record()) != 12 || *hip.Get(d.Record()) != 20 {
		t.Errorf("ease %+v", got)
	}
	d.Set(waist, nil)
	if waist.Get(d.Record()) != nil || *hip.Get(d.Record()) != 20 {
		t.Errorf("ease %+v", d.Record().Mount.Ease)
	}
	d.ClearEase()
	if name, _ := d.Undoes(); name != "ease by strength" || d.Record().Mount.Ease.ByLevel != nil {
		t.Errorf("%q leaves %+v", name, d.Record().Mount.Ease)
	}
	d.ClearEase()
	d.Undo()
	if *hip.Get(d.Record()) != 20 {
		t.Error("to clear what is clear was a step")
	}
}

func TestTheLastEaseThatIsTakenOutLeavesNone(t *testing.T) {
	for _, f := range EaseFields(record.Record{}) {
		if got := f.With(f.With(dress(), mm(7)), nil).Mount.Ease; got.All != nil || got.ByLevel != nil {
			t.Errorf("%s: %+v", f.Path, got)
		}
	}
}

// The fields that stand outside Places are as complete as those in it.
func TestFieldsOutsidePlaces(t *testing.T) {
	r := dress()
	fields := append(append(SkirtFields(r), SleeveFields(r)...), EaseFields(r)...)
	for _, l := range measure.Levels {
		fields = append(fields, ShapeFields(r, l)...)
	}
	paths := map[string]bool{}
	for _, f := range fields {
		s := f.With(r, mm(123))
		if got := f.Get(s); got == nil || *got != 123 || f.Get(r) != nil || f.Get(f.With(s, nil)) != nil {
			t.Errorf("%s: set 123, got %v", f.Path, got)
		}
		if f.Label == "" || f.Where == "" || f.Group == "" || f.Min >= f.Max || paths[f.Path] {
			t.Errorf("incomplete or twice: %+v", f)
		}
		paths[f.Path] = true
	}
	if want := len(measure.Skirt) + len(measure.Sleeve) + 7*len(measure.Levels); len(paths) != want {
		t.Errorf("%d fields, want %d", len(paths), want)
	}
	if !maps.Equal(r.Garment.Bodice, dress().Garment.Bodice) || r.Mount.Shape != nil {
		t.Error("the record that one started from was written to")
	}
}
