package ui

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"understructure/app/record"
	"understructure/geometry/measure"
)

func TestLeavingAsksAboutUnsavedChanges(t *testing.T) {
	b := newBench(t)
	left := 0
	b.leave(func() { left++ })
	if left != 1 {
		t.Error("nothing to save, yet one is asked")
	}
	b.retype(waist, "66")
	b.leave(func() { left++ })
	b.press("Cancel")
	b.leave(func() { left++ })
	b.press("Don't save")
	if left != 2 {
		t.Errorf("left %d times, want 2: not on Cancel, once on Don't save", left)
	}
	path := filepath.Join(t.TempDir(), "dress.json")
	if err := b.doc.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	b.retype(waist, "67")
	b.leave(func() { left++ })
	b.press("Save")
	r, err := record.Load(path)
	if left != 3 || err != nil || r.Garment.Bodice[measure.WaistGirth] != 670 {
		t.Errorf("left %d times, file has waist %v, %v; want 3, 670", left, r.Garment.Bodice[measure.WaistGirth], err)
	}
}

func TestWhatSomebodyElseSavedIsNotReplacedUnasked(t *testing.T) {
	b := newBench(t)
	path := filepath.Join(t.TempDir(), "dress.json")
	if err := b.doc.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	theirs := dress()
	theirs.Garment.Bodice[measure.WaistGirth] = 600
	if err := record.Save(path, theirs); err != nil {
		t.Fatal(err)
	}
	b.retype(waist, "66")
	for _, c := range []struct {
		answer string
		want   float64
	}{{"Cancel", 600}, {"Replace the file", 660}} {
		b.save()
		b.press(c.answer)
		if r, err := record.Load(path); err != nil || r.Garment.Bodice[measure.WaistGirth] != c.want {
			t.Errorf("after %s the file has a waist of %v, %v; want %v", c.answer, r.Garment.Bodice[measure.WaistGirth], err, c.want)
		}
	}
}

// A drive that was taken out, as far as a program can tell.
func TestAFolderThatIsGoneIsSaidInWords(t *testing.T) {
	b := newBench(t)
	gone := filepath.Join(t.TempDir(), "drive")
	if err := os.Mkdir(gone, 0o700); err != nil {
		t.Fatal(err)
	}
	if err := b.doc.SaveAs(filepath.Join(gone, "dress.json")); err != nil {
		t.Fatal(err)
	}
	b.retype(waist, "66")
	if err := os.RemoveAll(gone); err != nil {
		t.Fatal(err)
	}
	b.save()
	if top := b.win.Canvas().Overlays().Top(); top == nil || !says(top, "is no longer there") {
		t.Error("nothing is said of a folder that is gone")
	}
	if !b.doc.Dirty() {
		t.Error("the work counts as saved")
	}
}

func TestSaveAsAsksBeforeReplacing(t *testing.T) {
	b := newBench(t)
	path := filepath.Join(t.TempDir(), "dress.json")
	if err := os.WriteFile(path, []byte("something else"), 0o600); err != nil {
		t.Fatal(err)
	}
	s := &saving{w: b.Window, name: widget.NewEntry(), folder: widget.NewButton(filepath.Dir(path), nil), then: func() {}}
	s.name.SetText("dress")
	s.chosen(true)
	b.press("Cancel")
	if text, _ := os.ReadFile(path); string(text) != "something else" {
		t.Error("the file was replaced although the answer was no")
	}
	s.chosen(true)
	b.press("Replace the file")
	if _, err := record.Load(path); err != nil || b.doc.Path() != path {
		t.Errorf("saved as %q, %v", b.doc.Path(), err)
	}
}

func TestABadFileLeavesWhatIsOpen(t *testing.T) {
	b := newBench(t)
	path := filepath.Join(t.TempDir(), "bad.json")
	if err := os.WriteFile(path, []byte(`{"understructure": 1, "unit": "ell"}`), 0o600); err != nil {
		t.Fatal(err)
	}
	b.Open(path)
	if b.win.Canvas().Overlays().Top() == nil || b.name() != "Demonstration" {
		t.Errorf("no error is shown, or %q is open", b.name())
	}
}

func TestExportWritesAndSaysWhere(t *testing.T) {
	b := newBench(t)
	folder := filepath.Join(t.TempDir(), "templates")
	b.exportTo(folder)
	if err := <-b.exited; err != nil {
		t.Fatal(err)
	}
	b.untilOverlay(func(o fyne.CanvasObject) bool { return says(o, folder) })
	b.press("Close")
}

func TestExportCanBeCancelled(t *testing.T) {
	b := newBench(t)
	b.retype(waist, "66.6") // the stand-in waits at this value until it is told to stop
	folder := filepath.Join(t.TempDir(), "templates")
	b.exportTo(folder)
	b.press("Cancel")
	if err := <-b.exited; !errors.Is(err, context.Canceled) {
		t.Errorf("export ended with %v", err)
	}
	b.untilOverlay(func(o fyne.CanvasObject) bool { return o == nil })
	if _, err := os.Stat(folder); err == nil {
		t.Error("a cancelled export left a folder")
	}
}

func TestKeysOfTheMenuWaitWhileSomethingIsAsked(t *testing.T) {
	b := newBench(t)
	b.retype(waist, "66")
	b.leave(func() {})
	asked := b.win.Canvas().Overlays().Top()
	b.menuItem("Save as").Action()
	b.menuItem("Undo").Action()
	if b.win.Canvas().Overlays().Top() != asked || !b.doc.Dirty() {
		t.Error("the menu acted behind a question")
	}
	b.win.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if b.win.Canvas().Overlays().Top() != nil || b.ask {
		t.Error("Escape does not take the question away")
	}
}
