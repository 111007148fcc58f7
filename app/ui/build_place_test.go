package ui

import (
	"fmt"
	"image"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"understructure/app/record"
	"understructure/geometry/measure"
	"understructure/patterns/plantest"
)

// onPieces goes to the pieces of the place where the build is chosen.
func (b *printBench) onPieces() *pieces {
	build := b.building()
	build.look.OnChosen(build.look.Chosen())
	build.look.Choose("Pieces")
	build.turn()
	return build.pieces
}

func TestTheStageOfTheBuildIsTheFigureOrThePieces(t *testing.T) {
	b := newPrintBench(t)
	build := b.building()
	if build.seen.Objects[0] != b.figure.box || build.pieces.head.Visible() {
		t.Error("at first it is not the figure")
	}
	p := b.onPieces()
	if build.seen.Objects[0] != fyne.CanvasObject(p.box) || !p.head.Visible() {
		t.Error("the pieces are not on the stage")
	}
	b.measuring()
	if b.places.stage.Objects[0] != b.figure.box {
		t.Error("the figure is gone where one measures")
	}
	b.building()
	build.look.Choose("Figure")
	build.turn()
	if build.seen.Objects[0] != b.figure.box {
		t.Error("the figure does not come back")
	}
}

func TestEveryPieceHasACard(t *testing.T) {
	b := newPrintBench(t)
	p := b.onPieces()
	cards := p.grid.Pieces()
	if len(cards) != len(plantest.Pieces()) {
		t.Fatalf("%d cards, want %d", len(cards), len(plantest.Pieces()))
	}
	// The panel is 90 cm wide; its upper edge is a wave from 520 to 600 mm.
	if got := cards[0]; got.Name != "W01-front" || got.Lines != [3]string{"layer 1 of 3, front", "layer 1 · cut 2 · wadding 6 mm", "90.0 × 60.0 cm · strain 2.1 %"} {
		t.Errorf("the card of the panel says %q", got)
	}
	b.until("pictures", func() bool { return len(p.easel.done) == len(cards) && !p.easel.working() })
}

func TestPiecesAreChosenByMaterialAndLayer(t *testing.T) {
	b := newPrintBench(t)
	p := b.onPieces()
	for _, c := range []struct{ material, layer, want string }{
		{"plank 50 mm", "", "S04"},
		{"wadding 6 mm", "", "W01-front W02-1 W02-2 W02-3 W02-4 W03-tip"},
		{"wadding 6 mm", "layer 2", "W02-1 W02-2 W02-3 W02-4"},
		{"all materials", "layer 3", "W03-tip"},
		{"all materials", "all layers", "W01-front W02-1 W02-2 W02-3 W02-4 S04 W03-tip"},
	} {
		p.material.SetSelected(c.material)
		if c.layer != "" {
			p.layer.SetSelected(c.layer)
		}
		var got []string
		for _, card := range p.grid.Pieces() {
			got = append(got, card.Name)
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s, %s: %v, want %s", c.material, c.layer, got, c.want)
		}
		if all := fmt.Sprintf("%d of 7 pieces", len(got)); p.count.Text != all {
			t.Errorf("it says %q, want %q", p.count.Text, all)
		}
	}
	if p.material.SetSelected("plank 50 mm"); slices.Contains(p.layer.Options, "layer 1") {
		t.Errorf("planks are offered the layers %v", p.layer.Options)
	}
}

func TestAPieceIsShownLarge(t *testing.T) {
	b := newPrintBench(t)
	p := b.onPieces()
	p.grid.Pick(0)
	if p.box.Objects[0] != p.one.box || p.one.title.Text != "W01-front – layer 1 of 3, front" {
		t.Errorf("picked the panel, shown %q", p.one.title.Text)
	}
	for _, want := range []string{"material wadding 6 mm", "cut 2", "broad 90.0 cm", "high 60.0 cm", "strain 2.1 % at most when laid flat", "marks levels, centre front, side, up, edges to thin, pins, darts"} {
		if !slices.Contains(p.one.said, want) {
			t.Errorf("%q is not among %q", want, p.one.said)
		}
	}
	b.until("its picture", func() bool { b.win.Canvas().Capture(); return len(p.one.easel.done) == 1 })
	p.one.view.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	p.one.view.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	p.one.view.TypedKey(&fyne.KeyEvent{Name: fyne.KeyLeft})
	if p.one.piece.ID != "W02-1" {
		t.Errorf("two on and one back is %s", p.one.piece.ID)
	}
	r := b.doc.Record()
	r.Unit = "in"
	b.doc.Change("unit", r)
	b.settle()
	if p.one.piece.ID != "W02-1" || p.box.Objects[0] != p.one.box {
		t.Errorf("another plan leaves the piece for %s", p.one.piece.ID)
	}
	p.one.view.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if p.box.Objects[0] != fyne.CanvasObject(p.grid) {
		t.Error("Escape does not lead back to all pieces")
	}
}

func TestEaseIsGivenInThreeWays(t *testing.T) {
	b := newPrintBench(t)
	build := b.building()
	has := func(path string) bool { return build.values.list.Entry(path) != nil }
	if build.ease.mode != byStrength || has("mount.ease") || has("mount.ease.waist") {
		t.Errorf("at first: %s", build.ease.mode)
	}
	build.ease.pick.choose(oneEase)
	if !has("mount.ease") || has("mount.ease.waist") || b.doc.Dirty() {
		t.Errorf("one ease: dirty %v", b.doc.Dirty())
	}
	b.retype("mount.ease", "1.2")
	b.retype("mount.ease", "") // being typed anew
	if !has("mount.ease") {
		t.Error("the entry goes away while one types")
	}
	b.retype("mount.ease", "1.4")
	build.ease.pick.choose(byLevel)
	if has("mount.ease") || build.values.list.Entry("mount.ease.waist").Text != "1.4" {
		t.Error("by level does not begin with the one ease")
	}
	b.retype("mount.ease.waist", "2")
	e := b.doc.Record().Mount.Ease
	if e.All != nil || e.ByLevel[measure.Waist] != 20 || e.ByLevel[measure.Bust] != 14 {
		t.Errorf("the ease is %v %v", e.All, e.ByLevel)
	}
	build.ease.pick.choose(oneEase)
	if e := b.doc.Record().Mount.Ease; e.All != nil || len(e.ByLevel) > 0 || !has("mount.ease") {
		t.Errorf("one ease again: %v", e)
	}
	b.doc.Undo()
	if b.doc.Record().Mount.Ease.ByLevel[measure.Waist] != 20 || build.ease.mode != byLevel || !has("mount.ease.waist") {
		t.Errorf("undo leaves the ease %s", build.ease.mode)
	}
	build.ease.pick.choose(byStrength)
	if has("mount.ease.waist") || !b.doc.Dirty() {
		t.Error("by strength keeps the levels")
	}
	b.start(Demo{"Fresh", record.Record{Unit: "cm", Mount: record.Mount{Build: "slices", Ease: record.Ease{ByLevel: map[measure.Level]float64{measure.Hip: 8}}}}})
	if build.ease.mode != byLevel {
		t.Errorf("another record is shown %s", build.ease.mode)
	}
}

func TestPiecesFitASmallScreenInBothAppearances(t *testing.T) {
	b := newPrintBench(t)
	p := b.onPieces()
	for range 2 {
		if size := b.win.Content().MinSize(); size.Width > 1280 || size.Height > 660 {
			t.Errorf("the window needs %v, want at most 1280 × 660 beside menu and frame", size)
		}
		for _, label := range []string{"Dark", "Light"} {
			b.menuItem(label).Action()
			b.win.Canvas().Capture()
		}
		p.grid.Pick(5)
	}
}

// An easel draws what was asked for last first, each once, keeps the newest and drops what is forgotten.
func TestEasel(t *testing.T) {
	posts := make(chan func(), 100)
	e := newEasel(func(f func()) { posts <- f }, 3)
	begun, gate := make(chan string, 100), make(chan struct{})
	ask := func(name string) image.Image {
		return e.picture(name, func() image.Image {
			begun <- name
			<-gate
			return image.NewGray(image.Rect(0, 0, 1, 1))
		}, func() {})
	}
	take := func(n int) {
		for range n {
			select {
			case f := <-posts:
				f()
			case <-time.After(10 * time.Second):
				t.Fatal("no picture comes")
			}
		}
	}
	ask("a")
	if got := <-begun; got != "a" {
		t.Fatalf("begun with %s", got)
	}
	for _, name := range []string{"b", "c", "d", "a", "b"} {
		if ask(name) != nil {
			t.Errorf("%s is there before it is drawn", name)
		}
	}
	for range 4 {
		gate <- struct{}{}
	}
	take(4)
	if got := <-begun + <-begun + <-begun; got != "bdc" {
		t.Errorf("drawn in the order %s, want bdc", got)
	}
	if len(begun) != 0 || len(e.done) != 3 || e.done["a"] != nil || ask("d") == nil {
		t.Errorf("%d drawn twice, kept %d", len(begun), len(e.done))
	}
	ask("x")
	<-begun
	ask("y")
	e.forget()
	gate <- struct{}{}
	take(1)
	if len(e.done) != 0 || len(begun) != 0 {
		t.Errorf("forgotten, yet there are %d pictures and %d more begun", len(e.done), len(begun))
	}
	for e.working() {
		time.Sleep(time.Millisecond)
	}
}
