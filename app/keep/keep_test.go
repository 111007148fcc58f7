package keep

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"testing"
)

func text(s string) func(io.Writer) error {
	return func(w io.Writer) error { _, err := io.WriteString(w, s); return err }
}

func TestFileIsReplacedWhole(t *testing.T) {
	path := filepath.Join(t.TempDir(), "dress.json")
	if err := os.WriteFile(path, []byte("old"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := File(path, text("new")); err != nil {
		t.Fatal(err)
	}
	b, _ := os.ReadFile(path)
	info, err := os.Stat(path)
	if err != nil || string(b) != "new" || info.Mode().Perm() != 0o600 {
		t.Errorf("%q, %v, %v", b, info.Mode(), err)
	}
}

func TestWhatFailsLeavesTheOldFileAlone(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "dress.json")
	if err := File(path, text("old")); err != nil {
		t.Fatal(err)
	}
	full := errors.New("disk full")
	err := File(path, func(w io.Writer) error { return errors.Join(text("half")(w), full) })
	b, _ := os.ReadFile(path)
	if names, _ := os.ReadDir(dir); !errors.Is(err, full) || string(b) != "old" || len(names) != 1 {
		t.Errorf("%v, %q, %v", err, b, names)
	}
	if err := File(filepath.Join(dir, "no such folder", "x"), text("x")); err == nil {
		t.Error("a file is written into a folder that does not exist")
	}
}
