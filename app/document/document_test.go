package document

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"understructure/app/record"
	"understructure/geometry/measure"
	"understructure/patterns/plan"
)

// desk is a document with stand-ins for the other rooms; its files are kept in memory apart
// from an empty file on disk for each.
type desk struct {
	*Document
	posts  chan func()
	wrote  chan string
	files  map[string]record.Record // touched by the test's goroutine and by safety copies in turn
	refuse error
}

func newDesk(t *testing.T, compute Compute) *desk {
	t.Helper()
	d := &desk{posts: make(chan func(), 100), wrote: make(chan string, 100), files: map[string]record.Record{}}
	d.Document = New(Rooms{
		Compute: compute,
		Load: func(path string) (record.Record, error) {
			r, ok := d.files[path]
			if !ok {
				return r, errors.New("no such record")
			}
			return r, nil
		},
		Save: func(path string, r record.Record) error {
			if d.refuse != nil {
				return d.refuse
			}
			d.files[path] = r
			err := os.WriteFile(path, nil, 0o600)
			d.wrote <- path
			return err
		},
		Post:    func(f func()) { d.posts <- f },
		Scratch: t.TempDir(),
	})
	t.Cleanup(d.Close)
	return d
}

// next runs the next thing that was posted.
func (d *desk) next(t *testing.T) {
	t.Helper()
	select {
	case f := <-d.posts:
		f()
	case <-time.After(10 * time.Second):
		t.Fatal("nothing was posted")
	}
}

func (d *desk) computed(t *testing.T) {
	t.Helper()
	for d.Busy() {
		d.next(t)
	}
}

// echo is a stand-in plan that tells the waist of its record as its stand height.
func echo(_ context.Context, r record.Record) (plan.Plan, error) {
	return plan.Plan{StandHeight: r.Garment.Bodice[measure.WaistGirth]}, nil
}

func dress() record.Record {
	return record.Record{Unit: "cm", Garment: record.Garment{Bodice: measure.Sheet{measure.WaistGirth: 580}}}
}

func field(t *testing.T, r record.Record, path string) Field {
	t.Helper()
	for _, p := range Places(r) {
		for _, f := range p.Fields {
			if f.Path == path {
				return f
			}
		}
	}
	t.Fatalf("no field %s", path)
	return Field{}
}

func mm(v float64) *float64 { return &v }

func TestSettingAFieldRecomputesAndIsOneStep(t *testing.T) {
	d := newDesk(t, echo)
	d.Start("demo", dress())
	waist := field(t, dress(), "garment.bodice.waist_girth")
	for _, v := range []float64{600, 610, 612} {
		d.Set(waist, mm(v))
	}
	d.Settle()
	d.computed(t)
	if p, err := d.Plan(); p.StandHeight != 612 || err != nil {
		t.Errorf("plan of waist %v, %v; want 612", p.StandHeight, err)
	}
	if name, ok := d.Undoes(); name != "waist girth" || !ok {
		t.Errorf("undo names %q %v", name, ok)
	}
	d.Undo()
	d.computed(t)
	if p, _ := d.Plan(); p.StandHeight != 580 || d.Dirty() {
		t.Errorf("one undo must lead back to 580 and clean, got %v, dirty %v", p.StandHeight, d.Dirty())
	}
	d.Redo()
	if got := *waist.Get(d.Record()); got != 612 {
		t.Errorf("redo to %v, want 612", got)
	}
}

func TestTheSameValueIsNoStep(t *testing.T) {
	d := newDesk(t, echo)
	d.Start("demo", dress())
	d.Set(field(t, dress(), "garment.bodice.waist_girth"), mm(580))
	d.Set(field(t, dress(), "garment.bodice.hip_girth"), nil)
	if _, ok := d.Undoes(); ok || d.Dirty() {
		t.Error("nothing changed, yet there is something to undo")
	}
}

// The first computation is held until it is told to stop; its result comes anyway and must not be shown.
func TestAStaleResultIsDropped(t *testing.T) {
	begun := make(chan struct{}, 10)
	d := newDesk(t, func(ctx context.Context, r record.Record) (plan.Plan, error) {
		begun <- struct{}{}
		if r.Garment.Bodice[measure.WaistGirth] == 580 {
			<-ctx.Done()
		}
		return echo(ctx, r)
	})
	d.Start("demo", dress())
	<-begun
	d.Set(field(t, dress(), "garment.bodice.waist_girth"), mm(600))
	d.computed(t)
	if p, _ := d.Plan(); p.StandHeight != 600 {
		t.Errorf("plan of waist %v, want 600", p.StandHeight)
	}
	if len(d.posts) != 0 {
		t.Error("the stopped computation still reports")
	}
}

func TestAResultThatComesLateIsDroppedByItsNumber(t *testing.T) {
	d := newDesk(t, echo)
	d.Start("demo", dress())
	late := <-d.posts // the result of 580, not yet shown
	d.Set(field(t, dress(), "garment.bodice.waist_girth"), mm(600))
	late()
	if p, _ := d.Plan(); p.StandHeight != 0 || !d.Busy() {
		t.Errorf("a late result was shown: %v", p.StandHeight)
	}
	d.computed(t)
	if p, _ := d.Plan(); p.StandHeight != 600 {
		t.Errorf("plan of waist %v, want 600", p.StandHeight)
	}
}

func TestAFailedRunLeavesTheLastPlan(t *testing.T) {
	d := newDesk(t, func(ctx context.Context, r record.Record) (plan.Plan, error) {
		if r.Garment.Bodice[measure.WaistGirth] > 600 {
			return plan.Plan{}, errors.New("too large")
		}
		return echo(ctx, r)
	})
	d.Start("demo", dress())
	d.computed(t)
	d.Set(field(t, dress(), "garment.bodice.waist_girth"), mm(700))
	d.computed(t)
	if p, err := d.Plan(); p.StandHeight != 580 || err == nil {
		t.Errorf("got %v, %v; want the plan of 580 and an error", p.StandHeight, err)
	}
}

func TestASketchIsShownUntilTheWholeHasCome(t *testing.T) {
	d := newDesk(t, func(ctx context.Context, r record.Record) (plan.Plan, error) {
		p, err := echo(ctx, r)
		p.StandHeight++
		return p, err
	})
	d.rooms.Sketch = echo
	var seen []float64
	d.Computed = func() {
		p, _ := d.Plan()
		seen = append(seen, p.StandHeight)
	}
	d.Start("demo", dress())
	d.computed(t)
	if want := []float64{0, 580, 581}; !slices.Equal(seen, want) {
		t.Errorf("seen %v, want nothing, sketch, whole: %v", seen, want)
	}
}

func TestARecordIsNeverWrittenTo(t *testing.T) {
	r := dress()
	for _, p := range Places(r) {
		for _, f := range p.Fields {
			if f.allow != nil && f.allow(mm(123)) != nil {
				continue // a second before there is a first
			}
			s := f.With(r, mm(123))
			if got := f.Get(s); got == nil || *got != 123 {
				t.Errorf("%s: set 123, got %v", f.Path, got)
			}
			if f.Path != "garment.bodice.waist_girth" && f.Get(r) != nil {
				t.Errorf("%s: the record that one started from was written to", f.Path)
			}
			if f.Get(f.With(s, nil)) != nil {
				t.Errorf("%s: still there after it was taken out", f.Path)
			}
			if f.Label == "" || f.Where == "" || f.Group == "" || f.Min >= f.Max {
				t.Errorf("%s: incomplete: %+v", f.Path, f)
			}
		}
	}
}

func TestSavingIsRemembered(t *testing.T) {
	d := newDesk(t, echo)
	path := filepath.Join(t.TempDir(), "dress.json")
	d.Start("demo", dress())
	waist := field(t, dress(), "garment.bodice.waist_girth")
	d.Set(waist, mm(600))
	if err := d.SaveAs(path); err != nil || d.Dirty() || d.Path() != path || d.Title() != "" {
		t.Errorf("after SaveAs: %v, dirty %v, path %q, title %q", err, d.Dirty(), d.Path(), d.Title())
	}
	d.Set(waist, mm(610))
	d.refuse = errors.New("disk full")
	if err := d.Save(); err == nil || !d.Dirty() {
		t.Errorf("a failed save must say so and leave the record unsaved: %v, dirty %v", err, d.Dirty())
	}
	d.refuse = nil
	if err := d.Open(path); err != nil || *waist.Get(d.Record()) != 600 {
		t.Errorf("opened %v, %v; want 600", *waist.Get(d.Record()), err)
	}
	if err := d.Open("nowhere.json"); err == nil || d.Path() != path {
		t.Errorf("a failed open must leave what was open: %v, path %q", err, d.Path())
	}
}

func TestOneEaseTakesThePlaceOfThoseForLevels(t *testing.T) {
	r := dress()
	r.Mount.Ease.ByLevel = map[measure.Level]float64{measure.Waist: 12}
	ease := field(t, r, "mount.ease")
	if got := ease.With(r, nil); got.Mount.Ease.ByLevel[measure.Waist] != 12 {
		t.Error("leaving the one ease empty lost those for levels")
	}
	got := ease.With(r, mm(20))
	if *got.Mount.Ease.All != 20 || got.Mount.Ease.ByLevel != nil {
		t.Errorf("ease is %+v, want 20 for all", got.Mount.Ease)
	}
	if r.Mount.Ease.ByLevel[measure.Waist] != 12 {
		t.Error("the record itself was changed")
	}
}

func TestWaddingsStayInOrder(t *testing.T) {
	first, second := "mount.wadding.thickness", "mount.wadding[1].thickness"
	read := func(r record.Record, path, text string) record.Record {
		f := field(t, r, path)
		v, err := f.Read(text, "mm")
		if err != nil {
			t.Fatalf("%s = %q: %v", path, text, err)
		}
		return f.With(r, v)
	}
	refused := func(r record.Record, path, text string) {
		if _, err := field(t, r, path).Read(text, "mm"); err == nil {
			t.Errorf("%s = %q of %v is not refused", path, text, r.Mount.Wadding)
		}
	}
	r := dress()
	refused(r, second, "3")
	r = read(read(r, first, "6"), second, "3")
	refused(r, first, "")
	if w := read(r, first, "7").Mount.Wadding; len(w) != 2 || w[0].Thickness != 7 || w[1].Thickness != 3 || r.Mount.Wadding[0].Thickness != 6 {
		t.Errorf("waddings %v, and before %v", w, r.Mount.Wadding)
	}
	if w := read(r, second, "").Mount.Wadding; len(w) != 1 || w[0].Thickness != 6 {
		t.Errorf("without the second: %v", w)
	}
}

func TestAPaddedBuildAsksForTheForm(t *testing.T) {
	r := dress()
	r.Mount.Build = "padded"
	r.Garment.Bodice[measure.BustGirth], r.Garment.Bodice[measure.BackWaist] = 840, 380
	if m := Missing(r); len(m) != 1 || m[0].Name != "Form" || len(m[0].Fields) != len(record.Required) {
		t.Errorf("missing is %v, want what every form needs", m)
	}
	waist := field(t, r, "form.bodice.waist_girth")
	if waist.Get(r) != nil || r.Form != nil {
		t.Error("looking at the form made one")
	}
	if got := waist.With(r, mm(560)); got.Form == nil || got.Form.Bodice[measure.WaistGirth] != 560 || r.Form != nil {
		t.Errorf("the form is %+v, want a waist of 560 in the new record only", got.Form)
	}
}
