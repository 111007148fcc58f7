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
		if s.has(f.Name) && !slices.Contains(s.ours, f.Name) {
			return fmt.Errorf("%s was not written by this program and is left alone; please choose another folder", path.Join(s.root.Name(), f.Name))
		}
	}
	return nil
}

func (s *shelf) has(name string) bool {
	_, err := s.root.Lstat(name)
	return err == nil
}

// sweep removes the hidden folders of this run, or of one that was killed.
func (s *shelf) sweep() error { return errors.Join(s.root.RemoveAll(staging), s.root.RemoveAll(aside)) }

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
	if err := s.exchange(names); err != nil {
		return err
	}
	return errors.Join(s.sync(names), s.note(names))
}

// stage writes every file to the hidden folder, and to the disk.
func (s *shelf) stage(ctx context.Context, files []File, done func(float64)) error {
	if err := s.sweep(); err != nil {
		return err
	}
	for i, f := range files {
		if err := s.write(ctx, path.Join(staging, f.Name), f.Write); err != nil {
			return fmt.Errorf("%s: %w", f.Name, err)
		}
		done(float64(i+1) / float64(len(files)))
	}
	return ctx.Err()
}

func (s *shelf) write(ctx context.Context, name string, write func(io.Writer) error) error {
	if err := s.room(name); err != nil {
		return err
	}
	f, err := s.root.Create(name)
	if err != nil {
		return err
	}
	return errors.Join(write(until{ctx, f}), f.Sync(), f.Close())
}

// room makes the folders above a name.
func (s *shelf) room(name string) error { return s.root.MkdirAll(path.Dir(name), 0o755) }

// until is a file that takes nothing more once the work has been called off.
type until struct {
	ctx  context.Context
	file io.Writer
}

func (u until) Write(b []byte) (int, error) {
	if err := u.ctx.Err(); err != nil {
		return 0, err
	}
	return u.file.Write(b)
}

// exchange sets aside what an earlier run wrote and puts what was staged into its place. Where that fails,
// as with a file that another program holds open, everything goes back to where it was.
func (s *shelf) exchange(names []string) error {
	var moves [][2]string
	for _, name := range names {
		if s.has(name) {
			moves = append(moves, [2]string{name, path.Join(aside, name)})
		}
		moves = append(moves, [2]string{path.Join(staging, name), name})
	}
	for _, old := range s.ours {
		if fs.ValidPath(old) && !slices.Contains(names, old) && s.has(old) {
			moves = append(moves, [2]string{old, path.Join(aside, old)})
		}
	}
	for i, m := range moves {
		if err := s.move(m[0], m[1]); err != nil {
			for _, back := range slices.Backward(moves[:i]) {
				err = errors.Join(err, s.move(back[1], back[0]))
			}
			return err
		}
	}
	return nil
}

func (s *shelf) move(from, to string) error { return errors.Join(s.room(to), s.root.Rename(from, to)) }

// note writes down which names are ours.
func (s *shelf) note(names []string) error {
	slices.Sort(names)
	text := strings.Join(slices.Compact(names), "\n") + "\n"
	staged := path.Join(staging, manifest)
	write := func(w io.Writer) error { _, err := io.WriteString(w, text); return err }
	if err := s.write(context.Background(), staged, write); err != nil {
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
