package ui

import (
	"strings"
	"testing"

	"understructure/app/record"
)

func TestTheSkirtIsSeenWithWhatHoldsIt(t *testing.T) {
	b := demoBench(t)
	b.places.goTo("Skirt")
	p := b.places.all[b.places.chosen].(*skirtPlace)
	if row, ok := p.falls.Row("front"); !ok || row.Numbers[0] != "101.0" {
		t.Errorf("the front hangs %v", row)
	}
	if !strings.Contains(p.words.Text, "never a verdict") || !p.beside.Visible() {
		t.Errorf("said: %.80q", p.words.Text)
	}
	p.choices[0].pick.choose(record.NoSupport)
	b.settle()
	if b.doc.Record().Mount.Skirt.Support != record.NoSupport {
		t.Error("the support is not chosen")
	}
	b.doc.Undo()
	if b.doc.Record().Mount.Skirt.Support == record.NoSupport {
		t.Error("the choice is not one step")
	}
}

func TestTheSleeveIsListedBesideItsArm(t *testing.T) {
	b := demoBench(t)
	b.places.goTo("Sleeves")
	p := b.places.all[b.places.chosen].(*sleevePlace)
	rows := 0
	for _, x := range []string{"−13.0", "43.0"} {
		if row, ok := p.girths.Row(x); ok && len(row.Numbers) == 3 && !row.Strong {
			rows++
		}
	}
	if rows != 2 {
		t.Error("the ends of the sleeve are not listed, or would not pass")
	}
}

func TestAGarmentWithoutASkirtShowsNone(t *testing.T) {
	b := newBench(t)
	b.places.goTo("Skirt")
	if p := b.places.all[b.places.chosen].(*skirtPlace); p.beside.Visible() {
		t.Error("a skirt is shown that was not measured")
	}
}
