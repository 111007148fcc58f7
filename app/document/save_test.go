package document

import (
	"errors"
	"os"
	"path/filepath"
	"testing"
)

func TestAFileThatSomebodyElseChangedIsNotOverwritten(t *testing.T) {
	path := filepath.Join(t.TempDir(), "dress.json")
	if err := os.WriteFile(path, []byte("as it was opened"), 0o600); err != nil {
		t.Fatal(err)
	}
	d := newDesk(t, echo)
	d.files[path] = dress()
	if err := d.Open(path); err != nil {
		t.Fatal(err)
	}
	d.Set(field(t, dress(), "garment.bodice.waist_girth"), mm(600))
	if err := os.WriteFile(path, []byte("somebody else's work"), 0o600); err != nil {
		t.Fatal(err)
	}
	var overtaken *Overtaken
	if err := d.Save(); !errors.As(err, &overtaken) || overtaken.Path != path {
		t.Fatalf("saved over somebody else's work: %v", err)
	}
	if text, _ := os.ReadFile(path); string(text) != "somebody else's work" || !d.Dirty() {
		t.Errorf("the file is now %q, unsaved changes: %v", text, d.Dirty())
	}
	if err := d.SaveAs(path); err != nil {
		t.Errorf("whoever insists is refused: %v", err)
	}
	if err := d.Save(); err != nil {
		t.Errorf("one's own save counts as somebody else's: %v", err)
	}
}

// Nothing is lost by writing a file anew that was taken away.
func TestAFileThatIsGoneIsWrittenAgain(t *testing.T) {
	path := filepath.Join(t.TempDir(), "dress.json")
	d := newDesk(t, echo)
	d.Start("demo", dress())
	if err := d.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	if err := d.Save(); err != nil {
		t.Error(err)
	}
}
