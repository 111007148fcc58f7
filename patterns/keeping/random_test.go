package keeping

import (
	"math/rand/v2"
	"testing"

	"understructure/patterns/leaf"
	"understructure/patterns/plan"
	"understructure/patterns/plantest"
)

// Whatever a record may hold has a sheet on which every word can be read: readings anywhere in their ranges, most of them left
// out, every strength and weight.
func TestWhateverARecordHoldsHasASheet(t *testing.T) {
	rnd := rand.New(rand.NewPCG(11, 4))
	for range 400 {
		p := plan.Plan{Taken: plantest.Taken(rnd)}
		p.Object.Strength = []string{"", "sound", "fair", "weak"}[rnd.IntN(4)]
		if kg := 20 * rnd.Float64() * rnd.Float64(); kg > 1 {
			p.Object.MassKg = &kg
		}
		_, pages := drawn(t, p)
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
