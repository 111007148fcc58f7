package ui

import (
	"strings"
	"testing"

	"understructure/app/ui/control"
	"understructure/patterns/plan"
)

// The readings that most of the doubt comes from are marked, no more than three, and say why where they are in hand; where
// nothing may strain nothing is marked.
func TestWhatToMeasureAgainIsMarked(t *testing.T) {
	doubtful := plan.Doubt{ChanceAnywhere: 0.12, Remeasure: []plan.Remeasure{
		{Key: waist, Taken: true, Share: 0.5, ChanceAfter: 0.05}, {Key: "garment.bodice.hip_girth", Share: 0.3, ChanceAfter: 0.06},
		{Key: bust, Taken: true, Share: 0.01, ChanceAfter: 0.1}, {Key: "garment.bodice.side_length", Taken: true, Share: 0.05, ChanceAfter: 0.11},
		{Key: "form.bodice.hip_girth", Share: 0.05, ChanceAfter: 0.115},
	}}
	b := newBench(t)
	said := sayings(b.doc)
	said.remeasure, said.anywhere = marked(doubtful), doubtful.ChanceAnywhere
	place := b.measuring()
	place.garment.fill(said)
	place.form.fill(said)
	for key, want := range map[string]string{waist: "measure again", "garment.bodice.hip_girth": "measure", bust: "", "garment.bodice.side_length": "measure again", "form.bodice.hip_girth": ""} {
		if got := place.garment.list.Again(key) + place.form.list.Again(key); got != want && !(want != "" && got == "•") {
			t.Errorf("%s is marked %q, want %q", key, got, want)
		}
	}
	m := control.Measure{Key: waist}
	said.again(&m)
	if !strings.Contains(m.Why, "50 %") || !strings.Contains(m.Why, "12.0 %, then 5.0 %") {
		t.Errorf("said of the waist: %s", m.Why)
	}
	if sure := marked(plan.Doubt{ChanceAnywhere: 0.0001, Remeasure: doubtful.Remeasure}); len(sure) != 0 {
		t.Errorf("where nothing may strain these are marked: %v", sure)
	}
}

// The mount that is tried on says beside each level how likely it strains, and with which ease that would be 1 %.
func TestTheFittingKnowsTheChance(t *testing.T) {
	risk, enough := 0.034, 21.0
	_, p := fittingBench(t)
	p.stand.table([]plan.Level{{Name: "waist", StrainChance: &risk, EaseForOnePercent: &enough}}, nil, "cm")
	row, ok := p.stand.girths.Row("waist")
	if got := strings.Join(row.Numbers, " "); !ok || !strings.HasSuffix(got, "3.4 % 2.1") {
		t.Errorf("the waist says %q", got)
	}
}
