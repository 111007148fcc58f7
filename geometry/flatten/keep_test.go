package flatten

import (
	"testing"

	"understructure/geometry/shapetest"
)

// Both long edges of a panel of a corseted torso are to keep their length, in two runs each.
func TestKeptRunsKeepTheirLength(t *testing.T) {
	const nu, nv = 8, 40
	p := patch(shapetest.Corseted(nu, nv))
	var keep [][]int
	for _, column := range []int{0, nu} {
		for _, rows := range [][2]int{{0, 15}, {15, nv}} {
			var run []int
			for j := rows[0]; j <= rows[1]; j++ {
				run = append(run, j*(nu+1)+column)
			}
			keep = append(keep, run)
		}
	}
	free, kept := laid(t, p, Options{}), laid(t, p, Options{Keep: keep})
	stretched := 0.0
	for _, run := range keep {
		want := p.length(run)
		near(t, "kept run", length(kept.Points, run)/want, 1, 1e-7)
		stretched = max(stretched, length(free.Points, run)/want-1)
	}
	if stretched < 0.002 {
		t.Errorf("no run is stretched by more than %.4f anyway; the test says nothing", stretched)
	}
	if kept.Strain.Greatest > 1.35*free.Strain.Greatest {
		t.Errorf("keeping lengths raises the strain from %.4f to %.4f", free.Strain.Greatest, kept.Strain.Greatest)
	}
}
