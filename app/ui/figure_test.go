package ui

import (
	"context"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"understructure/app/document"
	"understructure/app/pipeline"
	"understructure/app/record"
	"understructure/app/ui/control"
	"understructure/app/ui/picture"
	"understructure/assets"
	"understructure/patterns/plan"
)

// demoBench is a window with the first demonstration, computed as in earnest.
func demoBench(t testing.TB) *bench {
	t.Helper()
	f, err := assets.Demos.Open(assets.First)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r, err := record.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	b := &bench{t: t, posts: make(chan func(), 1000), exited: make(chan error, 1)}
	b.Window = New(test.NewTempApp(t), Options{
		Rooms: document.Rooms{
			Compute: func(ctx context.Context, r record.Record) (plan.Plan, error) { return pipeline.Run(ctx, r, nil) },
			Load:    record.Load, Save: record.Save, Post: func(f func()) { b.posts <- f },
		},
		Demos: []Demo{{"Demonstration", r}}, Figure: pipeline.Figure,
	})
	t.Cleanup(b.doc.Close)
	b.settle()
	return b
}

// choose picks a word of a switch as a person does.
func choose(s *control.Switch, word string) {
	s.Choose(word)
	s.OnChosen(word)
}

func TestTheMountIsSeenFromEverySide(t *testing.T) {
	b := demoBench(t)
	f := b.figure
	for _, word := range []string{"Front", "Three-quarter", "Left", "Back"} {
		choose(f.views, word)
		if yaws := f.elevation.Yaws(); len(yaws) != 1 || yaws[0] != standpoints()[word] || f.views.Chosen() != word {
			t.Errorf("%s: seen from %v, marked %q", word, yaws, f.views.Chosen())
		}
	}
	choose(f.views, "Front and side")
	if len(f.elevation.Yaws()) != 2 {
		t.Error("front and side are not beside each other")
	}
}

func TestTurningStops(t *testing.T) {
	b := demoBench(t)
	f := b.figure
	start := func() {
		t.Helper()
		choose(f.views, "Turning")
		if !f.elevation.Going() || f.views.Chosen() != "Turning" {
			t.Fatal("it does not turn")
		}
	}
	for how, stop := range map[string]func(){
		"another view":    func() { choose(f.views, "Back") },
		"the space bar":   func() { f.elevation.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace}) },
		"a hidden figure": func() { choose(f.shows, "Map") },
		"the background":  f.elevation.Halt,
		"a hand":          func() { test.Drag(b.win.Canvas(), fyne.NewPos(520, 300), 40, 0) },
		"an arrow":        func() { f.elevation.TypedKey(&fyne.KeyEvent{Name: fyne.KeyLeft}) },
	} {
		start()
		if stop(); f.elevation.Going() || f.views.Chosen() == "Turning" {
			t.Errorf("%s does not stop it", how)
		}
		choose(f.shows, "Mount")
	}
}

func TestTheClearanceHasALegend(t *testing.T) {
	b := demoBench(t)
	f := b.figure
	for word, legend := range map[string]bool{"Mount": false, "Clearance": true, "Map": true} {
		choose(f.shows, word)
		if f.legend.Visible() != legend || f.unrolled.Visible() != (word == "Map") || f.elevation.Visible() == (word == "Map") {
			t.Errorf("%s: legend %v, map %v, figure %v", word, f.legend.Visible(), f.unrolled.Visible(), f.elevation.Visible())
		}
	}
	choose(f.shows, "Map")
	choose(f.views, "Back")
	if f.shows.Chosen() != "Clearance" || !f.elevation.Visible() {
		t.Errorf("a view chosen at the map shows %q", f.shows.Chosen())
	}
}

func TestTheSliderGoesFromTheBareFormToTheFinishedMount(t *testing.T) {
	b := demoBench(t)
	f := b.figure
	if f.layer.Text != "finished mount" || f.stage != f.body {
		t.Errorf("at first the slider is at %q", f.layer.Text)
	}
	under := f.plan.Levels[0].Height - 100
	last := 0.0
	for i := range f.plan.Stages {
		f.layers.SetValue(float64(i))
		tape := f.stage.Ring(picture.Built, under).Tape()
		if tape < last {
			t.Errorf("%s: the tape shrinks from %.0f to %.0f mm", f.layer.Text, last, tape)
		}
		last = tape
	}
	f.layers.SetValue(0)
	if bare := f.stage.Ring(picture.Built, under).Tape(); f.layer.Text != "bare form" || bare >= last {
		t.Errorf("at its left end is %q with %.0f mm, the finished mount has %.0f", f.layer.Text, bare, last)
	}
	f.layers.SetValue(1)
	if !strings.HasPrefix(f.layer.Text, "layer 1 of ") {
		t.Errorf("the first layer is called %q", f.layer.Text)
	}
	f.layers.SetValue(0)
	b.retype(waist, "62.5")
	if f.layers.Value != 0 || f.layer.Text != "bare form" {
		t.Error("a new plan moved the slider")
	}
}

func TestOneGoesToTheWorstPlaces(t *testing.T) {
	b := demoBench(t)
	f := b.figure
	rows := f.worst.Rows()
	if len(rows) == 0 {
		t.Fatal("no places, though the demonstration has some")
	}
	for _, row := range rows {
		test.Tap(row)
		w := row.Where()
		if f.spot == nil || *f.spot != w.Spot || f.section.Height() != w.Spot.Height {
			t.Fatalf("%s: the section of the place is not shown", w.Place)
		}
		if !f.elevation.Sees(w.Spot) {
			t.Errorf("%s is on a side that is not seen", w.Place)
		}
		if point, _, _ := f.body.ClearanceAt(w.Spot.Height, w.Spot.Turn); !strings.HasSuffix(w.Amount, whole(&point)) {
			t.Errorf("%s: the list says %q, the clearance is %s", w.Place, w.Amount, whole(&point))
		}
	}
	f.elevation.TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	if f.spot != nil {
		t.Error("the ring stays when one picks another level")
	}
}
