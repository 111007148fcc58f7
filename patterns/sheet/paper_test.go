package sheet

import (
	"math"
	"testing"

	"understructure/patterns/plan"
)

// ISO 216:2007: each size is half of the one before, cut across, rounded down to whole millimetres;
// A0 has an area of one square metre and sides as 1 : √2. Letter and Tabloid are whole half inches
// (ANSI/ASME Y14.1).
func TestPapers(t *testing.T) {
	w, h := 841.0, 1189.0
	if math.Abs(w*h/1e6-1) > 1e-3 || math.Abs(h/w-math.Sqrt2) > 1e-3 {
		t.Fatal("A0 is not a square metre")
	}
	for _, name := range []string{"A0", "A1", "A2", "A3", "A4"} {
		p, ok := Named(name)
		if !ok || p.Width != w || p.Height != h {
			t.Errorf("%s = %v, want %g × %g", name, p, w, h)
		}
		w, h = math.Floor(h/2), w
	}
	for name, inches := range map[string][2]float64{"Letter": {8.5, 11}, "Tabloid": {11, 17}} {
		if p, _ := Named(name); math.Abs(p.Width-inches[0]*25.4) > 1e-9 || math.Abs(p.Height-inches[1]*25.4) > 1e-9 {
			t.Errorf("%s = %v, want %v inches", name, p, inches)
		}
	}
	for _, p := range Papers {
		if err := Check(p); err != nil {
			t.Errorf("%s: %v", p.Name, err)
		}
	}
	if _, ok := Named("A9"); ok {
		t.Error("there is no A9 here")
	}
}

func TestCheckRefuses(t *testing.T) {
	for _, p := range []plan.Paper{{Width: 100, Height: 300}, {Width: 200, Height: 100}, {Width: 200, Height: 5081}, {Width: math.NaN(), Height: 300}, {Width: math.Inf(1), Height: 300}, {}} {
		if Check(p) == nil {
			t.Errorf("%v is accepted", p)
		}
	}
}

func TestTileName(t *testing.T) {
	for want, at := range map[string][2]int{"A1": {0, 0}, "B3": {1, 2}, "Z10": {25, 9}, "AA1": {26, 0}, "AB2": {27, 1}, "AZ1": {51, 0}, "BA1": {52, 0}} {
		if got := TileName(at[0], at[1]); got != want {
			t.Errorf("TileName(%d, %d) = %s, want %s", at[0], at[1], got, want)
		}
	}
}
