package condition

import (
	"math/rand/v2"
	"testing"

	"understructure/geometry/measure"
	"understructure/patterns/leaf"
	"understructure/patterns/plan"
)

// Whatever a record may hold has a sheet on which every word can be read: readings anywhere in their ranges, most of them left
// out.
func TestWhateverARecordHoldsHasASheet(t *testing.T) {
	rnd := rand.New(rand.NewPCG(11, 4))
	for range 150 {
		p := plan.Plan{Taken: map[string]plan.Value{}}
		for _, part := range []struct {
			name  string
			table []measure.Measure
		}{{"bodice", measure.Keys}, {"skirt", measure.Skirt}, {"sleeve", measure.Sleeve}} {
			for _, m := range part.table {
				needed := part.name == "bodice" && (m.Key == measure.BustGirth || m.Key == measure.WaistGirth || m.Key == measure.BackWaist)
				if needed || rnd.Float64() < 0.4 {
					p.Taken["garment."+part.name+"."+string(m.Key)] = plan.Value{Value: m.Min + (m.Max-m.Min)*rnd.Float64()*rnd.Float64()}
				}
			}
		}
		_, pages := drawn(t, Of(p))
		for i := range pages {
			for _, f := range pages[i].Faults(leaf.Paper) {
				t.Errorf("page %d: %s, of %v", i+1, f, p.Taken)
			}
		}
		if t.Failed() {
			return
		}
	}
}
