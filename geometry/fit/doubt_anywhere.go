package fit

import (
	"math"

	"understructure/geometry/curve"
)

// Anywhere is the chance that the garment would strain at one level or more.
//
// Errors that several levels share are put together to one that moves them all, each by its own share; what is left
// of each level's error is taken to be its own (C. W. Dunnett, M. Sobel, "Approximations to the probability integral…",
// Biometrika 42, 1955: one integral over the common part). The chance of each level is kept exactly, and the
// whole lies between the greatest of them and their sum (G. Boole, 1854). Where errors are shared by some of the levels and
// others by others, the chance comes out too large rather than too small, by up to a fourteenth of it.
func (d Doubt) Anywhere() float64 { return d.common().strains(0, nil) }

// EaseForAll is the one ease at all levels, mm, with which the chance of strain anywhere would be this.
func (d Doubt) EaseForAll(chance float64) float64 {
	c := d.common()
	if len(c.mean) == 0 {
		return 0
	}
	lo, hi := 0.0, 0.0
	for l := range d.Clearance {
		lo, hi = math.Max(lo, d.EaseFor(l, chance)), math.Max(hi, d.EaseFor(l, chance/float64(len(d.Clearance))))
	}
	for i, l := range c.level {
		c.mean[i] = d.off(l)
	}
	c.sure = 0 // a level without doubt needs no ease
	over := func(ease float64) float64 { return c.strains(ease, nil) - chance }
	if over(lo) <= 0 {
		return lo
	}
	const fine = 0.01 // mm
	ease, err := curve.Root(over, lo, hi, fine)
	if err != nil { // the chance is met at the upper end but for rounding
		return hi
	}
	return ease
}

// common is the clearances as one shared error and one of each level's own.
type common struct {
	level    []int     // that are in doubt
	mean, sd []float64 // of the clearance
	shared   []float64 // of each standard deviation, how much is shared: from -1 to 1
	own      []float64 // and how much is not
	sure     float64   // 1 where a level without doubt strains, else 0
}

func (d Doubt) common() common {
	var c common
	for l := range d.Clearance {
		switch sd, mean := d.SD(l), d.Expected(l); {
		case sd > 0:
			c.level, c.mean, c.sd = append(c.level, l), append(c.mean, mean), append(c.sd, sd)
		case mean < 0:
			c.sure = 1
		}
	}
	c.shared = sharedPart(d.correlations(c))
	for _, s := range c.shared {
		c.own = append(c.own, math.Sqrt(math.Max(0, 1-s*s)))
	}
	return c
}

// correlations of the clearances in doubt.
func (d Doubt) correlations(c common) [][]float64 {
	r := make([][]float64, len(c.level))
	for i, a := range c.level {
		r[i] = make([]float64, len(c.level))
		for k, b := range c.level {
			for _, s := range d.Sources {
				r[i][k] += s.Effect[a] * s.Effect[b] * s.Known.SD * s.Known.SD / (c.sd[i] * c.sd[k])
			}
		}
	}
	return r
}

// strains is the chance that one clearance or more is negative, each moved by ease and by, if given, so much as well.
func (c common) strains(ease float64, by []float64) float64 {
	n := len(c.mean)
	if c.sure > 0 || n == 0 {
		return c.sure
	}
	at, steps := make([]float64, n), make([]float64, 0, 3*n)
	count := make([]int, 0, n) // levels whose chance counts
	most, sum := 0.0, 0.0
	for i := range at {
		at[i] = c.mean[i] + ease
		if by != nil {
			at[i] += by[i]
		}
		at[i] /= c.sd[i]
		p := tail(at[i])
		most, sum = math.Max(most, p), sum+p
		if p < slight {
			continue
		}
		count = append(count, i)
		if c.own[i] < steep*math.Abs(c.shared[i]) {
			mid, wide := -at[i]/c.shared[i], blur*c.own[i]/math.Abs(c.shared[i])
			steps = append(steps, mid-wide, mid, mid+wide)
		}
	}
	if len(count) < 2 {
		return math.Min(sum, 1)
	}
	p := integrate(-farTail, farTail, bell, steps, func(t float64) float64 {
		any := 0.0
		for _, i := range count {
			any += (1 - any) * StrainChance(at[i]+c.shared[i]*t, c.own[i])
		}
		return density(t) * any
	})
	return math.Min(math.Max(p, most), math.Min(sum, 1))
}

// slight is a chance that does not count.
const slight = 1e-9

// tail is the chance that a normal error of standard deviation 1 is below -x, and density how dense it lies at x.
func tail(x float64) float64    { return math.Erfc(x/math.Sqrt2) / 2 }
func density(x float64) float64 { return math.Exp(-x*x/2) / math.Sqrt(2*math.Pi) }
