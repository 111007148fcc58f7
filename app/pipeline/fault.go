package pipeline

import (
	"fmt"
	"runtime/debug"
)

// Fault is a mistake of this program's own that a record has brought to light. Whoever has the record open
// keeps it, and everything else goes on.
type Fault struct {
	Cause any
	Stack []byte // where it happened, for those who mend it
}

func (f *Fault) Error() string {
	return fmt.Sprintf("a fault of this program: %v; nothing is lost, please report it with the record", f.Cause)
}

// confess turns a panic into a Fault.
func confess(err *error) {
	if cause := recover(); cause != nil {
		*err = &Fault{cause, debug.Stack()}
	}
}
