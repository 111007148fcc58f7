package document

import (
	"slices"
	"testing"

	"understructure/app/record"
	"understructure/geometry/measure"
)

func TestReadingsAreStepsOfTheirOwn(t *testing.T) {
	d := newDesk(t, echo)
	d.Start("demo", dress())
	waist := field(t, dress(), "garment.bodice.waist_girth")
	for _, c := range []struct {
		set    []float64
		kept   float64
		spread float64
	}{
		{[]float64{580, 584}, 580, 4}, {[]float64{580, 584, 577}, 577, 7}, {[]float64{584, 577}, 577, 7}, {[]float64{584}, 584, 0},
	} {
		if err := d.SetReadings(waist, c.set); err != nil {
			t.Fatal(err)
		}
		d.Settle()
		r := d.Record()
		if got := waist.Readings(r); !slices.Equal(got, c.set) || *waist.Get(r) != c.kept || waist.Spread(r) != c.spread {
			t.Errorf("readings %v, kept %v, spread %v; want %+v", got, *waist.Get(r), waist.Spread(r), c)
		}
	}
	for _, want := range [][]float64{{584, 577}, {580, 584, 577}, {580, 584}, {580}} {
		if d.Undo(); !slices.Equal(waist.Readings(d.Record()), want) {
			t.Errorf("undo leads to %v, want %v", waist.Readings(d.Record()), want)
		}
	}
	if d.Dirty() {
		t.Error("everything is undone, yet something is unsaved")
	}
}

func TestASingleValueTakesThePlaceOfReadings(t *testing.T) {
	d := newDesk(t, echo)
	d.Start("demo", dress())
	hip := field(t, dress(), "garment.bodice.hip_girth")
	if err := d.SetReadings(hip, []float64{900, 910}); err != nil {
		t.Fatal(err)
	}
	before := d.Record()
	d.Set(hip, mm(905))
	if got := hip.Readings(d.Record()); !slices.Equal(got, []float64{905}) || d.Record().Garment.Readings.Bodice != nil {
		t.Errorf("readings %v, want the one value", got)
	}
	if !slices.Equal(hip.Readings(before), []float64{900, 910}) {
		t.Error("the record before was written to")
	}
	d.Set(hip, nil)
	if got := hip.Readings(d.Record()); got != nil {
		t.Errorf("readings %v of what was not taken", got)
	}
}

func TestReadingsOfSkirtSleeveAndFormLieApart(t *testing.T) {
	r := dress()
	r.Form = &record.Form{Bodice: measure.Sheet{}}
	d := newDesk(t, echo)
	d.Start("demo", r)
	fields := []Field{
		field(t, r, "garment.bodice.waist_girth"), SkirtFields(r)[0], SleeveFields(r)[0], field(t, r, "form.bodice.waist_girth"),
	}
	for i, f := range fields {
		if err := d.SetReadings(f, []float64{float64(500 + i), 510}); err != nil || !f.Repeats() {
			t.Fatalf("%s: %v", f.Path, err)
		}
	}
	for i, f := range fields {
		if got := f.Readings(d.Record()); !slices.Equal(got, []float64{float64(500 + i), 510}) {
			t.Errorf("%s: readings %v", f.Path, got)
		}
	}
}

func TestOfSlopesTheMeanIsKept(t *testing.T) {
	d := newDesk(t, echo)
	d.Start("demo", dress())
	slope := field(t, dress(), "garment.bodice.shoulder_slope_deg")
	if err := d.SetReadings(slope, []float64{20, 25}); err != nil || *slope.Get(d.Record()) != 22.5 {
		t.Errorf("kept %v, %v; want the mean of 20 and 25", *slope.Get(d.Record()), err)
	}
}

func TestReadingsAreRefused(t *testing.T) {
	d := newDesk(t, echo)
	d.Start("demo", dress())
	waist, hip, cover := field(t, dress(), "garment.bodice.waist_girth"), field(t, dress(), "garment.bodice.hip_girth"), field(t, dress(), "mount.cover.thickness")
	for name, err := range map[string]error{
		"none of what is needed": d.SetReadings(waist, nil),
		"one beyond the range":   d.SetReadings(hip, []float64{900, 90}),
		"thirteen":               d.SetReadings(hip, slices.Repeat([]float64{900}, 13)),
		"two of a choice":        d.SetReadings(cover, []float64{1, 2}),
	} {
		if err == nil {
			t.Errorf("%s: not refused", name)
		}
	}
	if d.Dirty() {
		t.Error("what was refused has changed the record")
	}
	if err := d.SetReadings(cover, []float64{2}); err != nil || !slices.Equal(cover.Readings(d.Record()), []float64{2}) || cover.Repeats() {
		t.Errorf("one of a choice: %v, %v", cover.Readings(d.Record()), err)
	}
}
