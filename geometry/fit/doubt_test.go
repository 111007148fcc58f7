package fit

import (
	"math"
	"math/rand/v2"
	"testing"
)

// apart is a source of its own at each level, with these errors.
func own(sds ...float64) []Source {
	var out []Source
	for l, sd := range sds {
		effect := make([]float64, len(sds))
		effect[l] = 1
		out = append(out, Source{Key: "reading", Taken: true, Known: Read(0, sd), Effect: effect})
	}
	return out
}

// shared is one source that moves all levels.
func shared(sd float64, effect ...float64) Source {
	return Source{Known: Known{SD: sd}, Effect: effect}
}

// Φ is the normal distribution function (math.Erfc; M. Abramowitz, I. Stegun, Handbook of Mathematical Functions, 7.1.22 and table 26.1).
func Φ(x float64) float64 { return math.Erfc(-x/math.Sqrt2) / 2 }

// One level and one error: Φ(−clearance/σ) exactly, for that level and for anywhere. Table 26.1: Φ(−1) = 0.1586552539,
// Φ(−2) = 0.0227501319, Φ(−2.3263478740) = 0.01.
func TestOneLevelOneError(t *testing.T) {
	for _, c := range []struct{ clearance, sd, want float64 }{
		{3, 3, 0.1586552539}, {6, 3, 0.0227501319}, {0, 5, 0.5}, {-6, 3, 1 - 0.0227501319}, {2.3263478740 * 4, 4, 0.01},
		{0, 0, 0}, {1, 0, 0}, {-1, 0, 1},
	} {
		d := Doubt{[]float64{c.clearance}, own(c.sd)}
		near(t, "chance", d.Chance(0), c.want, 1e-9)
		near(t, "anywhere", d.Anywhere(), c.want, 1e-9)
	}
	d := Doubt{[]float64{9}, own(4)}
	near(t, "ease for 1 %", d.EaseFor(0, 0.01), 2.3263478740*4, 1e-6)
	near(t, "ease for all", d.EaseForAll(0.01), 2.3263478740*4, 0.01)
	near(t, "ease without doubt", Doubt{[]float64{9}, own(0)}.EaseForAll(0.01), 0, 0)
}

// Levels that err apart: 1 − Π(1 − p). Levels that err as one: the chance of the tightest.
func TestAnywhereAtTheEnds(t *testing.T) {
	d := Doubt{[]float64{4, 5, 6}, own(3, 3, 3)}
	want := 1 - (1-Φ(-4./3))*(1-Φ(-5./3))*(1-Φ(-2.))
	near(t, "apart", d.Anywhere(), want, 1e-6)
	d.Sources = []Source{shared(3, 1, 1, 1)}
	near(t, "together", d.Anywhere(), Φ(-4./3), 1e-6)
	near(t, "the ease of one for all", d.EaseForAll(0.01), 2.3263478740*3, 0.02)
	d.Sources = []Source{shared(3, 1, -1, 0)} // the one or the other
	near(t, "against each other", d.Anywhere(), Φ(-4./3)+Φ(-5./3), 1e-6)
	d.Clearance[2] = -1
	near(t, "a level that strains for sure", d.Anywhere(), 1, 0)
	near(t, "no level", Doubt{}.Anywhere(), 0, 0)
}

// Two errors with correlation ρ about no clearance: the chance that neither is negative is 1/4 + asin ρ/2π (W. F. Sheppard, 1899).
func TestSheppard(t *testing.T) {
	for _, ρ := range []float64{-0.9, -0.3, 0.1, 0.5, 0.8, 0.95, 0.999} {
		d := Doubt{[]float64{0, 0}, []Source{shared(math.Sqrt(math.Abs(ρ)), 1, math.Copysign(1, ρ))}}
		d.Sources = append(d.Sources, own(math.Sqrt(1-math.Abs(ρ)), math.Sqrt(1-math.Abs(ρ)))...)
		near(t, "either", d.Anywhere(), 1-(0.25+math.Asin(ρ)/(2*math.Pi)), 2e-4)
	}
}

// as drawn: a mount of nine levels with layers that end on the way, cover, readings and lengths that move neighbours.
func drawn(seed uint64) Doubt {
	g := rand.New(rand.NewPCG(seed, 5))
	const levels = 9
	d := Doubt{Clearance: make([]float64, levels)}
	for l := range d.Clearance {
		d.Clearance[l] = 12 + 14*g.Float64()
	}
	put := func(sd float64, key string, f func(l int) float64) {
		s := Source{Key: key, Taken: true, Known: Known{SD: sd, Once: sd}, Effect: make([]float64, levels)}
		for l := range s.Effect {
			s.Effect[l] = f(l)
		}
		d.Sources = append(d.Sources, s)
	}
	for range 1 + g.IntN(4) {
		lo, hi := g.IntN(levels), g.IntN(levels)
		put(1, "", func(l int) float64 {
			if l >= min(lo, hi) && l <= max(lo, hi) {
				return -2 * math.Pi * (0.4 + 0.6*g.Float64())
			}
			return 0
		})
	}
	put(0.17, "", func(int) float64 { return -2 * math.Pi })
	for at := range levels {
		for _, sign := range []float64{1, -1} {
			put(3, "girth", func(l int) float64 {
				if l == at {
					return sign
				}
				return 0
			})
			put(3, "length", func(l int) float64 {
				if l >= at && l < at+2 {
					return 1.5 * g.NormFloat64()
				}
				return 0
			})
		}
	}
	return d
}

// Every chance agrees with 200 000 mounts drawn with their errors one by one, within four standard deviations of a
// count (the binomial's); the chance anywhere, whose errors shared in part are put together to one, may lie a fourteenth of it
// above and a thirtieth below that.
func TestChancesAgainstDrawing(t *testing.T) {
	const n = 200000
	for seed := range uint64(8) {
		d := drawn(seed)
		for l := range d.Clearance {
			d.Clearance[l] += 3 * float64(seed)
		}
		g := rand.New(rand.NewPCG(seed, 99))
		strained, anywhere := make([]int, len(d.Clearance)), 0
		for range n {
			c := append([]float64(nil), d.Clearance...)
			for _, s := range d.Sources {
				e := s.Known.Off + s.Known.SD*g.NormFloat64()
				for l := range c {
					c[l] += s.Effect[l] * e
				}
			}
			some := false
			for l := range c {
				if c[l] < 0 {
					strained[l]++
					some = true
				}
			}
			if some {
				anywhere++
			}
		}
		for l := range d.Clearance {
			near(t, "chance", float64(strained[l])/n, d.Chance(l), count(d.Chance(l), n))
		}
		p := d.Anywhere()
		if drawn := float64(anywhere) / n; drawn > p*31/30+count(p, n) || drawn < p*13/14-count(p, n) {
			t.Errorf("anywhere %.5f, drawn %.5f", p, drawn)
		}
	}
}

// count is four standard deviations of the part of n draws that has chance p (J. Bernoulli's binomial), and one draw.
func count(p, n float64) float64 { return 4*math.Sqrt(p*(1-p)/n) + 1/n }

// The ease found keeps the chance at 1 %, at each level and over all; a millimetre less does not.
func TestEaseKeepsTheChance(t *testing.T) {
	for seed := range uint64(6) {
		d := drawn(seed)
		e := d.EaseForAll(0.01)
		for l := range d.Clearance {
			d.Clearance[l] = d.EaseFor(l, 0.01)
			near(t, "at the level", d.Chance(l), 0.01, 1e-9)
		}
		for l := range d.Clearance {
			d.Clearance[l] = e
		}
		near(t, "over all", d.Anywhere(), 0.01, 1e-4)
		for l := range d.Clearance {
			d.Clearance[l] = e - 1
		}
		if p := d.Anywhere(); p < 0.011 {
			t.Errorf("a millimetre less ease changes nothing: %.5f", p)
		}
	}
}

// Where readings say that the truth is larger than what was kept, so much less ease is needed; where smaller, more.
func TestEaseKnowsOfReadingsBesideThoseKept(t *testing.T) {
	for _, sign := range []float64{1, -1} {
		d := Doubt{[]float64{0}, []Source{{Taken: true, Known: Read(600, 3, 600, 608), Effect: []float64{sign}}}}
		d.Clearance[0] = d.EaseFor(0, 0.01)
		near(t, "ease", d.Clearance[0], 2.3263478740*d.SD(0)-sign*4, 1e-6)
		near(t, "chance", d.Chance(0), 0.01, 1e-9)
		near(t, "ease for all", d.EaseForAll(0.01), d.Clearance[0], 0.01)
	}
}

func BenchmarkDoubt(b *testing.B) {
	d := drawn(3)
	for b.Loop() {
		d.Anywhere()
		d.EaseForAll(0.01)
		d.Remeasure(5)
	}
}
