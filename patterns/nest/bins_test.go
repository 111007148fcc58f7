package nest_test

import (
	"testing"

	"understructure/geometry/plane"
	"understructure/patterns/nest"
)

const plankLength, plankWidth = 1200, 600

// slices are 24 slices of a foam figure; see testdata/nesting/README.md.
func slicesOf(t testing.TB) []nest.Piece { return read(t, "slices").pieces() }

// Simulated annealing of a minute laid 24 slices of such sizes on 0.80 of a strip (measured for this project, not published).
func TestSlicesOnStrip(t *testing.T) {
	pieces := slicesOf(t)
	l, err := nest.Strip(t.Context(), pieces, plankWidth, nest.Options{Slack: nest.MostSlack})
	if err != nil {
		t.Fatal(err)
	}
	judge(t, l, pieces, func(k int) plane.Ring { return box(l.Bins[k].Length+1e-6, plankWidth) }, 0)
	t.Logf("utilisation %.4f of %.1f mm", l.Bins[0].Utilisation, l.Bins[0].Length)
	if u := l.Bins[0].Utilisation; u < 0.80 {
		t.Errorf("utilisation %.4f, want 0.80", u)
	}
}

func TestSlicesOnPlanks(t *testing.T) {
	pieces := slicesOf(t)
	l, err := nest.Bins(t.Context(), pieces, []nest.Stock{nest.Sheet("plank", plankLength, plankWidth, 0)}, nest.Options{Slack: nest.MostSlack})
	if err != nil {
		t.Fatal(err)
	}
	judge(t, l, pieces, func(int) plane.Ring { return box(plankLength, plankWidth) }, 0)
	t.Logf("%d planks: %+v", len(l.Bins), l.Bins)
	if len(l.Bins) != 2 {
		t.Errorf("%d planks, want 2", len(l.Bins))
	}
}

func BenchmarkSlices(b *testing.B) {
	pieces := slicesOf(b)
	var u float64
	var planks int
	for b.Loop() {
		l, err := nest.Strip(b.Context(), pieces, plankWidth, nest.Options{Slack: nest.MostSlack})
		if err != nil {
			b.Fatal(err)
		}
		u = l.Bins[0].Utilisation
		if l, err = nest.Bins(b.Context(), pieces, []nest.Stock{nest.Sheet("plank", plankLength, plankWidth, 0)}, nest.Options{Slack: nest.MostSlack}); err != nil {
			b.Fatal(err)
		}
		planks = len(l.Bins)
	}
	b.ReportMetric(100*u, "%")
	b.ReportMetric(float64(planks), "planks")
}

// A piece as long as its stock fits wherever on the plane it was drawn, though there its length is longer by a rounding.
func TestAPieceAsLongAsItsStockFits(t *testing.T) {
	for _, y := range []float64{0, 177.3448, 647.3448, -1e5 / 3} {
		p := nest.Piece{ID: "strip", Count: 1, Outline: plane.Ring{{Y: y}, {X: 20, Y: y}, {X: 20, Y: y + 250}, {Y: y + 250}}}
		l, err := nest.Bins(t.Context(), []nest.Piece{p}, []nest.Stock{nest.Sheet("sheet", 20, 250, 0)}, nest.Options{})
		if err != nil || len(l.Placements) != 1 {
			t.Errorf("from %g: %d laid, %v", y, len(l.Placements), err)
		}
	}
}
