//go:build unix

package keep

import (
	"os"
	"syscall"
)

// Hold says that something is in use by making a file that only one can hold. The system lets go of it when
// the program ends, however it ends. held is false where somebody else holds it, or where no
// such file can be made.
func Hold(path string) (release func(), held bool) {
	f, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR, 0o600)
	if err != nil {
		return func() {}, false
	}
	if syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB) != nil || !still(f, path) {
		_ = f.Close()
		return func() {}, false
	}
	return func() {
		_ = os.Remove(path) // while it is held, so that nobody holds a file without a name for long
		_ = f.Close()
	}, true
}

// still reports whether the file is the one at path: whoever held it may have removed it between opening and holding.
func still(f *os.File, path string) bool {
	mine, err := f.Stat()
	if err != nil {
		return false
	}
	there, err := os.Stat(path)
	return err == nil && os.SameFile(mine, there)
}
