package document

import (
	"context"
	"reflect"
	"slices"
	"testing"

	"understructure/app/record"
	"understructure/patterns/plan"
)

func stockText(t *testing.T, path string) Text {
	t.Helper()
	all := StockTexts()
	i := slices.IndexFunc(all, func(x Text) bool { return x.Path == path })
	if i < 0 {
		t.Fatal(path)
	}
	return all[i]
}

func TestFoamIsWrittenInALine(t *testing.T) {
	count, price := 2.0, 48.5
	r := record.Record{Unit: "cm"}
	planks, offcuts := stockText(t, "mount.planks"), stockText(t, "mount.offcuts")
	if err := planks.put(&r, "5 × 240 × 120 (2) @ 48,50; 2,5x120*60;"); err != nil {
		t.Fatal(err)
	}
	want := []record.Sheet{{Thickness: 50, Length: 2400, Width: 1200, Count: &count, Price: &price}, {Thickness: 25, Length: 1200, Width: 600}}
	if !reflect.DeepEqual(r.Mount.Planks, want) {
		t.Errorf("%+v", r.Mount.Planks)
	}
	if got := planks.Get(r); got != "5 × 240 × 120 (2) @ 48.5; 2.5 × 120 × 60" {
		t.Errorf("%q", got)
	}
	if err := offcuts.put(&r, "2 in × 20 in × 15½ in"); err != nil || r.Mount.Offcuts[0] != (record.Offcut{Thickness: 50.8, Length: 508, Width: 393.7}) {
		t.Errorf("%+v, %v", r.Mount.Offcuts, err)
	}
	for _, text := range []string{"5", "5 × 240", "5 × a × 120", "5 × 240 × 120 (two)", "5 × 240 × 120 @ much", "× × ×", "5 × 240 × 120 × 60"} {
		if planks.put(&r, text) == nil {
			t.Errorf("%q is taken for %+v", text, r.Mount.Planks)
		}
	}
	if offcuts.put(&r, "5 × 240 × 120 (2)") == nil {
		t.Error("an offcut is there twice")
	}
	if err := planks.put(&r, ""); err != nil || r.Mount.Planks != nil || planks.Get(r) != "" {
		t.Errorf("%+v, %v", r.Mount.Planks, err)
	}
}

func TestStockIsUndone(t *testing.T) {
	d := New(Rooms{Post: func(func()) {}, Compute: func(context.Context, record.Record) (plan.Plan, error) { return plan.Plan{}, nil }})
	d.Start("invented", record.Record{Unit: "cm"})
	before := d.Record()
	if err := d.SetText(stockText(t, "mount.offcuts"), "5 × 60 × 30"); err != nil {
		t.Fatal(err)
	}
	d.Settle()
	if err := d.SetText(stockText(t, "mount.offcuts"), "5 × 600 × 300"); err == nil {
		t.Error("an offcut of 6 m is taken")
	}
	d.Undo()
	if !reflect.DeepEqual(d.Record().Mount, before.Mount) {
		t.Errorf("%+v", d.Record().Mount)
	}
}
