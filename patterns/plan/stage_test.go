package plan

import (
	"testing"

	"understructure/geometry/plane"
)

func TestAfterIsWhatStands(t *testing.T) {
	small, large := square(100), square(120)
	built := []plane.Ring{large, large, nil}
	p := Plan{
		Surface: Surface{Heights: []float64{0, 10, 20}, Built: built},
		Stages: []Stage{
			{Kind: SliceStage, Outlines: []plane.Ring{small, nil, nil}},
			{Kind: SliceStage, Outlines: []plane.Ring{nil, small, nil}},
			{Kind: CoverStage, Outlines: built},
		},
	}
	for stage, want := range map[int][3]float64{-1: {400, 0, 0}, 0: {400, 0, 0}, 1: {400, 400, 0}, 2: {480, 480, 0}, 9: {480, 480, 0}} {
		for i, r := range p.After(stage) {
			if got := r.Perimeter(); got != want[i] {
				t.Errorf("after stage %d height %d is %g round, want %g", stage, i, got, want[i])
			}
		}
	}
	p.Stages = nil
	if got := p.After(0); len(got) != 3 || got[0].Perimeter() != 480 {
		t.Error("without stages it is not what is built")
	}
}
