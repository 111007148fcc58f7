package folder

import (
	"errors"
	"fmt"
	"io/fs"
	"syscall"
)

// The reasons why a folder takes no files that a person can do something about.
var (
	ErrFull      = errors.New("there is no room left on the disk")
	ErrReadOnly  = errors.New("the disk can only be read")
	ErrForbidden = errors.New("this account may not write there")
	ErrNoFolder  = errors.New("a file stands where the folder is to be")
	ErrGone      = errors.New("the folder is no longer there")
)

// Refusal says that nothing was written to a folder, and for which of the reasons.
type Refusal struct {
	Dir    string
	Reason error
	Err    error // what the system said
}

func (r *Refusal) Error() string {
	return fmt.Sprintf("nothing was written to %s: %v", r.Dir, r.Reason)
}

// Unwrap gives the reason and what the system said.
func (r *Refusal) Unwrap() []error { return []error{r.Reason, r.Err} }

// reasons are what the system says, by the reason that stands behind it.
var reasons = []struct{ said, reason error }{
	{syscall.ENOSPC, ErrFull}, {syscall.EDQUOT, ErrFull},
	{syscall.EROFS, ErrReadOnly}, {fs.ErrPermission, ErrForbidden}, {syscall.ENOTDIR, ErrNoFolder}, {fs.ErrNotExist, ErrGone},
}

// Explain makes a Refusal of an error met in writing to dir where a reason is known; it returns any other as it is.
func Explain(dir string, err error) error {
	for _, known := range reasons {
		if errors.Is(err, known.said) {
			return &Refusal{dir, known.reason, err}
		}
	}
	return err
}
