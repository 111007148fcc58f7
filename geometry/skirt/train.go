package skirt

import (
	"fmt"

	"understructure/geometry/plane"
	"understructure/geometry/section"
)

// leastTrain is the least cloth on the floor that wants a support, mm: twice what a petticoat
// is shorter than its skirt. From memory.
const leastTrain = 2 * Shorter

// TrainSupport is the flat piece that lies on the floor under a train, seen from above, the back upward: from
// where the skirt meets the floor to 25 mm within its edge. The error says when there is no train.
func (s Skirt) TrainSupport() (plane.Ring, error) {
	foot, hem := s.Foot(), s.Hem()
	lies := func(j int) bool { return hem[j].Dist(foot[j]) > leastTrain }
	if !lies(section.Back) {
		return nil, fmt.Errorf("skirt: %.0f mm lie on the floor behind, want more than %.0f for a support", s.Back.Train, leastTrain)
	}
	from, to := around(lies)
	if to-from < 2 {
		return nil, fmt.Errorf("skirt: the train is too narrow for a support")
	}
	var out plane.Ring
	over := func(p plane.Point) plane.Point { return plane.Point{X: p.X, Y: -p.Y} }
	for j := to; j >= from; j-- {
		out = append(out, over(hem[j].Mul(1-Shorter/hem[j].Norm())))
	}
	for j := from; j <= to; j++ {
		out = append(out, over(foot[j]))
	}
	return out, nil
}
