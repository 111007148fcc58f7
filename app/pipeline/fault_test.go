package pipeline

import (
	"errors"
	"strings"
	"testing"
)

func TestAPanicIsConfessed(t *testing.T) {
	err := func() (err error) {
		defer confess(&err)
		var none []int
		_ = none[len(none)]
		return nil
	}()
	var fault *Fault
	if !errors.As(err, &fault) || !strings.Contains(err.Error(), "out of range") || len(fault.Stack) == 0 {
		t.Errorf("confessed %v", err)
	}
}
