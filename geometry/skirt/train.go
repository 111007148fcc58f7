package skirt

import (
	"fmt"
	"slices"

	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/surface"
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
	foots, hems := Through(section.Of(foot)), Through(section.Of(hem))
	var edge, out plane.Ring
	for _, t := range surface.Rows(float64(from), float64(to), 1.0/finely) {
		d := facing(t)
		over := plane.Point{X: d.X, Y: -d.Y} // the ovals are seen with the front upward
		edge = append(edge, d.Mul(foots.Reach(over)))
		out = append(out, d.Mul(hems.Reach(over)-Shorter))
	}
	slices.Reverse(out)
	return append(out, edge...), nil
}
