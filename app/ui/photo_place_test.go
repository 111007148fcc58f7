package ui

import (
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"

	"understructure/app/document"
	"understructure/app/ui/control"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
)

// pillarPhoto is a photograph of a dark pillar, a third as broad as high, on a light ground.
func pillarPhoto(t *testing.T) string {
	t.Helper()
	img := image.NewGray(image.Rect(0, 0, 300, 600))
	for y := range 600 {
		for x := range 300 {
			img.SetGray(x, y, color.Gray{Y: map[bool]uint8{true: 60, false: 220}[x >= 100 && x < 200]})
		}
	}
	path := filepath.Join(t.TempDir(), "pillar.png")
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, img); err != nil {
		t.Fatal(err)
	}
	return path
}

// photographed is a window with that photograph laid behind the demonstration, a pixel a millimetre.
func photographed(t *testing.T) (*bench, *photoPlace) {
	t.Helper()
	b := demoBench(t)
	b.dropped(fyne.Position{}, []fyne.URI{storage.NewFileURI(pillarPhoto(t))})
	p := b.places.all[b.places.chosen].(*photoPlace)
	for len(p.photographs()) == 0 {
		select {
		case f := <-b.posts:
			f()
		case <-time.After(time.Minute):
			t.Fatal("the photograph does not come")
		}
	}
	b.settle()
	f, _ := p.inHand()
	f = f.Clone()
	f.Low, f.High, f.Length = plane.Point{X: 150, Y: 590}, plane.Point{X: 150, Y: 10}, 580
	f.At = plane.Point{Y: b.figure.body.Low.Z - 10}
	if err := b.doc.ChangePhotograph(0, f); err != nil {
		t.Fatal(err)
	}
	b.doc.Settle()
	b.settle()
	return b, p
}

func TestADroppedPhotographLiesBehindTheFigure(t *testing.T) {
	b, p := photographed(t)
	f, ok := p.inHand()
	if !ok || f.View != "front" || len(f.SHA256) != 64 || p.notice.Text != "" {
		t.Errorf("in hand %v, %v; %q", f, ok, p.notice.Text)
	}
	b.places.goTo("Measure")
	if b.places.stage.Objects[0] != b.figure.box {
		t.Error("the figure does not come back")
	}
}

func TestAPhotographIsMovedAndTurnedByHand(t *testing.T) {
	b, p := photographed(t)
	before, _ := p.inHand()
	for range 5 { // one drag
		p.moved(control.GripWhole, plane.Point{X: 2, Y: 1})
	}
	b.doc.Settle()
	f, _ := p.inHand()
	if d := f.At.Sub(before.At); d != (plane.Point{X: 10, Y: 5}) {
		t.Errorf("moved by %v, want 10, 5", d)
	}
	p.moved(control.GripHigh, plane.Point{X: 0, Y: -58}) // the two points are nearer, so the picture grows
	b.doc.Settle()
	f, _ = p.inHand()
	if placed, ok := document.Placed(f); !ok || math.Abs(placed.Scale()-580.0/522) > 1e-6 {
		t.Errorf("a pixel is %v mm, want %v", placed.Scale(), 580.0/522)
	}
	b.doc.Undo()
	b.doc.Undo()
	if f, _ := p.inHand(); f.At != before.At {
		t.Error("two undos do not lead back to before the drag")
	}
}

func TestTheFigureIsFittedToTheSilhouette(t *testing.T) {
	b, p := photographed(t)
	f, _ := p.inHand()
	placed, _ := document.Placed(f)
	for _, pixel := range []plane.Point{{X: 100, Y: 595}, {X: 100, Y: 5}, {X: 200, Y: 5}, {X: 200, Y: 595}} {
		p.traced(placed.View(pixel))
	}
	b.settle()
	if !strings.Contains(p.proposals.Text, "waist: ") || p.apply.Disabled() {
		t.Fatalf("proposed: %q", p.proposals.Text)
	}
	for _, x := range p.proposed() {
		if math.Abs(x.then-100) > 0.5 {
			t.Errorf("%s would be %.1f mm broad, the pillar is 100", x.level, x.then)
		}
	}
	girth := b.doc.Record().Garment.Bodice[measure.WaistGirth]
	p.fit()
	b.settle()
	r := b.doc.Record()
	if a := r.Mount.Shape[measure.Waist]; a.Breadth == nil || r.Garment.Bodice[measure.WaistGirth] != girth {
		t.Error("the waist is not fitted, or its girth changed")
	}
	b.doc.Undo()
	if len(b.doc.Record().Mount.Shape) > 0 {
		t.Error("fitting was more than one step")
	}
	p.erased()
	if f, _ := p.inHand(); len(f.Trace) != 3 {
		t.Errorf("%d points after one was erased", len(f.Trace))
	}
}

func TestAChangedFileIsNoticed(t *testing.T) {
	b, p := photographed(t)
	f, _ := p.inHand()
	f = f.Clone()
	f.SHA256 = strings.Repeat("0", 64)
	if err := b.doc.ChangePhotograph(0, f); err != nil {
		t.Fatal(err)
	}
	p.show()
	if !strings.Contains(p.notice.Text, "changed") {
		t.Errorf("said: %q", p.notice.Text)
	}
}
