package ui

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"understructure/app/record"
	"understructure/geometry/measure"
)

func saved(t *testing.T, name string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := record.Save(path, dress()); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestRecentFilesComeNewestFirstAndOnce(t *testing.T) {
	b := newBench(t)
	one, two := saved(t, "one.json"), saved(t, "two.json")
	for _, path := range []string{one, two, one} {
		b.Open(path)
		b.settle()
	}
	if got := b.recent(); !slices.Equal(got, []string{one, two}) {
		t.Errorf("recent files %q, want one, two", got)
	}
	items := b.menu.recent.ChildMenu.Items
	if len(items) != 2 || b.menu.recent.Disabled {
		t.Fatalf("%d items in the menu, disabled %v", len(items), b.menu.recent.Disabled)
	}
	items[1].Action()
	b.settle()
	if b.doc.Path() != two {
		t.Errorf("the second item opened %q", b.doc.Path())
	}
}

func TestARecentFileThatIsGoneIsForgotten(t *testing.T) {
	b := newBench(t)
	path := saved(t, "gone.json")
	b.Open(path)
	b.settle()
	b.start(b.options.Demos[0])
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	b.menu.recent.ChildMenu.Items[0].Action()
	if b.win.Canvas().Overlays().Top() == nil || len(b.recent()) != 0 || b.name() != "Demonstration" {
		t.Errorf("no error, or still offered: %q, %q is open", b.recent(), b.name())
	}
}

func TestANewRecordHasNothingTaken(t *testing.T) {
	b := newBench(t)
	b.start(b.options.Demos[1])
	b.menuItem("New").Action()
	b.settle()
	r := b.doc.Record()
	if len(r.Garment.Bodice) != 0 || r.Unit != "in" || r.Object.Wearer != measure.Woman {
		t.Errorf("a new record has %v in %q for a %q", r.Garment.Bodice, r.Unit, r.Object.Wearer)
	}
	if b.doc.Dirty() {
		t.Error("a new record asks to be saved before anything is typed")
	}
}
