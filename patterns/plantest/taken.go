package plantest

import (
	"math/rand/v2"

	"understructure/geometry/measure"
	"understructure/patterns/plan"
)

// Taken is what a record may hold: readings anywhere in their ranges, small ones the more often, most of them left out but for
// the three without which there is no mount.
func Taken(rnd *rand.Rand) map[string]plan.Value {
	taken := map[string]plan.Value{}
	for _, part := range []struct {
		name  string
		table []measure.Measure
	}{{"bodice", measure.Keys}, {"skirt", measure.Skirt}, {"sleeve", measure.Sleeve}} {
		for _, m := range part.table {
			needed := part.name == "bodice" && (m.Key == measure.BustGirth || m.Key == measure.WaistGirth || m.Key == measure.BackWaist)
			if needed || rnd.Float64() < 0.4 {
				taken["garment."+part.name+"."+string(m.Key)] = plan.Value{Value: m.Min + (m.Max-m.Min)*rnd.Float64()*rnd.Float64()}
			}
		}
	}
	return taken
}
