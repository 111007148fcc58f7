package ui

import (
	"bytes"
	"context"
	"errors"
	"log"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"understructure/app/document"
	"understructure/app/pipeline"
	"understructure/app/record"
	"understructure/app/ui/control"
	_ "understructure/app/ui/localeenv"
	"understructure/app/ui/picture"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/patterns/plan"
)

// TestMain fails when the toolkit found a widget used off its thread.
func TestMain(m *testing.M) {
	var heard bytes.Buffer
	log.SetOutput(&heard)
	code := m.Run()
	os.Stderr.Write(heard.Bytes())
	if strings.Contains(heard.String(), "Error in Fyne call thread") {
		code = 1
	}
	os.Exit(code)
}

// bench is a window whose mount is a stand-in: round, ten millimetres of girth smaller than the garment.
type bench struct {
	*Window
	t      testing.TB
	posts  chan func()
	exited chan error
}

func newBench(t *testing.T) *bench {
	t.Helper()
	b := &bench{t: t, posts: make(chan func(), 1000), exited: make(chan error, 1)}
	b.Window = New(test.NewTempApp(t), Options{
		Rooms: document.Rooms{Compute: round, Load: record.Load, Save: record.Save, Post: func(f func()) { b.posts <- f }},
		Demos: []Demo{{"Demonstration", dress()}, {"Another", other()}}, Figure: pipeline.Figure,
		Export: func(ctx context.Context, r record.Record, folder string, progress Progress) error {
			progress("writing", 0.5)
			err := ctx.Err()
			if err == nil && r.Garment.Bodice[measure.WaistGirth] == 666 {
				<-ctx.Done()
				err = ctx.Err()
			}
			if err == nil {
				err = os.Mkdir(folder, 0o700)
			}
			b.exited <- err
			return err
		},
	})
	t.Cleanup(b.doc.Close)
	b.settle()
	return b
}

// settle runs what was posted until nothing is being computed any more.
func (b *bench) settle() {
	b.t.Helper()
	for b.doc.Busy() || len(b.posts) > 0 {
		select {
		case f := <-b.posts:
			f()
		case <-time.After(time.Minute):
			b.t.Fatal("the plan does not come")
		}
	}
}

func dress() record.Record {
	r := record.Record{Unit: "cm"}
	r.Object = record.Object{Number: "1", Title: "Dress", Year: 1872, Wearer: measure.Woman, Notice: "invented for demonstration"}
	r.Garment.Bodice = measure.Sheet{measure.BustGirth: 840, measure.WaistGirth: 620, measure.BackWaist: 380}
	r.Mount.Build = "padded"
	r.Form = &record.Form{Label: "Form 3", Bodice: measure.Sheet{measure.BustGirth: 780, measure.WaistGirth: 570, measure.BackWaist: 380}}
	return r
}

func other() record.Record {
	r := dress()
	r.Unit, r.Form, r.Mount.Build = "in", nil, "slices"
	return r
}

func round(_ context.Context, r record.Record) (plan.Plan, error) {
	p := plan.Plan{StandHeight: 1000}
	for i, l := range []measure.Level{measure.Bust, measure.Waist} {
		key := []measure.Key{measure.BustGirth, measure.WaistGirth}[i]
		garment := r.Garment.Bodice[key]
		built, clearance := garment-10, 10.0
		if key == measure.WaistGirth && r.Form != nil && r.Form.Bodice[key] > garment {
			built = r.Form.Bodice[key]
			clearance = garment - built
		}
		z := []float64{1200, 1000}[i]
		if h := r.Mount.Shape[l].Height; h != nil {
			z = 1000 + *h
		}
		p.Levels = append(p.Levels, plan.Level{Name: string(l), Height: z, GarmentGirth: &garment, Taken: true, BuiltGirth: &built, Clearance: &clearance})
	}
	for z := 1000.0; z <= 1200; z += 20 {
		g := *p.Levels[1].GarmentGirth + (z-1000)/200*(*p.Levels[0].GarmentGirth-*p.Levels[1].GarmentGirth)
		p.Surface.Heights = append(p.Surface.Heights, z)
		p.Surface.Garment = append(p.Surface.Garment, circle(g))
		p.Surface.Built = append(p.Surface.Built, circle(g-10))
	}
	p.Drawn = map[string]plan.Value{"garment.bodice.hip_girth": {Value: 950, Source: "statistics"}}
	if r.Garment.Bodice[measure.BustGirth] > 1000 {
		p.Warnings = []plan.Warning{{Code: "large", Level: "bust", Key: "garment.bodice.bust_girth", Message: "The bust is large."}}
	}
	if r.Garment.Bodice[measure.BustGirth] > 1500 {
		return p, errors.New("no such bust")
	}
	return p, nil
}

// circle has the given girth.
func circle(girth float64) plane.Ring {
	r := make(plane.Ring, 90)
	for i := range r {
		s, c := math.Sincos(2 * math.Pi * float64(i) / 90)
		r[i] = plane.Point{X: girth / 2 / math.Pi * c, Y: girth / 2 / math.Pi * s}
	}
	return r
}

// entry finds the entry of a key in any list.
func (b *bench) entry(key string) *widget.Entry {
	b.t.Helper()
	if l := b.list(key); l != nil {
		return l.Entry(key)
	}
	b.t.Fatalf("no entry for %s", key)
	return nil
}

// list finds the list of a key in any place, going there.
func (b *bench) list(key string) *control.MeasureList {
	for i, p := range b.places.all {
		b.places.choose(i)
		for _, l := range lists(p) {
			if l.Entry(key) != nil {
				return l
			}
		}
	}
	return nil
}

func lists(p place) []*control.MeasureList {
	switch p := p.(type) {
	case *measurePlace:
		return []*control.MeasureList{p.garment.list, p.form.list}
	case *buildPlace:
		return []*control.MeasureList{p.values.list}
	}
	return nil
}

func (b *bench) measuring() *measurePlace {
	b.places.goTo("Measure")
	return b.places.all[b.places.chosen].(*measurePlace)
}

func (b *bench) building() *buildPlace {
	b.places.goTo("Build")
	return b.places.all[b.places.chosen].(*buildPlace)
}

// retype replaces what an entry says.
func (b *bench) retype(key, text string) {
	e := b.entry(key)
	e.SetText("")
	test.Type(e, text)
	b.doc.Settle()
	b.settle()
}

func (b *bench) menuItem(label string) *fyne.MenuItem {
	b.t.Helper()
	for _, m := range b.win.MainMenu().Items {
		for _, i := range m.Items {
			if strings.HasPrefix(i.Label, label) {
				return i
			}
		}
	}
	b.t.Fatalf("no menu item %q", label)
	return nil
}

// press taps the button with this text in whatever is on top of the window.
func (b *bench) press(label string) {
	b.t.Helper()
	top := b.win.Canvas().Overlays().Top()
	if top == nil {
		b.t.Fatalf("nothing is asked, so there is no button %q", label)
	}
	for _, o := range test.LaidOutObjects(top) {
		if button, ok := o.(*widget.Button); ok && button.Text == label {
			test.Tap(button)
			return
		}
	}
	b.t.Fatalf("no button %q", label)
}

const waist, bust = "garment.bodice.waist_girth", "garment.bodice.bust_girth"

func TestTypingRedrawsThePicture(t *testing.T) {
	b := newBench(t)
	if got := b.status.verdict.Text; got != "No tape strains. Tightest at the bust, with 1.0 cm to spare." {
		t.Errorf("verdict %q", got)
	}
	before := b.figure.body.Ring(picture.Built, 1000).Tape()
	b.retype(waist, "66")
	after := b.figure.body.Ring(picture.Built, 1000).Tape()
	if math.Abs(after-before-40) > 0.5 {
		t.Errorf("waist of the picture went from %.1f to %.1f mm, want 40 more", before, after)
	}
	if g, m := b.figure.key.Numbers("garment, inside")[0], b.figure.key.Numbers("mount, built")[0]; g != "660" || m != "650" {
		t.Errorf("the section says garment %s, mount %s mm round; want 660, 650", g, m)
	}
	if !strings.HasPrefix(b.win.Title(), "• Demonstration") {
		t.Errorf("title %q does not show that there is something to save", b.win.Title())
	}
}

func TestUndoLeadsBackInOneStepAndIsNamed(t *testing.T) {
	b := newBench(t)
	b.retype(waist, "66")
	undo := b.menuItem("Undo")
	if undo.Label != "Undo waist girth" || undo.Disabled {
		t.Errorf("undo is %q, disabled %v", undo.Label, undo.Disabled)
	}
	undo.Action()
	b.settle()
	if b.entry(waist).Text != "62" || b.doc.Dirty() {
		t.Errorf("after undo the entry says %q, dirty %v", b.entry(waist).Text, b.doc.Dirty())
	}
	b.menuItem("Redo").Action()
	b.settle()
	if b.entry(waist).Text != "66" {
		t.Errorf("after redo the entry says %q", b.entry(waist).Text)
	}
}

func TestAPickedLevelIsShownAsSection(t *testing.T) {
	b := newBench(t)
	if b.figure.level.Text != "Waist" || b.figure.section.Height() != 1000 {
		t.Errorf("at first: %q at %v", b.figure.level.Text, b.figure.section.Height())
	}
	b.figure.elevation.TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	if b.figure.level.Text != "Bust" || b.figure.section.Height() != 1200 {
		t.Errorf("after the arrow: %q at %v", b.figure.level.Text, b.figure.section.Height())
	}
	b.retype(waist, "66")
	if b.figure.level.Text != "Bust" {
		t.Errorf("a new plan changed the picked level to %q", b.figure.level.Text)
	}
}

func TestStrainWarningsAndErrorsAreShown(t *testing.T) {
	b := newBench(t)
	b.retype("form.bodice.waist_girth", "63.5")
	if got := b.status.verdict.Text; got != "Would strain: at the waist the mount is 1.5 cm larger than the garment." {
		t.Errorf("verdict %q", got)
	}
	b.retype(bust, "110")
	if got := b.list(bust).Note(bust); got != "The bust is large." {
		t.Errorf("beside the value: %q", got)
	}
	if b.status.notices.Text != "1 notice" || !b.status.notices.Visible() {
		t.Errorf("notices %q", b.status.notices.Text)
	}
	b.retype(bust, "170")
	if got := b.status.verdict.Text; got != "no such bust" {
		t.Errorf("verdict %q, want the reason why there is no plan", got)
	}
}

func TestWhatWasNotTakenShowsStatistics(t *testing.T) {
	b := newBench(t)
	if e := b.entry("garment.bodice.hip_girth"); e.Text != "" || e.PlaceHolder != "95" {
		t.Errorf("hip girth %q, in grey %q; want nothing, 95", e.Text, e.PlaceHolder)
	}
}

func TestAnotherUnitAndAnotherBuild(t *testing.T) {
	b := newBench(t)
	b.start(b.options.Demos[1])
	b.settle()
	b.retype(waist, "24 1/2")
	if got := b.doc.Record().Garment.Bodice[measure.WaistGirth]; math.Abs(got-622.3) > 1e-9 {
		t.Errorf("24 1/2 in is %v mm", got)
	}
	if tabs := len(b.measuring().tabs.Items); tabs != 1 {
		t.Errorf("%d tabs to measure, want no form", tabs)
	}
	b.entry("mount.plank.thickness")
}

// untilOverlay runs what is posted until the top of the window is as wanted.
func (b *bench) untilOverlay(wanted func(fyne.CanvasObject) bool) {
	b.t.Helper()
	for !wanted(b.win.Canvas().Overlays().Top()) {
		select {
		case f := <-b.posts:
			f()
		case <-time.After(time.Minute):
			b.t.Fatal("the window does not come to what is wanted")
		}
	}
}

func says(o fyne.CanvasObject, text string) bool {
	if o == nil {
		return false
	}
	for _, part := range test.LaidOutObjects(o) {
		if l, ok := part.(*widget.Label); ok && strings.Contains(l.Text, text) {
			return true
		}
	}
	return false
}

// What is wider or higher than the smallest screen would push the foot of the window out of sight.
func TestTheWindowFitsASmallScreen(t *testing.T) {
	b := newBench(t)
	b.retype(bust, "110")
	b.figure.elevation.TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	if size := b.win.Content().MinSize(); size.Width > 1280 || size.Height > 660 {
		t.Errorf("the window needs %v, want at most 1280 × 660 beside menu and frame", size)
	}
}

func TestBothAppearancesDraw(t *testing.T) {
	b := newBench(t)
	for _, label := range []string{"Dark", "Light"} {
		b.menuItem(label).Action()
		b.win.Canvas().Capture()
		if !b.menuItem(label).Checked {
			t.Errorf("%s is not checked after it was chosen", label)
		}
	}
}

func TestTabsStayWhileOneTypes(t *testing.T) {
	b := newBench(t)
	tabs := b.measuring().tabs
	tabs.SelectIndex(1)
	before := append([]*container.TabItem{}, tabs.Items...)
	b.retype("form.bodice.waist_girth", "58")
	if tabs.SelectedIndex() != 1 || before[1] != tabs.Items[1] {
		t.Error("typing rebuilt the tabs")
	}
}

func TestAPaddedBuildSaysWhatTheFormLacks(t *testing.T) {
	b := newBench(t)
	b.start(b.options.Demos[1])
	b.settle()
	b.building().choices[0].pick.SetSelected("padded")
	b.settle()
	if tabs := len(b.measuring().tabs.Items); tabs != 2 {
		t.Errorf("%d tabs to measure, want a form to type in", tabs)
	}
	if got := lacks(b.doc.Record()); !strings.HasPrefix(got, "Still needed: of the form bust girth") {
		t.Errorf("what is needed is said as %q", got)
	}
}

func TestAFileIsShownAtFirstWithoutTheDemo(t *testing.T) {
	path := filepath.Join(t.TempDir(), "dress.json")
	if err := record.Save(path, other()); err != nil {
		t.Fatal(err)
	}
	w := New(test.NewTempApp(t), Options{
		File: path, Demos: []Demo{{"Demonstration", dress()}},
		Rooms: document.Rooms{Compute: round, Load: record.Load, Save: record.Save, Post: func(func()) {}},
	})
	t.Cleanup(w.doc.Close)
	if w.name() != "dress.json" {
		t.Errorf("%q is open", w.name())
	}
}

// The foot of the window is never rosier than the plan.
func TestTheVerdictSaysWhatElseIsWrong(t *testing.T) {
	p, err := round(context.Background(), dress())
	if err != nil {
		t.Fatal(err)
	}
	p.Doubt.ChanceAnywhere = 0.2
	p.Warnings = []plan.Warning{{Code: "form-stands-out", Level: "bust", Amount: 5}}
	got, _ := verdict(p, "cm")
	for _, want := range []string{"stands out", "bust", "20"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q does not say %q", got, want)
		}
	}
	p.Warnings, p.Doubt.ChanceAnywhere = nil, 0.001
	if got, _ := verdict(p, "cm"); strings.Contains(got, "Chance") || strings.Contains(got, "stands out") {
		t.Errorf("all is well, and it says %q", got)
	}
}
