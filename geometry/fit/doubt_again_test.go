package fit

import (
	"math"
	"math/rand/v2"
	"testing"

	"understructure/geometry/measure"
)

// Two readings of which the smaller is kept: on average it lies σ/√π below the truth (David and Nagaraja, Order
// Statistics, 3rd ed. 2003, chapter 3), here by half of what lies between them; their mean is uncertain by σ/√2.
func TestReadingsTellOfThemselves(t *testing.T) {
	one := Read(600, 3)
	if one != (Known{0, 3, 3}) {
		t.Errorf("one reading: %+v", one)
	}
	// Two readings 2·3/√π apart are as far apart as two usually are; s² = (4·9 + 2·(3/√π)²)/5 (derived).
	half := 3 / math.Sqrt(math.Pi)
	two := Read(600, 3, 600+2*half, 600)
	near(t, "off", two.Off, half, 1e-9)
	near(t, "once", two.Once, math.Sqrt((36+2*half*half)/5), 1e-9)
	near(t, "sd", two.SD, two.Once/math.Sqrt2, 1e-12)
	if wide := Read(600, 3, 600, 640); !(wide.Once > 10) || wide.Off != 20 {
		t.Errorf("readings 40 mm apart are no evidence: %+v", wide)
	}
	if same := Read(600, 3, 600, 600, 600); !(same.Once < 3 && same.Once > 2) {
		t.Errorf("readings that agree are proof: %+v", same)
	}
	if exact := Read(600, 0, 600, 600); exact.SD != 0 || exact.Off != 0 {
		t.Errorf("readings without error: %+v", exact)
	}
}

// The mean of what lies between the smaller of two readings and the truth is σ/√π, drawn 200 000 times (seeded).
func TestTheSmallerOfTwoLiesBelow(t *testing.T) {
	g := rand.New(rand.NewPCG(1, 2))
	const n, σ = 200000, 3.0
	kept, off := 0.0, 0.0
	for range n {
		a, b := σ*g.NormFloat64(), σ*g.NormFloat64()
		kept += math.Min(a, b) / n
		off += Read(math.Min(a, b), σ, a, b).Off / n
	}
	near(t, "the smaller", -kept, σ/math.Sqrt(math.Pi), 0.03)
	near(t, "what is said of it", off, σ/math.Sqrt(math.Pi), 0.03)
}

// One level and one error, read once more and the smaller kept: the garment strains where both are too large by more than
// the clearance, Φ(−c/σ)², and so does a form of which the larger is kept; of which the smaller is kept it strains where
// either is too small, 1 − (1 − Φ(−c/σ))² (derived). The mean of two slopes leaves Φ(−c√2/σ).
func TestOneMoreReading(t *testing.T) {
	for _, c := range []float64{0, 1, 3, 6} {
		p := Φ(-c / 3)
		garment := Doubt{[]float64{c}, own(3)}
		near(t, "garment", garment.after(0), p*p, 1e-6)
		form := Doubt{[]float64{c}, own(3)}
		form.Sources[0].Effect[0] = -1
		near(t, "form, the smaller kept", form.after(0), 1-(1-p)*(1-p), 1e-6)
		form.Sources[0].Kept = measure.Largest
		near(t, "form", form.after(0), p*p, 1e-6)
		slope := Doubt{[]float64{c}, own(3)}
		slope.Sources[0].Kept = measure.Mean
		near(t, "slope", slope.after(0), Φ(-c*math.Sqrt2/3), 1e-9)
		hip := Doubt{[]float64{c}, own(30)}
		hip.Sources[0].Taken, hip.Sources[0].Known.Once = false, 3
		near(t, "what was not taken", hip.after(0), p, 1e-9)
	}
}

// With other errors beside it, and after two readings already taken: drawn 200 000 times (seeded), the mount made anew for the smaller.
func TestOneMoreReadingAgainstDrawing(t *testing.T) {
	const n = 200000
	for seed := range uint64(4) {
		d := drawn(seed)
		again := -1
		for i, s := range d.Sources {
			if s.Key == "girth" && s.Effect[4] != 0 {
				again = i
				break
			}
		}
		s := &d.Sources[again]
		s.Known = Read(0, 6, 0, 7)
		d.Clearance[4] = 3
		g := rand.New(rand.NewPCG(seed, 7))
		strained := 0
		for range n {
			truth := s.Known.Off + s.Known.SD*g.NormFloat64()
			kept := math.Min(0, truth+s.Known.Once*g.NormFloat64())
			c := append([]float64(nil), d.Clearance...)
			for i, o := range d.Sources {
				e := o.Known.SD * g.NormFloat64()
				if i == again {
					e = truth - kept
				}
				for l := range c {
					c[l] += o.Effect[l] * e
				}
			}
			for l := range c {
				if c[l] < 0 {
					strained++
					break
				}
			}
		}
		p := d.after(again)
		near(t, "anywhere, after", float64(strained)/n, p, count(p, n)+p/30)
		if before := d.Anywhere(); !(p < before) {
			t.Errorf("one more reading makes strain likelier: %.4f to %.4f", before, p)
		}
	}
}

// What the doubt comes from is named first, with its share: of a variance of 9² + 2² + 1² the first makes 81 parts of 86.
func TestWhatToMeasureAgainFirst(t *testing.T) {
	d := Doubt{[]float64{10}, []Source{
		{Key: "b", Taken: true, Known: Read(0, 2), Effect: []float64{1}},
		{Known: Known{SD: 1}, Effect: []float64{-1}},
		{Key: "a", Taken: true, Known: Read(0, 9), Effect: []float64{1}},
		{Key: "form", Taken: true, Known: Read(0, 0.1), Effect: []float64{-1}},
	}}
	got := d.Remeasure(5)
	if len(got) != 2 || got[0].Source != 2 || got[1].Source != 0 {
		t.Fatalf("%+v", got)
	}
	near(t, "share", got[0].Share, 81/86.01, 1e-9)
	if !(got[0].Chance < got[1].Chance && got[1].Chance < d.Anywhere()) {
		t.Errorf("%+v of %.4f", got, d.Anywhere())
	}
	if sure := (Doubt{[]float64{10}, own(0)}).Remeasure(5); len(sure) != 0 {
		t.Errorf("without doubt nothing helps, said %+v", sure)
	}
}
