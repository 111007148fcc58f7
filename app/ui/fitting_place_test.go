package ui

import (
	"context"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"understructure/app/document"
	"understructure/app/fitting"
	"understructure/app/record"
	"understructure/app/ui/control"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// fittingBench is a window whose mount follows its fittings, with one piece that is as tall as a tenth of the waist, and
// one that never changes. It is the second of March 2026.
func fittingBench(t *testing.T) (*bench, *fittingPlace) {
	t.Helper()
	b := &bench{t: t, posts: make(chan func(), 1000), exited: make(chan error, 1)}
	b.Window = New(test.NewTempApp(t), Options{
		Rooms: document.Rooms{Compute: fitted, Load: record.Load, Save: record.Save, Post: func(f func()) { b.posts <- f }},
		Demos: []Demo{{"Demonstration", dress()}, {"Another", other()}},
	})
	t.Cleanup(b.doc.Close)
	b.settle()
	b.places.goTo("Fitting")
	p := b.places.all[b.places.chosen].(*fittingPlace)
	p.today = func() string { return "2026-03-02" }
	p.hand.shown = false
	p.show()
	return b, p
}

func fitted(ctx context.Context, r record.Record) (plan.Plan, error) {
	r = fitting.Apply(r).Record
	p, err := round(ctx, r)
	p.Paper = plan.Paper{Name: "A4", Width: 210, Height: 297}
	p.Pieces = []piece.Piece{upright("L01-bust-left", "layer 1 of 1: bust, left", r.Garment.Bodice[measure.WaistGirth]/10), upright("L01-back-left", "layer 1 of 1: back, left", 50)}
	return p, err
}

// upright is a piece 50 mm broad.
func upright(id, name string, tall float64) piece.Piece {
	return piece.Piece{
		ID: id, Name: name, Material: "wadding 6 mm", Count: 1, Layer: 1, Thickness: 6,
		Outline: plane.Ring{{X: 0, Y: 0}, {X: 50, Y: 0}, {X: 50, Y: tall}, {X: 0, Y: tall}},
	}
}

// compared runs what was posted until it is known what the fitting in hand has changed.
func (b *bench) compared(p *fittingPlace) fitting.Changes {
	b.t.Helper()
	for p.before.changesTo(b.doc.Record()) == nil {
		select {
		case f := <-b.posts:
			f()
		case <-time.After(10 * time.Second):
			b.t.Fatal("the changes do not come")
		}
	}
	return *p.before.changesTo(b.doc.Record())
}

// see notes one thing.
func (b *bench) see(p *fittingPlace, n control.Noted) {
	b.t.Helper()
	p.form.Fill(n)
	p.form.Note()
	if _, wrong := p.form.Told(); wrong != "" {
		b.t.Fatalf("%v: %s", n, wrong)
	}
	b.settle()
}

var gaping = control.Noted{What: record.FailsToMeet, Level: "waist", By: "2"}

func TestWhatIsSeenComesIntoTheRecord(t *testing.T) {
	b, p := fittingBench(t)
	p.by.OnChanged("A. Maker")
	if len(b.doc.Record().Fittings) != 0 {
		t.Error("there is a fitting before anything was seen")
	}
	p.form.Fill(gaping)
	if known, _ := p.form.Told(); known != "Tried on a mount of 61.0 cm there." {
		t.Errorf("of the mount tried on it says %q", known)
	}
	b.see(p, gaping)
	fs := b.doc.Record().Fittings
	if len(fs) != 1 || fs[0].On != "2026-03-02" || fs[0].By != "A. Maker" {
		t.Fatalf("fittings %v", fs)
	}
	// the stand-in mount is 10 mm smaller than the waist of 620 mm
	if s := fs[0].Seen[0]; s.What != record.FailsToMeet || s.Level != measure.Waist || *s.By != 20 || *s.Built != 610 {
		t.Errorf("seen %v", s)
	}
	b.see(p, control.Noted{What: record.HemShort, Where: "left", By: "1 cm"})
	if got := strings.Join(p.seen.Lines(), "; "); got != "Waist fails to meet by 2 cm; Hem short by 1 cm, left" {
		t.Errorf("it says %q", got)
	}
	for range 2 {
		b.menuItem("Undo").Action()
		b.settle()
	}
	if b.doc.Dirty() || p.title.Text != "New fitting" || len(p.seen.Lines()) != 0 {
		t.Errorf("after undo: %q, %v", p.title.Text, p.seen.Lines())
	}
	b.menuItem("Redo").Action()
	b.settle()
	if got := b.doc.Record().Fittings; len(got) != 1 || len(got[0].Seen) != 1 {
		t.Errorf("after redo: %v", got)
	}
}

func TestAFittingShowsWhatItChanges(t *testing.T) {
	b, p := fittingBench(t)
	if !p.stand.export.Disabled() {
		t.Error("there is something to export before anything has changed")
	}
	b.see(p, gaping)
	b.compared(p)
	// 610 − 20 inside, and the stand-in mount 10 mm smaller than that
	row, ok := p.stand.girths.Row("waist")
	if got := strings.Join(row.Numbers, " "); !ok || got != "59.0 61.0 58.0 −3.0" || !row.Strong {
		t.Errorf("the waist says %q", got)
	}
	if row, _ := p.stand.girths.Row("bust"); row.Strong || row.Numbers[3] != "0.0" {
		t.Errorf("the bust says %v", row.Numbers)
	}
	said := strings.Join(p.stand.said, "\n")
	if !strings.Contains(said, "Layer 1 of 1, bust, left: trim up to 3 mm") || !strings.Contains(said, "1 piece stays") {
		t.Errorf("it says %s", said)
	}
	if p.stand.export.Disabled() {
		t.Error("what changes cannot be exported")
	}
	b.see(p, control.Noted{What: record.Slack, Level: "waist", By: "1"})
	b.compared(p)
	if built := b.doc.Record().Fittings[0].Seen[1].Built; built == nil || *built != 610 {
		t.Errorf("the second finding is of a mount of %v, want the one tried on, 610", built)
	}
}

func TestOnlyChangedTemplatesAreExported(t *testing.T) {
	b, p := fittingBench(t)
	b.see(p, gaping)
	b.compared(p)
	to := filepath.Join(t.TempDir(), "changed")
	p.exportTo(to)
	for end := time.Now().Add(time.Minute); ; {
		if b.settle(); b.win.Canvas().Overlays().Top() != nil {
			_, written := os.Stat(filepath.Join(to, "materials.csv"))
			if _, writing := os.Stat(filepath.Join(to, ".understructure-new")); written == nil && writing != nil {
				break
			}
		}
		if time.Now().After(end) {
			t.Fatal("nothing is written")
		}
		time.Sleep(10 * time.Millisecond)
	}
	files, err := os.ReadDir(filepath.Join(to, "svg"))
	if err != nil || len(files) != 1 || files[0].Name() != "L01-bust-left.svg" {
		t.Errorf("drawings %v, %v", files, err)
	}
}

func TestFormerFittings(t *testing.T) {
	b, p := fittingBench(t)
	b.see(p, gaping)
	p.open(1)
	if p.title.Text != "New fitting" || p.seen.Lines() != nil && len(p.seen.Lines()) > 0 {
		t.Fatalf("a new fitting is %q with %v", p.title.Text, p.seen.Lines())
	}
	p.on.OnChanged("2026-03-09")
	b.see(p, control.Noted{What: record.Limp})
	if got := strings.Join(p.log.Lines(), "; "); got != "2026-03-02 · 1 seen; 2026-03-09 · 1 seen" {
		t.Errorf("the log says %q", got)
	}
	p.log.OnOpen(0)
	p.seen.OnOpen(0)
	if said := p.form.Said(); said != gaping {
		t.Errorf("to be corrected is %v", said)
	}
	corrected := gaping
	corrected.By = "1.5"
	b.see(p, corrected)
	if fs := b.doc.Record().Fittings; len(fs[0].Seen) != 1 || *fs[0].Seen[0].By != 15 || *fs[0].Seen[0].Built != 610 {
		t.Errorf("corrected it is %v", fs[0].Seen)
	}
	if c := b.compared(p); math.Abs(*c.Girths[1].Before-610) > 0.01 {
		t.Errorf("before the first fitting the waist was %.1f", *c.Girths[1].Before)
	}
	p.seen.OnRemove(0)
	b.settle()
	p.log.OnRemove(0)
	b.settle()
	if fs := b.doc.Record().Fittings; len(fs) != 1 || fs[0].On != "2026-03-09" || p.title.Text != "New fitting" {
		t.Errorf("after taking one out: %v, in hand %q", fs, p.title.Text)
	}
	b.menuItem("Undo").Action()
	b.settle()
	if fs := b.doc.Record().Fittings; len(fs) != 2 || len(fs[0].Seen) != 0 {
		t.Errorf("after undo: %v", fs)
	}
}

func TestWhatCannotBeNotedIsSaid(t *testing.T) {
	b, p := fittingBench(t)
	for _, c := range []struct {
		noted control.Noted
		says  string
	}{
		{control.Noted{By: "1"}, "choose what was seen"},
		{control.Noted{What: record.Tight, By: "1"}, "must be given"},
		{control.Noted{What: record.Tight, Level: "waist", By: "much"}, "write a number"},
		{control.Noted{What: record.Tight, Level: "waist", By: "-1"}, "0–100"},
	} {
		p.form.Fill(c.noted)
		p.form.Note()
		if _, wrong := p.form.Told(); !strings.Contains(wrong, c.says) || strings.Contains(wrong, "fitting.") {
			t.Errorf("%v: it says %q, want %q", c.noted, wrong, c.says)
		}
	}
	if err := p.on.OnChanged("2.3.2026"); err == nil || len(b.doc.Record().Fittings) != 0 {
		t.Errorf("a date in another form: %v, %v", err, b.doc.Record().Fittings)
	}
	p.form.Fill(control.Noted{What: record.HemLong, Level: "waist"})
	if p.form.Said().Level != "" {
		t.Error("a hem has a level")
	}
}

func TestNotesAloneAreAFitting(t *testing.T) {
	b, p := fittingBench(t)
	test.Type(p.notes.Entry(), "All well")
	b.settle()
	if fs := b.doc.Record().Fittings; len(fs) != 1 || fs[0].Note != "All well" || fs[0].On != "2026-03-02" {
		t.Errorf("fittings %v", fs)
	}
	b.start(b.options.Demos[1])
	b.settle()
	if p.notes.Entry().Text != "" || p.title.Text != "New fitting" {
		t.Errorf("another record begins with %q, %q", p.title.Text, p.notes.Entry().Text)
	}
}

// Through the whole column by the keys: date, name, fault, level, side, amount, the button and the notes.
func TestTheFittingIsReachedByKeys(t *testing.T) {
	b, p := fittingBench(t)
	c := b.win.Canvas()
	c.Focus(p.on.Entry())
	reached := map[fyne.Focusable]bool{}
	for range 60 {
		at := c.Focused()
		if e, ok := at.(fyne.Tabbable); ok && e.AcceptsTab() {
			t.Errorf("%T keeps the tabulator", at)
		}
		reached[at] = true
		c.FocusNext()
	}
	entries, picks, buttons := 0, 0, 0
	for at := range reached {
		switch o := at.(type) {
		case *widget.Button:
			buttons++
		case interface{ SelectedIndex() int }:
			picks++
		case interface{ SelectedText() string }:
			entries++
		default:
			t.Logf("%T", o)
		}
	}
	if entries < 4 || picks < 3 || buttons < 1 {
		t.Errorf("reached are %d entries, %d choices and %d buttons", entries, picks, buttons)
	}
}

// Of two mounts asked for the one that was asked for first is dropped, whenever it comes.
func TestAStaleMountIsDropped(t *testing.T) {
	release := make(chan bool)
	var posts []func()
	came := 0
	b := newBefore(document.Rooms{
		Compute: func(ctx context.Context, r record.Record) (plan.Plan, error) {
			<-release
			return plan.Plan{Build: r.Object.Title}, nil
		},
		Post: func(f func()) { posts = append(posts, f); release <- true },
	}, func() { came++ })
	first, second := dress(), dress()
	first.Object.Title, second.Object.Title = "first", "second"
	b.ask(first)
	b.ask(second)
	b.ask(second)
	for range 2 {
		release <- true
		<-release
	}
	for _, f := range posts {
		f()
	}
	if came != 1 || b.plan.Build != "second" || !b.ready {
		t.Errorf("%d came, the last the %s", came, b.plan.Build)
	}
}

func TestTheFittingPlaceFitsASmallWindow(t *testing.T) {
	b, p := fittingBench(t)
	for _, l := range measure.Levels {
		b.see(p, control.Noted{What: record.FailsToMeet, Level: string(l), By: "2"})
	}
	b.compared(p)
	if size := b.win.Content().MinSize(); size.Width > 1280 || size.Height > 660 {
		t.Errorf("the window needs %v", size)
	}
}
