package pipeline

import (
	"math"
	"slices"
	"strings"
	"testing"

	"understructure/app/record"
	"understructure/patterns/plan"
)

// near wants two numbers to be as good as the same.
func near(t *testing.T, what string, got, want, off float64) {
	t.Helper()
	if !(math.Abs(got-want) <= off) {
		t.Errorf("%s is %g, want %g", what, got, want)
	}
}

func material(t *testing.T, p plan.Plan, name string) plan.Material {
	t.Helper()
	i := slices.IndexFunc(p.Materials, func(m plan.Material) bool { return m.Name == name })
	if i < 0 {
		t.Fatalf("no %s among %v", name, p.Materials)
	}
	return p.Materials[i]
}

// In cm: two planks of 120 by 60 by 5 are to be had at 48.50, an offcut of 60 by 30 is in store, wadding lies 100 cm wide.
const stocked = `"planks": [{"thickness": 5, "length": 120, "width": 60, "price": 48.5}], "offcuts": [{"thickness": 5, "length": 60, "width": 30}],
	"prices": {"currency": "EUR", "wadding": 4, "pole": 10}, "cover": {"thickness": 0.1, "width": 140}, "wadding": {"thickness": 0.6, "width": 100}`

func stockedPlan(t *testing.T) (record.Record, plan.Plan) {
	t.Helper()
	r, err := record.Decode(strings.NewReader(`{"understructure": 1, "unit": "cm", "garment": {"bodice":
		{"bust_girth": 85, "waist_girth": 62, "back_waist_length": 38}}, "mount": {"build": "slices", ` + stocked + `}}`))
	if err != nil {
		t.Fatal(err)
	}
	p, err := Whole(t.Context(), r, nil)
	if err != nil {
		t.Fatal(err)
	}
	return r, p
}

// Every sum is made anew here from the pieces and the layouts, with the densities of package fit: foam weighs 35 kg/m³, wadding 56.
func TestMaterialsAreWhatTheLayoutsHave(t *testing.T) {
	_, p := stockedPlan(t)
	foam, volume, wadding := 0.0, 0.0, 0.0
	for _, q := range p.Pieces {
		a := math.Abs(q.CutLine().Area()) * float64(q.Count)
		switch q.Material[:5] {
		case "plank":
			a = q.Area()
			foam, volume = foam+a, volume+a*q.Thickness
		case "waddi":
			wadding += a
		}
	}
	offcut := material(t, p, "offcut of closed-cell polyethylene plank, 50 × 600 × 300 mm")
	plank := material(t, p, "closed-cell polyethylene plank, 50 × 1200 × 600 mm")
	near(t, "masses of the foam", offcut.MassKg+plank.MassKg, 35*volume*1e-9, 0.002)
	if offcut.Unit != "offcuts" || *offcut.WithWaste != 1 || offcut.Cost != nil {
		t.Errorf("%+v", offcut)
	}
	planks := 0.0
	for _, l := range p.Layouts {
		if l.Kind == plan.OnPlank {
			planks++
		}
	}
	if *plank.WithWaste != planks || *plank.Cost != 48.5*planks || plank.Currency != "EUR" || plank.Quantity > planks {
		t.Errorf("%+v for %g planks", plank, planks)
	}
	if p.Layouts[0].Kind != plan.OnOffcut {
		t.Errorf("the first stock to be used is %q", p.Layouts[0].Stock)
	}

	w := material(t, p, "needle-punched polyester wadding, 6 mm")
	near(t, "wadding", w.Quantity, wadding*1e-6, 0.001)
	near(t, "mass of the wadding", w.MassKg, 56*wadding*6e-9, 0.001)
	i := slices.IndexFunc(p.Layouts, func(l plan.Layout) bool { return l.Stock == w.Name })
	near(t, "wadding off the roll", *w.WithWaste, p.Layouts[i].Length*1000*1e-6, 0.001)
	near(t, "cost of the wadding", *w.Cost, 4**w.WithWaste, 0.006)
	if p.Layouts[i].Width != 1000 || *w.WithWaste < w.Quantity {
		t.Errorf("%+v off %+v", w, p.Layouts[i])
	}
	pole := material(t, p, "pole, 32 mm across")
	near(t, "cost of the pole", *pole.Cost, 10*pole.Quantity, 0.006)
	if c := material(t, p, coverName); c.Quantity <= 0 || c.Cost != nil || *c.WithWaste < c.Quantity {
		t.Errorf("%+v", c)
	}
	for _, m := range p.Materials {
		if m.Asks == "" {
			t.Errorf("nothing is asked of %s", m.Name)
		}
	}
}

// Every piece is laid once for each of its copies, or named in a warning.
func TestEveryPieceIsLaid(t *testing.T) {
	r, p := stockedPlan(t)
	count := map[string]int{}
	for _, l := range p.Layouts {
		for _, q := range l.Places {
			count[q.Piece]++
		}
	}
	for _, q := range p.Pieces {
		if q.Material != "acid-free card" && count[q.ID] != q.Count {
			t.Errorf("%s is laid %d times, want %d", q.ID, count[q.ID], q.Count)
		}
	}
	for _, l := range p.Layouts {
		material(t, p, l.Stock)
	}

	one, small := 1.0, 120.0
	r.Mount.Planks = []record.Sheet{{Thickness: 50, Length: 200, Width: 150, Count: &one}}
	r.Mount.Offcuts = nil
	r.Mount.Plank = &record.Plank{Length: &small, Width: &small}
	before := len(p.Warnings)
	q, err := Lay(t.Context(), r, p, nil)
	if err != nil {
		t.Fatal(err)
	}
	if len(q.Warnings) == before || q.Warnings[before].Code != "no-room" || len(p.Warnings) != before {
		t.Errorf("warnings %v", q.Warnings[before:])
	}
}

// A plank that never runs out takes the place of the default; one that does only goes before it.
func TestTheUsualPlankIsStockUnlessAnotherIs(t *testing.T) {
	count, length := 2.0, 2000.0
	size := record.Sheet{Thickness: 50, Length: 2400, Width: 1200}
	for _, c := range []struct {
		name  string
		mount record.Mount
		want  []float64 // lengths in order
	}{
		{"nothing said", record.Mount{}, []float64{1200}},
		{"another without end", record.Mount{Planks: []record.Sheet{size}}, []float64{2400}},
		{"two of another", record.Mount{Planks: []record.Sheet{{Thickness: 50, Length: 2400, Width: 1200, Count: &count}}}, []float64{2400, 1200}},
		{"both chosen", record.Mount{Planks: []record.Sheet{size}, Plank: &record.Plank{Length: &length}}, []float64{2400, 2000}},
		{"another thickness", record.Mount{Planks: []record.Sheet{{Thickness: 25, Length: 900, Width: 600}}}, []float64{900, 1200}},
	} {
		s, _ := c.mount.Stocked("")
		var got []float64
		for _, p := range planks(c.mount, s) {
			got = append(got, p.Length)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}
