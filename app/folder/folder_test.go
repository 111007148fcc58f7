package folder

import (
	"context"
	"errors"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
)

// file holds a text.
func file(name, text string) File {
	return File{name, func(w io.Writer) error { _, err := io.WriteString(w, text); return err }}
}

// put writes the files and returns the error.
func put(dir string, files ...File) error {
	return Put(context.Background(), dir, files, func(float64) {})
}

// holds fails unless the folder holds exactly the given "name text" files, hidden ones aside.
func holds(t *testing.T, dir string, want ...string) {
	t.Helper()
	var got []string
	err := filepath.WalkDir(dir, func(at string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || d.Name() == manifest {
			return err
		}
		b, err := os.ReadFile(at)
		name, _ := filepath.Rel(dir, at)
		got = append(got, filepath.ToSlash(name)+" "+string(b))
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(got, want) {
		t.Errorf("the folder holds %q, want %q", got, want)
	}
}

func TestPut(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out", "demo")
	if err := put(dir, file("plan.json", "1"), file("svg/A.svg", "a"), file("svg/B.svg", "b")); err != nil {
		t.Fatal(err)
	}
	holds(t, dir, "plan.json 1", "svg/A.svg a", "svg/B.svg b")
	foreign := filepath.Join(dir, "svg", "mine.svg")
	if err := os.WriteFile(foreign, []byte("m"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := put(dir, file("plan.json", "2"), file("svg/A.svg", "aa")); err != nil {
		t.Fatal(err)
	}
	holds(t, dir, "plan.json 2", "svg/A.svg aa", "svg/mine.svg m")
	if err := put(dir, file("plan.json", "3"), file("svg/mine.svg", "ours")); err == nil || !strings.Contains(err.Error(), "mine.svg was not written by this program") {
		t.Errorf("a foreign file is replaced: %v", err)
	}
	holds(t, dir, "plan.json 2", "svg/A.svg aa", "svg/mine.svg m")
}

func TestWhatFailsChangesNothing(t *testing.T) {
	dir := t.TempDir()
	if err := put(dir, file("plan.json", "1"), file("old.csv", "o")); err != nil {
		t.Fatal(err)
	}
	full := errors.New("disk full")
	if err := put(dir, file("plan.json", "2"), File{"templates.pdf", func(io.Writer) error { return full }}); !errors.Is(err, full) {
		t.Errorf("got %v", err)
	}
	holds(t, dir, "old.csv o", "plan.json 1")
	ctx, cancel := context.WithCancel(context.Background())
	err := Put(ctx, dir, []File{file("plan.json", "2"), file("b", "b")}, func(float64) { cancel() })
	if !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
	holds(t, dir, "old.csv o", "plan.json 1")
}

// A file that is gone before it is moved in stands for any that cannot be moved; all others must come back.
func TestAFileThatCannotBeMovedInBringsTheOthersBack(t *testing.T) {
	dir := t.TempDir()
	if err := put(dir, file("a.csv", "1"), file("old.csv", "o"), file("svg/B.svg", "b")); err != nil {
		t.Fatal(err)
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	s := &shelf{root: root, ours: []string{"a.csv", "old.csv", "svg/B.svg"}}
	names := []string{"a.csv", "plan.json", "svg/B.svg"}
	for _, gone := range names {
		files := []File{file("a.csv", "2"), file("plan.json", "2"), file("svg/B.svg", "bb")}
		if err := s.stage(context.Background(), files, func(float64) {}); err != nil {
			t.Fatal(err)
		}
		if err := root.Remove(path.Join(staging, gone)); err != nil {
			t.Fatal(err)
		}
		if err := s.exchange(names); !errors.Is(err, fs.ErrNotExist) {
			t.Errorf("without %s: %v", gone, err)
		}
		if err := s.sweep(); err != nil {
			t.Fatal(err)
		}
		holds(t, dir, "a.csv 1", "old.csv o", "svg/B.svg b")
	}
}

func TestRemainsOfAKilledRunAreSweptAway(t *testing.T) {
	dir := t.TempDir()
	if err := os.MkdirAll(filepath.Join(dir, staging, "svg"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := put(dir, file("plan.json", "1")); err != nil {
		t.Fatal(err)
	}
	holds(t, dir, "plan.json 1")
	if _, err := os.Stat(filepath.Join(dir, staging)); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("the hidden folder stays: %v", err)
	}
}

func TestAFailedRunLeavesNoFolder(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "new")
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if err := Put(ctx, dir, []File{file("a", "a")}, func(float64) {}); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
	full := File{"templates.pdf", func(io.Writer) error { return &fs.PathError{Op: "write", Path: "x", Err: syscall.ENOSPC} }}
	if err := put(dir, file("a", "a"), full); !errors.Is(err, ErrFull) {
		t.Errorf("got %v", err)
	}
	if _, err := os.Stat(dir); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a folder stays: %v", err)
	}
}

func TestWhatIsBeingWrittenStopsWhenItIsCalledOff(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	written := 0
	long := File{"long", func(w io.Writer) error {
		for range 1000 {
			if _, err := io.WriteString(w, "x"); err != nil {
				return err
			}
			if written++; written == 3 {
				cancel()
			}
		}
		return nil
	}}
	if err := Put(ctx, t.TempDir(), []File{long}, func(float64) {}); !errors.Is(err, context.Canceled) || written != 3 {
		t.Errorf("%v after %d writes, want 3", err, written)
	}
}

func TestNamesThatLeaveTheFolder(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"../x", "/x", "svg/../../x", "", ".", "svg/", `svg\x`, "c:x", manifest, "./x", "svg//x"} {
		if err := put(filepath.Join(dir, "out"), file(name, "x")); err == nil {
			t.Errorf("%q is written", name)
		}
	}
	if err := put(filepath.Join(dir, "out"), file("A.svg", "x"), file("a.SVG", "x")); err == nil {
		t.Error("two names that are one on many disks are written")
	}
	holds(t, dir)
}

func TestALinkThatLeadsOutIsNotFollowed(t *testing.T) {
	dir, elsewhere := t.TempDir(), t.TempDir()
	if err := os.Symlink(elsewhere, filepath.Join(dir, "svg")); err != nil {
		t.Fatal(err)
	}
	if err := put(dir, file("svg/A.svg", "a")); err == nil {
		t.Error("a link is followed out of the folder")
	}
	holds(t, elsewhere)
}

func TestNotesThatLeadOutRemoveNothing(t *testing.T) {
	parent := t.TempDir()
	dir, victim := filepath.Join(parent, "out"), filepath.Join(parent, "victim")
	if err := errors.Join(os.Mkdir(dir, 0o755), os.WriteFile(victim, nil, 0o600),
		os.WriteFile(filepath.Join(dir, manifest), []byte("../victim\n"), 0o600)); err != nil {
		t.Fatal(err)
	}
	if err := put(dir, file("plan.json", "1")); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(victim); err != nil {
		t.Error(err)
	}
}
