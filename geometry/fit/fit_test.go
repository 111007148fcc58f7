package fit

import (
	"math"
	"math/rand/v2"
	"testing"
)

// 10 degrees: half base ≥ 0.176 × height of the centre of gravity; 13 % at 1.5 m: 195 mm
// (derived from IEC 60335-1 and IEC 62368-1).
func TestStand(t *testing.T) {
	f := Stand([]Part{{4, 1100}, {2, 800}}, 1600)
	if math.Abs(f.Centre-1000) > 1e-9 || math.Abs(f.Tilt-176.3) > 0.1 || math.Abs(f.Push-195) > 1e-9 {
		t.Errorf("%+v", f)
	}
	if f := Stand([]Part{{3, 500}}, 1000); math.Abs(f.Push-130) > 1e-9 {
		t.Errorf("a shorter object is pushed at its top: %+v", f)
	}
}

// The chance agrees with drawing the errors one by one (seeded Monte Carlo).
func TestStrainChanceAgainstDrawing(t *testing.T) {
	sheets := []struct{ spread, share float64 }{{1, 1}, {1, 0.5}, {0.5, 1}}
	d := Doubt{Clearance: []float64{15}, Sources: []Source{shared(3, 1), shared(3, -1)}}
	for _, s := range sheets {
		d.Sources = append(d.Sources, shared(s.spread, -2*math.Pi*s.share))
	}
	rng := rand.New(rand.NewPCG(7, 11))
	const n = 400000
	strained := 0
	for range n {
		c := 15 + 3*rng.NormFloat64() - 3*rng.NormFloat64()
		for _, s := range sheets {
			c -= 2 * math.Pi * s.share * s.spread * rng.NormFloat64()
		}
		if c < 0 {
			strained++
		}
	}
	got, want := StrainChance(15, d.SD(0)), float64(strained)/n
	if math.Abs(got-want) > 4*math.Sqrt(want/n) {
		t.Errorf("chance %.5f, drawn %.5f", got, want)
	}
	if StrainChance(0, 0) != 0 || StrainChance(-1, 0) != 1 || StrainChance(0, 5) != 0.5 {
		t.Error("edges of the chance")
	}
}
