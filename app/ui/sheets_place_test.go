package ui

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"understructure/app/document"
	"understructure/app/folder"
	"understructure/app/record"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/plan"
	"understructure/patterns/plantest"
	"understructure/patterns/preview"
	"understructure/patterns/sheet"
)

// printBench is a window whose mount has pieces.
type printBench struct {
	*bench
	scratch string
	gate    chan struct{} // a plan takes one from it; closed it holds up none
}

func newPrintBench(t *testing.T) *printBench {
	t.Helper()
	b := &printBench{bench: &bench{t: t, posts: make(chan func(), 10000), exited: make(chan error, 1)}, scratch: t.TempDir(), gate: make(chan struct{})}
	close(b.gate)
	b.Window = New(test.NewTempApp(t), Options{
		Rooms: document.Rooms{
			Compute: func(ctx context.Context, r record.Record) (plan.Plan, error) { <-b.gate; return pieced(ctx, r) },
			Load:    record.Load, Save: record.Save, Scratch: b.scratch, Post: func(f func()) { b.posts <- f },
		},
		Demos: []Demo{{"Demonstration", dress()}, {"Another", other()}},
		Export: func(ctx context.Context, r record.Record, to string, progress Progress) error {
			p, err := pieced(ctx, r)
			if err == nil {
				err = folder.Write(ctx, to, p, func(f float64) { progress("writing", f) })
			}
			b.exited <- err
			return err
		},
	})
	t.Cleanup(b.doc.Close)
	b.win.Resize(fyne.NewSize(1280, 700))
	b.settle()
	return b
}

// pieced is the round mount with pieces of our own invention.
func pieced(ctx context.Context, r record.Record) (plan.Plan, error) {
	p, err := round(ctx, r)
	p.Pieces, p.Object, p.Taken = plantest.Pieces(), plantest.Plan().Object, plantest.Plan().Taken
	stock, _ := r.Mount.Stocked(r.Garment.Strength)
	p.Paper = stock.Paper
	return p, err
}

// until runs what is posted until something holds.
func (b *printBench) until(what string, holds func() bool) {
	b.t.Helper()
	deadline := time.After(20 * time.Second)
	for !holds() {
		select {
		case f := <-b.posts:
			f()
		case <-deadline:
			b.t.Fatalf("it does not come to this: %s", what)
		}
	}
}

// sheets goes to the sheets and waits for their pages.
func (b *printBench) sheets() *sheetsPlace {
	b.t.Helper()
	b.places.goTo("Sheets")
	s := b.places.all[b.places.chosen].(*sheetsPlace)
	b.until("pages", s.current)
	return s
}

// pages lays a record's pages without the window.
func pages(t *testing.T, r record.Record) []sheet.Page {
	t.Helper()
	p, err := pieced(context.Background(), r)
	if err != nil {
		t.Fatal(err)
	}
	all, err := sheet.Lay(context.Background(), p, sheet.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

func TestThePagesShownAreThePagesOfThePDF(t *testing.T) {
	b := newPrintBench(t)
	for _, paper := range []string{"A4", "A2", "roll-610"} {
		s := b.sheets()
		s.column.paper.pick.choose(paper)
		b.until("pages of "+paper, s.current)
		want := pages(t, b.doc.Record())
		var pdf bytes.Buffer
		p, _ := pieced(context.Background(), b.doc.Record())
		if err := folder.Templates(context.Background(), &pdf, p, s.laid.pages); err != nil {
			t.Fatal(err)
		}
		if n := bytes.Count(pdf.Bytes(), []byte("/Type /Page\n")); n != len(want) || s.desk.strip.Pages() != n {
			t.Errorf("%s: %d pages in the strip, %d in the PDF, %d laid", paper, s.desk.strip.Pages(), n, len(want))
		}
		for i := range want {
			s.turnTo(i)
			if got := s.desk.title.Text; got != fmt.Sprintf("Page %d of %d", i+1, len(want)) {
				t.Errorf("%s: page %d is called %q", paper, i+1, got)
			}
			if got := s.desk.view.Sheet(); got.Width != want[i].Width || got.Height != want[i].Height {
				t.Errorf("%s: page %d is shown as %g × %g mm, want %g × %g", paper, i+1, got.Width, got.Height, want[i].Width, want[i].Height)
			}
		}
	}
}

func TestTilesAreNamedInTheStrip(t *testing.T) {
	s := newPrintBench(t).sheets()
	for i, pg := range s.laid.pages {
		name := pageName(i, pg)
		if tiled := len(pg.Items) == 1 && pg.Items[0].Tile != nil; tiled != strings.Contains(name, " · ") || !strings.HasPrefix(name, fmt.Sprint(i+1)) {
			t.Errorf("page %d, a tile: %v, is called %q", i+1, tiled, name)
		}
	}
	lone := sheet.Page{Items: []sheet.Item{{Tile: &sheet.Tile{Row: 1, Column: 2}}}}
	if got := pageName(3, lone); got != "4 · B3" {
		t.Errorf("a lone tile on page 4 is called %q", got)
	}
}

// Another paper does not wait for a new plan: the pieces are the same.
func TestAnotherPaperNeedsNoOtherPlan(t *testing.T) {
	b := newPrintBench(t)
	s := b.sheets()
	b.gate = make(chan struct{})
	t.Cleanup(func() { close(b.gate) })
	for _, paper := range []string{"A3", "A1", "A2"} { // the first two are stale before they come
		s.column.paper.pick.choose(paper)
	}
	b.until("pages of A2", s.current)
	if !b.doc.Busy() {
		t.Error("the plan came although it is held up")
	}
	for _, pg := range s.laid.pages {
		if pg.Width != 420 {
			t.Errorf("a page %g mm wide, want A2", pg.Width)
		}
	}
	if got := s.column.state.Text; !strings.HasPrefix(got, fmt.Sprintf("%d pages of A2.", len(s.laid.pages))) {
		t.Errorf("the column says %q", got)
	}
}

// Pages of a record that has changed otherwise are not taken for its own.
func TestPagesWaitForThePlan(t *testing.T) {
	b := newPrintBench(t)
	s := b.sheets()
	b.gate = make(chan struct{})
	r := b.doc.Record()
	r.Garment.Strength = "weak"
	b.doc.Change("strength of the cloth", r)
	if s.current() || s.column.state.Text != "Computing …" {
		t.Errorf("while it is computed: current %v, %q", s.current(), s.column.state.Text)
	}
	close(b.gate)
	b.until("pages", s.current)
	b.start(b.options.Demos[1])
	if len(s.laid.pages) != 0 {
		t.Error("another record shows the pages of the one before")
	}
	b.until("pages of another record", s.current)
}

func TestLayingCanBeStoppedAndTakenUp(t *testing.T) {
	b := newPrintBench(t)
	b.places.goTo("Sheets")
	s := b.places.all[b.places.chosen].(*sheetsPlace)
	if !s.laying.busy || !s.column.stop.Visible() {
		t.Fatal("the pages are not being laid")
	}
	test.Tap(s.column.stop)
	if s.laying.busy || s.column.stop.Visible() || !s.column.again.Visible() {
		t.Errorf("stopped: busy %v, again %v", s.laying.busy, s.column.again.Visible())
	}
	b.settle()
	if len(s.laid.pages) > 0 {
		t.Error("pages come although that was stopped")
	}
	test.Tap(s.column.again)
	b.until("pages", s.current)
	if s.column.again.Visible() {
		t.Error("pages that are there are offered to be laid")
	}
}

func TestLayingSaysHowFarItIs(t *testing.T) {
	b := newPrintBench(t)
	b.places.goTo("Sheets")
	s := b.places.all[b.places.chosen].(*sheetsPlace)
	if got := s.column.state.Text; got != fmt.Sprintf("Laying out %d pieces … 0 %%", len(plantest.Pieces())) {
		t.Errorf("at the beginning the column says %q", got)
	}
	said := map[string]bool{}
	b.until("pages", func() bool { said[s.column.state.Text] = true; return s.current() })
	if len(said) < 3 {
		t.Errorf("the column only ever says %v", said)
	}
}

func TestAPieceIsPickedOnThePageAndInTheList(t *testing.T) {
	b := newPrintBench(t)
	s := b.sheets()
	s.column.paper.pick.choose("A2")
	b.until("pages of A2", s.current)
	s.turnTo(slices.IndexFunc(s.laid.pages, func(pg sheet.Page) bool { return len(pg.Items) > 2 }))
	pg := s.laid.pages[s.at]
	clicked := 0
	for i, it := range pg.Items {
		if it.Tile != nil {
			continue // its middle may lie on another page
		}
		clicked++
		at := it.OnPage(it.Piece.Outline.Centroid())
		s.desk.view.OnTapped(at.X, pg.Height-at.Y)
		if s.picked != it.Piece.ID || s.column.marked != i {
			t.Errorf("a click on %s picks %q, number %d in the list", it.Piece.ID, s.picked, s.column.marked)
		}
	}
	if clicked < 2 {
		t.Fatalf("%d whole pieces on the page", clicked)
	}
	s.desk.view.OnTapped(1, 1)
	if s.picked != "" || s.column.marked != -1 {
		t.Errorf("a click on bare paper leaves %q picked", s.picked)
	}
	s.column.list.Select(1)
	if s.picked != pg.Items[1].Piece.ID {
		t.Errorf("picked %q from the list", s.picked)
	}
	s.turnTo(0)
	if s.picked != "" || s.column.marked != -1 {
		t.Error("a piece stays picked that is not on the page")
	}
}

// The picture that a view wants comes, with what is picked tinted, and no other.
func TestThePictureOfThePageComes(t *testing.T) {
	b := newPrintBench(t)
	s := b.sheets()
	drawn := func() image.Image { return s.desk.view.Picture() }
	b.until("a sharp picture", func() bool { return drawn() != nil && drawn().Bounds().Dy() > 400 })
	plain := drawn()
	s.turnTo(slices.IndexFunc(s.laid.pages, func(pg sheet.Page) bool { return len(pg.Items) > 0 }))
	b.until("the picture of that page", func() bool { return drawn() != nil && drawn() != plain })
	plain = drawn()
	s.pick(s.laid.pages[s.at].Items[0].Piece.ID)
	b.until("the picture with a piece picked", func() bool { return drawn() != plain })
	if n := len(s.desk.large.done); n > mostLarge {
		t.Errorf("%d large pictures are kept, want at most %d", n, mostLarge)
	}
}

func TestASizeOfPaperCanBeTyped(t *testing.T) {
	b := newPrintBench(t)
	s := b.sheets()
	p := s.column.paper
	if p.size.Visible() {
		t.Error("a size is asked for beside a paper with a name")
	}
	p.pick.choose(otherSize)
	if !p.size.Visible() || p.size.Entry().Text != "21 × 29.7" {
		t.Errorf("other size: visible %v, %q", p.size.Visible(), p.size.Entry().Text)
	}
	for text, want := range map[string]record.Paper{
		"30 x 50": {Width: 300, Height: 500}, "29,7×42": {Width: 297, Height: 420}, " 12in * 18 in ": {Width: 304.8, Height: 457.2},
	} {
		b.win.Canvas().Focus(p.size.Entry())
		p.size.Entry().SetText(text)
		p.size.OnDone()
		if got := b.doc.Record().Mount.Paper; math.Abs(got.Width-want.Width)+math.Abs(got.Height-want.Height) > 1e-9 {
			t.Errorf("%q is %v, want %v", text, got, want)
		}
	}
	before := b.doc.Record().Mount.Paper
	for _, text := range []string{"", "30", "30 x", "30 x 40 x 50", "3 x 4", "600 x 700", "a x b", "-30 x 50", "NaN x 50"} {
		p.size.Entry().SetText(text)
		p.size.OnDone()
		if got := b.doc.Record().Mount.Paper; got != before {
			t.Errorf("%q is taken as %v", text, got)
		}
	}
	b.doc.Undo()
	b.doc.Undo()
	b.doc.Undo()
	if got := b.doc.Record().Mount.Paper; got != (record.Paper{}) || p.size.Visible() {
		t.Errorf("after undo the paper is %v, a size is asked for: %v", got, p.size.Visible())
	}
}

func TestPrintingWritesThePagesAndSaysWhere(t *testing.T) {
	b := newPrintBench(t)
	s := b.sheets()
	path := filepath.Join(b.scratch, "print", "Demonstration templates.pdf")
	test.Tap(s.column.print)
	b.until("the file", func() bool { return says(b.win.Canvas().Overlays().Top(), path) })
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if n := bytes.Count(text, []byte("/Type /Page\n")); n != len(s.laid.pages) {
		t.Errorf("%d pages to print, %d shown", n, len(s.laid.pages))
	}
	if !says(b.win.Canvas().Overlays().Top(), "100 mm rules") {
		t.Error("it is not said that the rules are to be measured")
	}
	b.press("Close")
	b.menuItem("Print").Action()
	b.until("the file once more", func() bool { return says(b.win.Canvas().Overlays().Top(), path) })
}

func TestTheMeasuringSheetIsWritten(t *testing.T) {
	b := newPrintBench(t)
	b.menuItem("Measuring sheet").Action()
	b.press("Open the sheet")
	path := filepath.Join(b.scratch, "print", "Measuring sheet.pdf")
	b.until("the file", func() bool { return says(b.win.Canvas().Overlays().Top(), path) })
	if text, err := os.ReadFile(path); err != nil || !bytes.HasPrefix(text, []byte("%PDF-")) {
		t.Errorf("the sheet: %v, %d bytes", err, len(text))
	}
}

func TestThePapersForTheStoreAreWritten(t *testing.T) {
	for name, open := range map[string]func(*printBench){
		"Storage sheet":   func(b *printBench) { test.Tap(b.sheets().column.storage) },
		"Condition sheet": func(b *printBench) { test.Tap(b.sheets().column.condition); b.press("Open the sheet") },
	} {
		b := newPrintBench(t)
		open(b)
		path := filepath.Join(b.scratch, "print", name+".pdf")
		b.until("the file", func() bool { return says(b.win.Canvas().Overlays().Top(), path) })
		if text, err := os.ReadFile(path); err != nil || !bytes.HasPrefix(text, []byte("%PDF-")) {
			t.Errorf("%s: %v, %d bytes", name, err, len(text))
		}
	}
}

func TestTheTestPageIsWritten(t *testing.T) {
	b := newPrintBench(t)
	test.Tap(b.sheets().column.trial)
	path := filepath.Join(b.scratch, "print", "Test page.pdf")
	b.until("the file", func() bool { return says(b.win.Canvas().Overlays().Top(), path) })
	if text, err := os.ReadFile(path); err != nil || !bytes.HasPrefix(text, []byte("%PDF-")) {
		t.Errorf("the page: %v, %d bytes", err, len(text))
	}
}

func TestNothingIsPrintedWhereTheDiskIsFull(t *testing.T) {
	b := newPrintBench(t)
	if err := os.WriteFile(filepath.Join(b.scratch, "print"), []byte("a file"), 0o600); err != nil {
		t.Fatal(err)
	}
	b.print(nil)
	b.until("the reason", func() bool { return says(b.win.Canvas().Overlays().Top(), "a file of that name is there") })
}

func TestTheSheetsFitASmallScreenInBothAppearances(t *testing.T) {
	b := newPrintBench(t)
	s := b.sheets()
	s.column.paper.pick.choose(otherSize)
	if size := b.win.Content().MinSize(); size.Width > 1280 || size.Height > 660 {
		t.Errorf("the window needs %v, want at most 1280 × 660 beside menu and frame", size)
	}
	for _, label := range []string{"Dark", "Light"} {
		b.menuItem(label).Action()
		b.win.Canvas().Capture()
	}
}

// Paper is white in the dark too.
func TestPaperStaysWhite(t *testing.T) {
	b := newPrintBench(t)
	s := b.sheets()
	b.menuItem("Dark").Action()
	b.until("a sharp picture", func() bool {
		return s.desk.view.Picture() != nil && s.desk.view.Picture().Bounds().Dy() > 400 && !s.desk.large.working()
	})
	img := b.win.Canvas().Capture()
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject(s.desk.view).AddXY(s.desk.view.Size().Width/2, 22)
	if r, g, bl, _ := img.At(int(at.X), int(at.Y)).RGBA(); r < 0xf000 || g < 0xf000 || bl < 0xf000 {
		t.Errorf("the margin of the page is %x %x %x", r>>8, g>>8, bl>>8)
	}
}

// BenchmarkPaperToFirstPage is what one waits for after another paper was chosen.
func BenchmarkPaperToFirstPage(b *testing.B) {
	p := plantest.Plan()
	for _, paper := range []string{"A4", "A0"} {
		b.Run(paper, func(b *testing.B) {
			p.Paper, _ = sheet.Named(paper)
			for b.Loop() {
				l := lay(context.Background(), p, nil)
				if l.err != nil {
					b.Fatal(l.err)
				}
				pg := l.pages[0]
				scale := min(600/pg.Width, 540/pg.Height) // as large as in a small window
				preview.Part(pg, drawing.Box{Hi: plane.Point{X: pg.Width, Y: pg.Height}}, scale, "")
			}
		})
	}
}
