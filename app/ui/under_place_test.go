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
	if said := strings.Join(p.words.said, " "); !strings.Contains(said, "never a verdict") || !strings.Contains(said, "tube petticoat, bustle frame") {
		t.Errorf("said: %q", said)
	}
	if row, ok := p.years.Row("1869–75"); !ok || !row.Strong || row.Numbers[2] != "0.0" {
		t.Errorf("the years of the demonstration stand as %v", row)
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

func TestTheSleeveIsDrawnBesideItsGirths(t *testing.T) {
	b := demoBench(t)
	b.places.goTo("Sleeves")
	p := b.places.all[b.places.chosen].(*sleevePlace)
	for name, inside := range map[string]string{"shoulder seam": "31.0", "armhole": "31.0", "elbow": "27.0", "end": "20.0"} {
		if row, ok := p.drawn.Row(name); !ok || row.Numbers[0] != inside || row.Strong {
			t.Errorf("%s is %+v", name, row)
		}
	}
	if !strings.Contains(strings.Join(p.words.said, " "), "soft arm") {
		t.Errorf("said: %q", p.words.said)
	}
	p.asked.pick.choose(yes)
	b.settle()
	if !b.doc.Record().Mount.Pads.Fill || !strings.Contains(strings.Join(p.words.said, " "), "toile") {
		t.Errorf("fills are not asked for: %q", p.words.said)
	}
	b.doc.Undo()
	if b.doc.Record().Mount.Pads.Fill {
		t.Error("the fills are not one step")
	}
}

func TestWhetherABandFastensIsKept(t *testing.T) {
	b := demoBench(t)
	b.places.goTo("Skirt")
	p := b.places.all[b.places.chosen].(*skirtPlace)
	if p.asked.pick.PlaceHolder != yes || p.asked.pick.Selected != "" {
		t.Errorf("%q, otherwise %q", p.asked.pick.Selected, p.asked.pick.PlaceHolder)
	}
	p.asked.pick.choose(no)
	b.settle()
	if v := b.doc.Record().Mount.Skirt.BandFastens; v == nil || *v {
		t.Errorf("it fastens: %v", v)
	}
}

func TestAGarmentWithoutASkirtShowsNone(t *testing.T) {
	b := newBench(t)
	for _, name := range []string{"Skirt", "Sleeves"} {
		b.places.goTo(name)
		var said []string
		switch p := b.places.all[b.places.chosen].(type) {
		case *skirtPlace:
			said = p.words.said
			if p.falls.Visible() {
				t.Error("a skirt is shown that was not measured")
			}
		case *sleevePlace:
			said = p.words.said
		}
		if len(said) != 1 || !strings.HasPrefix(said[0], "Nothing was taken") {
			t.Errorf("%s: said %q", name, said)
		}
	}
}
