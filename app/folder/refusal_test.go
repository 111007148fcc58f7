package folder

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// The numbers are those of POSIX.1-2017, chapter "Error Numbers": ENOSPC, EDQUOT, EROFS, EACCES, EPERM, ENOTDIR, ENOENT.
func TestExplainKnowsWhatTheSystemSays(t *testing.T) {
	for said, reason := range map[error]error{
		syscall.ENOSPC: ErrFull, syscall.EDQUOT: ErrFull, syscall.EROFS: ErrReadOnly,
		syscall.EACCES: ErrForbidden, syscall.EPERM: ErrForbidden, syscall.ENOTDIR: ErrNoFolder, syscall.ENOENT: ErrGone,
	} {
		err := Explain("/out", fmt.Errorf("plan.json: %w", &fs.PathError{Op: "write", Path: "/out/plan.json", Err: said}))
		var r *Refusal
		if !errors.As(err, &r) || r.Reason != reason || r.Dir != "/out" || !errors.Is(err, said) {
			t.Errorf("%v is explained as %v", said, err)
		}
		if !strings.Contains(err.Error(), "/out") || !strings.Contains(err.Error(), reason.Error()) {
			t.Errorf("%v reads %q", said, err)
		}
	}
	other := errors.New("something else")
	if Explain("/out", other) != other || Explain("/out", nil) != nil {
		t.Error("what is not known is explained")
	}
}

func TestAFileInTheFoldersPlace(t *testing.T) {
	path := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(path, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, dir := range []string{path, filepath.Join(path, "templates")} {
		if err := put(dir, file("a", "a")); !errors.Is(err, ErrNoFolder) {
			t.Errorf("%s: %v", dir, err)
		}
	}
	if text, _ := os.ReadFile(path); string(text) != "mine" {
		t.Error("the file is gone")
	}
}
