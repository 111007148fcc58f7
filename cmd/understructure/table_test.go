package main

import (
	"strings"
	"testing"

	"understructure/patterns/plan"
)

func TestTheFitSaysHowTheSkirtHangs(t *testing.T) {
	girth, gather := 2900.0, 1.524
	var b strings.Builder
	table(&b, plan.Plan{Skirt: &plan.Skirt{
		Falls: []plan.Fall{{Name: "front", Length: 1010, Reach: 104, Above: 20}},
		Hem:   plan.Hem{Support: 1902, Girth: &girth, Gather: &gather},
	}}, "cm")
	for _, want := range []string{"front   101.0   10.4          2.0    0.0", "at the hem 190.2, hem of the garment 290.0: 1.52 times"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("the fit does not say %q:\n%s", want, b.String())
		}
	}
	b.Reset()
	table(&b, plan.Plan{}, "cm")
	if strings.Contains(b.String(), "skirt") {
		t.Error("a skirt that was not measured is in the fit")
	}
}
