package section_test

import (
	"testing"

	"understructure/geometry/section"
)

// A tape is measured some thousand times for one mount: it must need no memory of its own.
func TestTapeAllocatesNothing(t *testing.T) {
	h := section.Halves{Right: 150, Left: 150, Front: 110, Back: 100, FrontFullness: 2.4, BackFullness: 2}
	s := section.Of(h.Ring())
	if n := testing.AllocsPerRun(20, func() { s.Tape() }); n != 0 {
		t.Errorf("%v allocations a tape", n)
	}
}
