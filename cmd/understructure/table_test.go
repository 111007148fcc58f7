package main

import (
	"strings"
	"testing"

	"understructure/patterns/plan"
)

func TestTheFitSaysHowTheSkirtHangs(t *testing.T) {
	girth, gather, little, much := 2900.0, 1.524, 15.0, 400.0
	var b strings.Builder
	table(&b, plan.Plan{Skirt: &plan.Skirt{
		Falls:  []plan.Fall{{Name: "front", Length: 1010, Reach: 104, Above: 20}},
		Hem:    plan.Hem{Support: 1902, Girth: &girth, Gather: &gather},
		Girths: []plan.SkirtGirth{{Height: 100, Fullness: &much}, {Height: 980, Fullness: &little}, {Height: 1020}},
	}}, "cm")
	for _, want := range []string{"front   101.0   10.4          2.0    0.0", "at the hem 190.2, hem of the garment 290.0: 1.52 times",
		"Least room between garment and support: 1.5, 98.0 above the floor."} {
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
