// Package keep writes files so that a power cut, a full disk or a crash leaves either the old
// file or the new one, never a part of it.
// It does not know what is in them.
package keep

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// File calls write with a temporary file in the folder of path, syncs it to the disk, and only then
// gives it the name. If anything fails, what stood at path stays and nothing else is left behind.
func File(path string, write func(io.Writer) error) (err error) {
	f, err := os.CreateTemp(filepath.Dir(path), ".understructure-*")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			_ = os.Remove(f.Name())
		}
	}()
	if err = fill(f, write, mode(path)); err != nil {
		return err
	}
	if err = os.Rename(f.Name(), path); err != nil {
		return err
	}
	return Folder(filepath.Dir(path))
}

func fill(f *os.File, write func(io.Writer) error, mode fs.FileMode) error {
	return errors.Join(write(f), f.Chmod(mode), f.Sync(), f.Close())
}

// mode is that of the file which is replaced, so that a shared record stays shared.
func mode(path string) fs.FileMode {
	if info, err := os.Stat(path); err == nil {
		return info.Mode().Perm()
	}
	return 0o644
}

// Folder syncs the names in a folder to the disk.
func Folder(path string) error {
	d, err := os.Open(path)
	if err != nil {
		return err
	}
	return errors.Join(d.Sync(), d.Close())
}
