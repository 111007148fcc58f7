package document

import (
	"fmt"
	"os"
	"path/filepath"

	"understructure/app/keep"
)

// mostWindows is how many windows may have one file open with a safety copy each.
const mostWindows = 9

// claim is the safety copy that a window may write and remove: no other that lives has the same.
type claim struct {
	path    string // "" for none
	release func()
}

func unclaimed() claim { return claim{release: func() {}} }

// claimed finds a safety copy of a file that no living window has: one with work left behind before others, or, fresh, one
// without. In a folder that cannot be written to it is the first, held or not: writing it will say what is wrong.
func claimed(file string, fresh bool) claim {
	free := claim{CopyPath(file), func() {}}
	for n := mostWindows; n >= 1; n-- {
		path := copyPath(file, n)
		release, held := keep.Hold(path + ".held")
		if !held {
			continue
		}
		info, err := os.Stat(path)
		left := err == nil && info.Mode().IsRegular()
		if left && fresh {
			release()
			continue
		}
		free.release()
		free = claim{path, release}
		if left {
			break
		}
	}
	return free
}

// CopyPath is where the safety copy of a file lies: hidden, in the same folder.
func CopyPath(file string) string { return copyPath(file, 1) }

// copyPath is that of the nth window.
func copyPath(file string, n int) string {
	name := "." + filepath.Base(file)
	if n > 1 {
		name += fmt.Sprintf(".%d", n)
	}
	return filepath.Join(filepath.Dir(file), name+".autosave")
}
