package keep

import (
	"os"
	"path/filepath"
	"testing"
)

func TestOnlyOneHolds(t *testing.T) {
	path := filepath.Join(t.TempDir(), "in-use")
	release, held := Hold(path)
	if !held {
		t.Fatal("nobody holds it, yet it cannot be held")
	}
	if _, held := Hold(path); held {
		t.Error("two hold the same file")
	}
	release()
	if _, err := os.Stat(path); err == nil {
		t.Error("what was let go is still there")
	}
	release, held = Hold(path)
	if !held {
		t.Error("it was let go, and yet cannot be held")
	}
	release()
}

func TestWhereNoFileCanBeMadeNothingIsHeld(t *testing.T) {
	if _, held := Hold(filepath.Join(t.TempDir(), "no folder", "in-use")); held {
		t.Error("a file that is not there is held")
	}
}
