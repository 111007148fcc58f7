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
	"understructure/app/ui/picture"
	"understructure/assets"
	"understructure/patterns/plan"
)

// demoBench is a window with the first demonstration, computed as in earnest.
func demoBench(t *testing.T) *bench {
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

func TestTheMountIsSeenFromEverySide(t *testing.T) {
	b := demoBench(t)
	f := b.figure
	for _, word := range []string{"Front", "Three-quarter", "Left", "Back"} {
		f.views.Choose(word)
		f.views.OnChosen(word)
		if !f.table.Visible() || f.elevation.Visible() || f.table.Yaw() != standpoints()[word] {
			t.Errorf("%s is not shown", word)
		}
	}
	f.turn()
	if !f.table.Going() {
		t.Error("it does not turn")
	}
	f.views.OnChosen("Unrolled")
	if f.table.Going() || !f.unrolled.Visible() || !f.legend.Visible() {
		t.Error("the map is not shown, or without its legend, or the figure turns on behind it")
	}
	f.views.OnChosen("Front and side")
	if f.legend.Visible() {
		t.Error("a legend without clearance")
	}
	f.colours.Choose("Clearance")
	f.colours.OnChosen("Clearance")
	if !f.legend.Visible() {
		t.Error("clearance without a legend")
	}
}

func TestTheSliderGoesFromTheBareFormToTheFinishedMount(t *testing.T) {
	b := demoBench(t)
	f := b.figure
	if f.layer.Text != "cover" || f.stage != f.body {
		t.Errorf("at first the slider is at %q", f.layer.Text)
	}
	finished := f.stage.Ring(picture.Built, f.plan.Levels[0].Height-100).Tape()
	f.layers.SetValue(0)
	if bare := f.stage.Ring(picture.Built, f.plan.Levels[0].Height-100).Tape(); f.layer.Text != "form" || bare >= finished {
		t.Errorf("at its left end is %q with %.0f mm, the finished mount has %.0f", f.layer.Text, bare, finished)
	}
	b.retype(waist, "62.5")
	if f.layers.Value != 0 || f.layer.Text != "form" {
		t.Error("a new plan moved the slider")
	}
}

func TestOneGoesToTheWorstPlaces(t *testing.T) {
	b := demoBench(t)
	f := b.figure
	rows := f.worst.Rows()
	if len(rows) == 0 || !strings.Contains(rows[0].Text, " mm") {
		t.Fatal("no places, though the demonstration has some")
	}
	test.Tap(rows[0])
	if f.spot == nil || f.section.Height() != f.spot.Height {
		t.Error("the section of the place is not shown")
	}
	f.elevation.TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	if f.spot != nil {
		t.Error("the ring stays when one picks another level")
	}
}
