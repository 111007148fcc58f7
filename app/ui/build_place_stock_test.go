package ui

import (
	"context"
	"testing"

	"understructure/app/record"
	"understructure/patterns/plan"
)

// Two planks of one size of which 0.7 and 0.5 are used are 0.6 of both.
func TestUsageSumsUpPlanksOfOneSize(t *testing.T) {
	got := usage([]plan.Layout{
		{Kind: plan.OnOffcut, Stock: "offcut", Utilisation: 0.9}, {Kind: plan.OnPlank, Stock: "plank", Utilisation: 0.7}, {Kind: plan.OnPlank, Stock: "plank", Utilisation: 0.5},
		{Kind: plan.OnRoll, Stock: "wadding", Length: 1234, Width: 1500, Utilisation: 0.8},
	})
	const want = "1 of offcut: 90 % used\n2 of plank: 60 % used\n1.23 m of wadding: 80 % used"
	if got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestPiecesAreLaidOnceForWhoLooksAtTheBuildPlace(t *testing.T) {
	asked, told := 0, make(chan func(), 1)
	b := newPrintBench(t)
	build := b.building()
	s := build.stock
	s.lay = func(_ context.Context, _ record.Record, p plan.Plan, _ func(float64)) (plan.Plan, error) {
		asked++
		p.Layouts = []plan.Layout{{Kind: plan.OnPlank, Stock: "plank", Utilisation: 0.7}}
		return p, nil
	}
	s.post = func(f func()) { told <- f }
	build.show()
	if s.used.Visible() {
		t.Errorf("says %q before anything is laid", s.used.Text)
	}
	(<-told)()
	build.show()
	if asked != 1 || !s.used.Visible() || s.used.Text != "1 of plank: 70 % used" {
		t.Errorf("asked %d times, says %q", asked, s.used.Text)
	}
}

func TestOffcutsAreTypedAndUndone(t *testing.T) {
	b := newPrintBench(t)
	build := b.building()
	row := build.stock.texts[1].row
	row.Entry().SetText("5 × 60 × 30; 5 × 40 × 20")
	row.OnDone()
	if got := b.doc.Record().Mount.Offcuts; len(got) != 2 || got[1].Width != 200 {
		t.Errorf("%+v", got)
	}
	b.doc.Undo()
	if got := b.doc.Record().Mount.Offcuts; len(got) != 0 {
		t.Errorf("not undone: %+v", got)
	}
}
