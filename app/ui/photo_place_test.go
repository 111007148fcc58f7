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
	"fyne.io/fyne/v2/test"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/trace"
)

// pillarPhoto is a photograph of a dark pillar, 100 pixels broad, on a light ground.
func pillarPhoto(t *testing.T, path string) string {
	t.Helper()
	img := image.NewGray(image.Rect(0, 0, 300, 600))
	for y := range 600 {
		for x := range 300 {
			img.SetGray(x, y, color.Gray{Y: map[bool]uint8{true: 60, false: 220}[x >= 100 && x < 200]})
		}
	}
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

// until runs what is posted until something holds.
func (b *bench) until(what string, holds func() bool) {
	b.t.Helper()
	for !holds() {
		select {
		case f := <-b.posts:
			f()
		case <-time.After(time.Minute):
			b.t.Fatalf("%s does not come", what)
		}
	}
}

// photographed is a window with that photograph laid behind the demonstration, two millimetres to the pixel.
func photographed(t *testing.T) (*bench, *photoPlace) {
	t.Helper()
	b := demoBench(t)
	b.dropped(fyne.Position{}, []fyne.URI{storage.NewFileURI(pillarPhoto(t, filepath.Join(t.TempDir(), "pillar.png")))})
	p := b.photographing()
	b.until("the photograph", func() bool { return len(p.photographs()) == 1 })
	p.step(func(f *record.Photograph) {
		f.Low, f.High, f.Length = plane.Point{X: 150, Y: 590}, plane.Point{X: 150, Y: 10}, 1160
		f.At = plane.Point{Y: b.figure.body.Low.Z - 100}
	})
	b.settle()
	return b, p
}

// tracePillar traces the pillar by hand, with the photograph as it lies.
func (p *photoPlace) tracePillar() {
	p.turnTrace()
	for _, pixel := range []plane.Point{{X: 100, Y: 599}, {X: 100, Y: 1}, {X: 200, Y: 1}, {X: 200, Y: 599}} {
		p.doc.Settle()
		p.traced(pixel)
		p.doc.Settle()
	}
	p.endTrace()
}

func TestADroppedPhotographLiesBehindTheFigure(t *testing.T) {
	b, p := photographed(t)
	f, ok := p.inHand()
	if !ok || f.View != "front" || len(f.SHA256) != 64 || p.notice.Visible() || p.busy.Visible() {
		t.Errorf("in hand %v, %v; %q", f, ok, p.notice.Text)
	}
	if !p.one.Visible() || p.advice.Visible() || p.fit.Visible() {
		t.Error("the column does not show what there is to do")
	}
	// The next photograph is of the next view, and a file that is none is refused by its name.
	folder := t.TempDir()
	second, wrong := pillarPhoto(t, filepath.Join(folder, "another.PNG")), filepath.Join(folder, "letter.jpg")
	if err := os.WriteFile(wrong, []byte("Dear all"), 0o600); err != nil {
		t.Fatal(err)
	}
	b.dropped(fyne.Position{}, []fyne.URI{storage.NewFileURI(second), storage.NewFileURI(wrong)})
	b.untilOverlay(func(o fyne.CanvasObject) bool { return says(o, "letter.jpg: this is no photograph") })
	b.until("the second", func() bool { return len(p.adding) == 0 })
	if all := p.photographs(); len(all) != 2 || all[1].View != "side" || p.at != 1 {
		t.Errorf("%d photographs, number %d in hand", len(all), p.at)
	}
	if lines := p.list.Lines(); len(lines) != 2 || !strings.Contains(lines[1], "another.PNG · side") {
		t.Errorf("listed: %q", lines)
	}
	p.remove(1)
	p.remove(0)
	if p.show(); p.one.Visible() || !p.advice.Visible() {
		t.Error("without a photograph nothing is said")
	}
	b.doc.Undo()
	if p.show(); !p.one.Visible() {
		t.Error("what was removed does not come back")
	}
}

func TestAPhotographIsMovedAndScaledByHand(t *testing.T) {
	b, p := photographed(t)
	before, _ := p.inHand()
	p.shift(plane.Point{X: 12.5, Y: -3})
	b.doc.Settle()
	f, _ := p.inHand()
	if d := f.At.Sub(before.At); d.Dist(plane.Point{X: 12.5, Y: -3}) > 1e-3 {
		t.Errorf("moved by %v", d)
	}
	// The low point stays where it was dropped in the view; the photograph turns and grows about it.
	placed, _ := document.Placed(f)
	to := plane.Point{X: 180, Y: 500}
	p.put(control.GripLow, to)
	b.doc.Settle()
	now, _ := p.inHand()
	if at := placed.View(to); now.Low != to || now.At.Dist(at) > 0.1 || now.High != f.High {
		t.Errorf("the low point is %v at %v, want %v at %v", now.Low, now.At, to, at)
	}
	p.put(control.GripHigh, to) // which would leave nothing to scale by
	if f, _ := p.inHand(); f.High != now.High {
		t.Error("the two points coincide")
	}
	b.doc.Undo()
	b.doc.Undo()
	if f, _ := p.inHand(); f.At != before.At || f.Low != before.Low {
		t.Error("two undos do not lead back")
	}
}

func TestScaleAndHeightAreTyped(t *testing.T) {
	b, p := photographed(t)
	for row, text := range map[*lengthRow]string{p.length: "100", p.height: "12 1/2"} {
		e := row.row.Entry()
		e.SetText("")
		test.Type(e, text)
	}
	b.doc.Settle()
	f, _ := p.inHand()
	if f.Length != 1000 || math.Abs(f.At.Y-125) > 1e-9 {
		t.Errorf("apart %v mm, at %v", f.Length, f.At)
	}
	for _, text := range []string{"0", "-3", "twelve"} {
		if err := p.length.row.OnChanged(text); err == nil {
			t.Errorf("%q is taken for a distance", text)
		}
	}
	p.fade.OnChanged(0.8)
	p.fade.OnChangeEnded(0.8)
	p.seen.choose("back")
	if f, _ = p.inHand(); f.Fade != 0.8 || f.View != "back" || f.Length != 1000 {
		t.Errorf("%+v", f)
	}
	for _, want := range []string{"front", "front"} { // the view, then the fade
		b.doc.Undo()
		if f, _ = p.inHand(); f.View != want {
			t.Errorf("seen from the %s", f.View)
		}
	}
	if f.Fade == 0.8 {
		t.Error("the fade is not undone")
	}
}

// The pillar is 100 pixels of 2 mm broad; turned and scaled otherwise it is as broad as that comes to.
func TestTheFigureIsFittedToTheSilhouette(t *testing.T) {
	b, p := photographed(t)
	was := b.doc.Record()
	p.tracePillar()
	b.settle()
	f, _ := p.inHand()
	all, err := p.proposals(f)
	if err != nil || len(all) != len(measure.Levels) {
		t.Fatalf("%d levels are proposed, %v", len(all), err)
	}
	for _, x := range all {
		if x.What != trace.Breadth || math.Abs(x.Traced-200) > 0.5 {
			t.Errorf("%s: %+v, want 200 mm", x.Level, x)
		}
	}
	if row, ok := p.changes.Shown("waist"); !ok || !row.Ticked || row.Change == "" || !p.fit.Visible() {
		t.Errorf("the waist is shown as %+v", row)
	}
	if row, _ := p.changes.Shown("shoulder"); row.Ticked || row.Fixed || !strings.Contains(row.Note, "Sleeves") {
		t.Errorf("the shoulder is shown as %+v", row)
	}
	p.changes.Tick("bust", false)
	p.take()
	b.settle()
	r := b.doc.Record()
	if a := r.Mount.Shape[measure.Waist]; a.Breadth == nil || a.Girth != nil || a.Depth != nil {
		t.Errorf("the waist is set to %+v", a)
	}
	if _, set := r.Mount.Shape[measure.Bust]; set {
		t.Error("the bust was fitted although it was not ticked")
	}
	before, _ := b.options.Figure(was)
	after, err := b.options.Figure(r)
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range measure.Levels {
		if d := after.At(l).Girth - before.At(l).Girth; before.At(l).Taken && math.Abs(d) > 0.1 {
			t.Errorf("the %s girth changed by %.2f mm", l, d)
		}
	}
	b.doc.Undo()
	if len(b.doc.Record().Mount.Shape) > 0 {
		t.Error("fitting was more than one step")
	}
}

// Every point of a trace can be taken back one by one.
func TestEachPointIsAStep(t *testing.T) {
	b, p := photographed(t)
	p.tracePillar()
	p.erased(1)
	b.doc.Settle()
	for _, want := range []int{4, 3, 2, 1, 0} {
		b.doc.Undo()
		if f, _ := p.inHand(); len(f.Trace) != want {
			t.Errorf("%d points, want %d", len(f.Trace), want)
		}
	}
	b.doc.Redo()
	p.clearTrace()
	if f, _ := p.inHand(); len(f.Trace) != 0 {
		t.Error("the trace is not cleared")
	}
}

// What callipers took stays as it is and the difference is told; a side view tells depths; cloth is taken off.
func TestWhatWasTakenIsNotFitted(t *testing.T) {
	b, p := photographed(t)
	r := b.doc.Record()
	r.Garment.Bodice = measure.Sheet{measure.WaistDepth: 165}
	for k, v := range b.doc.Record().Garment.Bodice {
		r.Garment.Bodice[k] = v
	}
	b.doc.Change("depth", r)
	p.seen.choose("side")
	p.tracePillar()
	b.settle()
	if err := p.setOutside(10); err != nil {
		t.Fatal(err)
	}
	row, _ := p.changes.Shown("waist")
	if !row.Fixed || row.Ticked || !strings.Contains(row.Note, "The silhouette has 18.0, +1.5.") {
		t.Errorf("the waist is shown as %+v", row)
	}
	p.take()
	shape := b.doc.Record().Mount.Shape
	if _, set := shape[measure.Waist]; set || shape[measure.Bust].Depth == nil || shape[measure.Bust].Breadth != nil {
		t.Errorf("the shape is %+v", shape)
	}
	for _, mm := range []float64{-1, mostOutside + 1} {
		if p.setOutside(mm) == nil {
			t.Errorf("%v mm of cloth are possible", mm)
		}
	}
}

// However the photograph lies, a trace over the figure's own outline proposes nothing.
func TestATraceOfTheFigureFitsIt(t *testing.T) {
	b, p := photographed(t)
	figure, err := b.options.Figure(b.doc.Record())
	if err != nil {
		t.Fatal(err)
	}
	pl, _ := b.doc.Plan()
	p.step(func(f *record.Photograph) {
		f.Low, f.High, f.Length, f.At = plane.Point{X: 900, Y: 3100}, plane.Point{X: 1040, Y: 300}, 777, plane.Point{X: 40, Y: 700}
		placed, _ := document.Placed(*f)
		skin := figure.Skin.Lift(0, pl.StandHeight)
		for side := range 2 {
			for i := range skin.Z {
				row := i
				if side == 1 {
					row = len(skin.Z) - 1 - i
				}
				lo, hi := skin.R[row].Ring().Bounds()
				x := []float64{-hi.X, -lo.X}[side]
				f.Trace = append(f.Trace, tenth(placed.Pixel(plane.Point{X: x, Y: skin.Z[row]})))
			}
		}
	})
	f, _ := p.inHand()
	all, err := p.proposals(f)
	if err != nil || len(all) < 5 {
		t.Fatalf("%d levels, %v", len(all), err)
	}
	for _, x := range all {
		switch x.Level {
		case measure.Bust, measure.Underbust, measure.Waist, measure.HighHip:
			if math.Abs(x.Traced-x.From) > 0.5 {
				t.Errorf("%s: traced %.2f mm of %.2f", x.Level, x.Traced, x.From)
			}
		}
	}
}

func TestAChangedFileIsNoticed(t *testing.T) {
	b, p := photographed(t)
	p.step(func(f *record.Photograph) { f.SHA256 = strings.Repeat("0", 64) })
	p.show()
	if !strings.Contains(p.notice.Text, "not the one that was traced") || !p.find.Visible() || !p.keep.Visible() {
		t.Errorf("said: %q", p.notice.Text)
	}
	if p.trust(); p.notice.Visible() || p.keep.Visible() {
		t.Errorf("still said: %q", p.notice.Text)
	}
	p.step(func(f *record.Photograph) { f.File = filepath.Join(t.TempDir(), "gone.png") })
	b.until("the missing file", func() bool { f, _ := p.inHand(); _, read := p.developed(f); return read })
	if p.show(); !strings.Contains(p.notice.Text, "gone.png") || !p.find.Visible() || p.keep.Visible() {
		t.Errorf("said: %q", p.notice.Text)
	}
}

// A photograph below the record's folder goes with it; one elsewhere keeps its place.
func TestPathsFollowTheRecord(t *testing.T) {
	dir := t.TempDir()
	for _, sub := range []string{"dress", "dress/photos", "dress/moved"} {
		if err := os.Mkdir(filepath.Join(dir, sub), 0o700); err != nil {
			t.Fatal(err)
		}
	}
	inside, outside := pillarPhoto(t, filepath.Join(dir, "dress/photos/front.png")), pillarPhoto(t, filepath.Join(dir, "side.png"))
	b := demoBench(t)
	p := b.photographing()
	p.addFile(inside)
	p.addFile(outside)
	b.until("the photographs", func() bool { return len(p.photographs()) == 2 })
	save := &saving{w: b.Window, then: func() {}}
	for _, c := range []struct {
		to    string
		files [2]string
	}{
		{"dress/record.json", [2]string{"photos/front.png", outside}},
		{"dress/moved/record.json", [2]string{inside, outside}},
		{"record.json", [2]string{"dress/photos/front.png", "side.png"}},
	} {
		save.save(filepath.Join(dir, c.to))
		for i, f := range p.photographs() {
			if f.File != c.files[i] {
				t.Errorf("from %s the file is %q, want %q", c.to, f.File, c.files[i])
			}
			if _, err := os.Stat(p.path(f)); err != nil {
				t.Error(err)
			}
		}
		if b.doc.Dirty() || p.at != 1 {
			t.Errorf("%s: not saved as it is, %v, or photograph %d in hand", c.to, b.doc.Dirty(), p.at)
		}
	}
	save.save(filepath.Join(dir, "none", "record.json")) // cannot be
	if f := p.photographs()[0].File; f != "dress/photos/front.png" {
		t.Errorf("after a refused save the file is %q", f)
	}
}

// A file that is still being read when another record is opened is not added to that.
func TestWhatComesTooLateIsDropped(t *testing.T) {
	b, p := photographed(t)
	file := pillarPhoto(t, filepath.Join(t.TempDir(), "late.png"))
	p.addFile(file)
	b.start(Demo{"another", dress()})
	b.until("the file", func() bool { _, read := p.read(file); return read })
	b.settle()
	if n := len(p.photographs()); n > 0 || p.one.Visible() {
		t.Errorf("the other record has %d photographs", n)
	}
}

// A photograph without scale is shown all the same, and the first touch gives it one.
func TestAPhotographWithoutScaleCanBeLaid(t *testing.T) {
	b := demoBench(t)
	file := pillarPhoto(t, filepath.Join(t.TempDir(), "front.png"))
	if err := b.doc.AddPhotograph(record.Photograph{View: "front", File: file}); err != nil {
		t.Fatal(err)
	}
	p := b.photographing()
	b.until("the photograph", func() bool { return !p.busy.Visible() })
	f, _ := p.inHand()
	if _, ok := document.Placed(f); !ok || p.doc.Record().Photographs[0].Length != 0 {
		t.Fatalf("in hand %+v", f)
	}
	p.shift(plane.Point{X: 3})
	if _, ok := document.Placed(p.doc.Record().Photographs[0]); !ok {
		t.Error("moved, it still has no scale")
	}
}

func TestThePhotographPlaceFitsASmallScreen(t *testing.T) {
	b, p := photographed(t)
	p.tracePillar()
	if size := b.win.Content().MinSize(); size.Width > 1280 || size.Height > 660 {
		t.Errorf("the window needs %v, want at most 1280 × 660", size)
	}
}
