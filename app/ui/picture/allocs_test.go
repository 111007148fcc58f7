package picture

import (
	"testing"

	"understructure/geometry/unit"
)

// A frame of a figure that is turned round takes its room from the frame before.
func TestFrameAllocatesNothing(t *testing.T) {
	body, p := NewBody(torso()), new(Painter)
	yaw := unit.Angle(0)
	if n := testing.AllocsPerRun(10, func() {
		yaw += unit.Degree
		p.Figure(p.Sheet(900, 900), body, fill(body, 900, yaw, Plain))
	}); n > 0 {
		t.Errorf("%v allocations a frame", n)
	}
}
