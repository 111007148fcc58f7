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
	"strings"
)

const (
	manifest = ".understructure-files" // names, one a line, sorted
	staging  = ".understructure-new"
	aside    = ".understructure-old"
)

// File is one file to write: a name with slashes below the folder, and what goes into it.
type File struct {
	Name  string
	Write func(io.Writer) error
}

// Put writes the files into dir, which is made where it does not exist. It refuses to replace a
// file that an earlier run did not write. done is called after each file with the share that is written.
// On error, also when ctx ends before the last file is written, dir is as it was; a Refusal says where a
// person can do something about it.
func Put(ctx context.Context, dir string, files []File, done func(fraction float64)) error {
	if err := named(files); err != nil {
		return err
	}
	_, err := os.Stat(dir)
	made := errors.Is(err, fs.ErrNotExist)
	if err := store(ctx, dir, files, done); err != nil {
		if made {
			_ = os.Remove(dir) // unless something is in it
		}
		return Explain(dir, err)
	}
	return nil
}

func store(ctx context.Context, dir string, files []File, done func(float64)) error {
	if err := ctx.Err(); err != nil {
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
	return errors.Join(s.fill(ctx, files, done), s.sweep())
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
