// Package folder writes everything that is made from one plan into a folder: the plan
// itself, the templates, the mount record and the materials.
//
// A file of hidden name in the folder lists what was written, so that a later run knows its own
// files: it replaces those, removes those that it no longer makes, and touches no other. Everything
// is written to a hidden folder inside first and then moved file by file, so that a run that
// fails or is stopped leaves the folder as it was.
// It does not compute, and it does not know how a page is drawn.
package folder

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"slices"
	"strings"
)

const (
	manifest = ".understructure-files" // names, one a line, sorted
	staging  = ".understructure-new"
)

// File is one file to write: a name with slashes below the folder, and what goes into it.
type File struct {
	Name  string
	Write func(io.Writer) error
}

// Put writes the files into dir, which is made where it does not exist. It refuses to replace a
// file that an earlier run did not write. done is called after each file with the share that is written.
func Put(ctx context.Context, dir string, files []File, done func(fraction float64)) error {
	if err := named(files); err != nil {
		return err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return err
	}
	defer root.Close()
	s := &shelf{root: root}
	if err := s.claim(files); err != nil {
		return err
	}
	return errors.Join(s.fill(ctx, files, done), root.RemoveAll(staging))
}

// named refuses names that lead elsewhere, that the program needs itself, or that one file system
// would take for the same.
func named(files []File) error {
	seen := map[string]bool{}
	for _, f := range files {
		lower := strings.ToLower(f.Name)
		if !fs.ValidPath(f.Name) || strings.HasPrefix(f.Name, ".") || strings.ContainsAny(f.Name, "\\:\n") || seen[lower] {
			return fmt.Errorf("folder: %q is not a name for a file here", f.Name)
		}
		seen[lower] = true
	}
	return nil
}

// shelf is an open folder and the names in it that are ours.
type shelf struct {
	root *os.Root
	ours []string
}

// claim reads which files are ours, and refuses where one that is to be written is somebody else's.
func (s *shelf) claim(files []File) error {
	text, err := s.root.ReadFile(manifest)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	s.ours = strings.FieldsFunc(string(text), func(r rune) bool { return r == '\n' })
	for _, f := range files {
		if _, err := s.root.Lstat(f.Name); err == nil && !slices.Contains(s.ours, f.Name) {
			return fmt.Errorf("%s was not written by this program and is left alone; please choose another folder", path.Join(s.root.Name(), f.Name))
		}
	}
	return nil
}

func (s *shelf) fill(ctx context.Context, files []File, done func(float64)) error {
	if err := s.stage(ctx, files, done); err != nil {
		return err
	}
	var names []string
	for _, f := range files {
		names = append(names, f.Name)
	}
	// Until the last file is moved, both the old and the new names are ours.
	if err := s.note(append(slices.Clone(s.ours), names...)); err != nil {
		return err
	}
	if err := s.move(names); err != nil {
		return err
	}
	if err := s.clear(names); err != nil {
		return err
	}
	return s.note(names)
}

// stage writes every file to the hidden folder, and to the disk.
func (s *shelf) stage(ctx context.Context, files []File, done func(float64)) error {
	if err := s.root.RemoveAll(staging); err != nil { // of a run that was killed
		return err
	}
	for i, f := range files {
		if err := ctx.Err(); err != nil {
			return err
		}
		if err := s.write(path.Join(staging, f.Name), f.Write); err != nil {
			return fmt.Errorf("%s: %w", f.Name, err)
		}
		done(float64(i+1) / float64(len(files)))
	}
	return ctx.Err()
}

func (s *shelf) write(name string, write func(io.Writer) error) error {
	if err := s.root.MkdirAll(path.Dir(name), 0o755); err != nil {
		return err
	}
	f, err := s.root.Create(name)
	if err != nil {
		return err
	}
	return errors.Join(write(f), f.Sync(), f.Close())
}

func (s *shelf) move(names []string) error {
	for _, name := range names {
		if err := s.root.MkdirAll(path.Dir(name), 0o755); err != nil {
			return err
		}
		if err := s.root.Rename(path.Join(staging, name), name); err != nil {
			return err
		}
	}
	return s.sync(names)
}

// clear removes what an earlier run wrote and this one does not.
func (s *shelf) clear(names []string) error {
	for _, old := range s.ours {
		if slices.Contains(names, old) || !fs.ValidPath(old) {
			continue
		}
		if err := s.root.Remove(old); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
	}
	return nil
}

// note writes down which names are ours.
func (s *shelf) note(names []string) error {
	slices.Sort(names)
	text := strings.Join(slices.Compact(names), "\n") + "\n"
	staged := path.Join(staging, manifest)
	err := s.write(staged, func(w io.Writer) error { _, err := io.WriteString(w, text); return err })
	if err != nil {
		return err
	}
	return errors.Join(s.root.Rename(staged, manifest), s.sync([]string{manifest}))
}

// sync makes the names in every folder that was written to last.
func (s *shelf) sync(names []string) error {
	var folders []string
	for _, name := range names {
		folders = append(folders, path.Dir(name))
	}
	slices.Sort(folders)
	for _, folder := range slices.Compact(folders) {
		d, err := s.root.Open(folder)
		if err != nil {
			return err
		}
		if err := errors.Join(d.Sync(), d.Close()); err != nil {
			return err
		}
	}
	return nil
}
