package report

import (
	"strings"
	"testing"

	"understructure/patterns/plan"
	"understructure/patterns/plantest"
)

func TestTheRecordHoldsSkirtAndCuttingTable(t *testing.T) {
	p := plantest.Plan()
	girth, gather := 2900.0, 1.52
	p.Skirt = &plan.Skirt{
		Falls:  []plan.Fall{{Name: "front", Length: 1010, Reach: 104, Above: 20}, {Name: "back", Length: 1190, Reach: 556, Train: 38}},
		Hem:    plan.Hem{Girth: &girth, Support: 1908, Gather: &gather},
		Dating: "The hem fits no year best. This is a help to dating, never a verdict.",
	}
	p.Cuts = []plan.Cut{{Part: "skirt", Name: "half hoop 1 of 4", Material: "hoop steel", Length: 466, Width: 4.8, Count: 2, Note: "tip the ends"}}
	p.Cuts = append(p.Cuts, p.Cuts[0])
	p.Cuts[1].Name = "half hoop 2 of 4"
	p.Cautions = []string{"Cap both ends of every cut steel."}
	got := text(t, record(t, p))
	for _, want := range []string{
		"front 1010 104 20 0", "back 1190 556 0 38", "2900 mm: 1.52 times as much", "never a verdict",
		"for the skirt half hoop 1 of 4, half hoop 2 of 4 hoop steel 466 5 4 tip the ends", "Cap both ends",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("the record does not say %q", want)
		}
	}
	if got := text(t, record(t, plantest.Plan())); strings.Contains(got, "Cutting table") || strings.Contains(got, "from the axis") {
		t.Error("a mount without a skirt has a cutting table, or a skirt")
	}
}
