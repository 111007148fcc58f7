package pipeline_test

import (
	"math"
	"strings"
	"testing"

	"understructure/geometry/measure"
	"understructure/geometry/plane"
)

// outside is how far the corners of one outline lie outside another at most, mm.
func outside(a, b plane.Ring) (most float64) {
	for _, q := range a {
		if b.Contains(q) {
			continue
		}
		d := math.Inf(1)
		for i, p := range b {
			d = math.Min(d, plane.Nearest(q, p, b[(i+1)%len(b)]).Dist(q))
		}
		most = math.Max(most, d)
	}
	return most
}

// The demonstration's form is broader at the bust points than the bodice as drawn, though its tape is 6 cm
// shorter: what the outlines of the plan show is said, with the amount, and on which sides.
func TestAFormThatStandsOutIsNamed(t *testing.T) {
	p := demonstration(t, nil)
	w, ok := warning(p, "form-stands-out", measure.Bust)
	if !ok {
		t.Fatal("nothing is said of the form")
	}
	most := 0.0
	for i := range p.Surface.Heights {
		most = math.Max(most, outside(p.Surface.Form[i], p.Surface.Garment[i]))
	}
	if math.Abs(w.Amount-most) > 0.5 {
		t.Errorf("said to stand out by %.2f mm, the outlines show %.2f", w.Amount, most)
	}
	if !strings.Contains(w.Message, "in front on both sides") {
		t.Errorf("%q does not say where", w.Message)
	}
	if _, tooBig := warning(p, "form-too-big", measure.Bust); tooBig {
		t.Error("a form with room for the tape is called too big")
	}
}

// With 5 cm less round the bust the same form stands inside.
func TestAFormInsideIsNotNamed(t *testing.T) {
	p := demonstration(t, map[measure.Key]float64{measure.BustGirth: -50})
	if w, ok := warning(p, "form-stands-out", measure.Bust); ok {
		t.Errorf("said: %s", w.Message)
	}
}
