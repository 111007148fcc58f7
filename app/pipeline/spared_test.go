package pipeline

import (
	"context"
	"math"
	"slices"
	"testing"

	"understructure/app/record"
	"understructure/patterns/plan"
)

// A straight slope to nothing on either side; where two overlap, the greater counts (derived).
func TestSparedRunsOut(t *testing.T) {
	s := spared{{100, 6}, {130, 10}}
	for z, want := range map[float64]float64{100: 6, 40: 0, 70: 3, 130: 10, 190: 0, 160: 5, 115: 7.5, 1000: 0} {
		if got := s.at(z); math.Abs(got-want) > 1e-12 {
			t.Errorf("at %g: %g, want %g", z, got, want)
		}
	}
	if got := spared(nil).at(0); got != 0 {
		t.Errorf("nothing is spared, yet %g", got)
	}
}

// One thick wadding and no cover on a form made for thinner ones: reckoned it fits, and its pieces made anew are too large. It is
// drawn smaller where that is so, which is said, and no height of the mount made anew strains.
func TestAMountWhosePiecesAreTooLargeIsDrawnSmaller(t *testing.T) {
	r := demo(t, "demo-1872-bodice.json")
	nothing := 0.0
	r.Mount.Wadding, r.Mount.Cover = []record.Wadding{{Thickness: 25}}, &nothing
	first, _, err := start(r, nil)
	if err != nil {
		t.Fatal(err)
	}
	if err := first.build(); err != nil {
		t.Fatal(err)
	}
	if err := first.cut(context.Background()); err != nil {
		t.Fatal(err)
	}
	if first.asBuilt(); len(first.strains) == 0 {
		t.Fatal("the mount fits at once, so that nothing is tried here")
	}
	p, err := Run(context.Background(), r, nil)
	if err != nil {
		t.Fatal(err)
	}
	if err := p.Refused(); err != nil {
		t.Errorf("refused: %v", err)
	}
	i := slices.IndexFunc(p.Warnings, func(w plan.Warning) bool { return w.Code == "drawn-smaller" })
	if i < 0 {
		t.Fatal("nothing is said of it")
	}
	if w := p.Warnings[i]; w.Amount < spareMore || w.Amount > 20 || w.Level == "" {
		t.Errorf("said of it: %+v", w)
	}
}
