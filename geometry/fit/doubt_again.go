package fit

import (
	"cmp"
	"math"
	"slices"

	"understructure/geometry/measure"
)

// Again is what one more reading of a source would do.
type Again struct {
	Source int     // its number
	Share  float64 // of the variance where strain is likely, how much comes from it, 0 to 1
	Chance float64 // of strain anywhere once it has been read once more and the mount made anew with the same ease
}

// candidates are as many readings as are tried, the first by share.
const candidates = 6

// Remeasure lists what would make strain less likely if it were read once more, or for the first time: of those that the
// doubt comes from most the ones that help most, at most so many.
func (d Doubt) Remeasure(most int) []Again {
	var all []Again
	for i, share := range d.shares() {
		if d.Sources[i].Key != "" && share > 0 && !d.grows(i) {
			all = append(all, Again{Source: i, Share: share})
		}
	}
	slices.SortStableFunc(all, func(a, b Again) int { return cmp.Compare(b.Share, a.Share) })
	before := d.Anywhere()
	var out []Again
	for _, a := range all[:min(len(all), candidates)] {
		if a.Chance = d.after(a.Source); a.Chance < before {
			out = append(out, a)
		}
	}
	slices.SortStableFunc(out, func(a, b Again) int { return cmp.Compare(a.Chance, b.Chance) })
	return out[:min(len(out), most)]
}

// grows reports whether the mount grows where source i is read again, because the reading that is then kept is not the safe
// one: to take it again helps nobody.
func (d Doubt) grows(i int) bool {
	s, sum := d.Sources[i], 0.0
	for l, e := range s.Effect {
		sum += e * d.Chance(l)
	}
	return s.Taken && (s.Kept == measure.Smallest && sum < 0 || s.Kept == measure.Largest && sum > 0)
}

// shares is how much of the variance comes from each source, levels counting by their chance of strain.
func (d Doubt) shares() []float64 {
	out, all := make([]float64, len(d.Sources)), 0.0
	for l := range d.Clearance {
		sd, chance := d.SD(l), d.Chance(l)
		if sd == 0 {
			continue
		}
		all += chance
		for i, s := range d.Sources {
			e := s.Effect[l] * s.Known.SD / sd
			out[i] += chance * e * e
		}
	}
	for i := range out {
		out[i] /= math.Max(all, math.SmallestNonzeroFloat64)
	}
	return out
}

// after is the chance of strain anywhere once source i has been read once more.
func (d Doubt) after(i int) float64 {
	s := d.Sources[i]
	with := Doubt{d.Clearance, slices.Clone(d.Sources)}
	next := &with.Sources[i]
	switch {
	case !s.Taken:
		next.Known = Known{SD: s.Known.Once}
		return with.Anywhere()
	case s.Kept == measure.Mean:
		next.Known = Known{SD: math.Sqrt(1 / (1/sq(s.Known.SD) + 1/sq(s.Known.Once)))}
		return with.Anywhere()
	}
	next.Known = Known{SD: s.Known.SD * nothing}
	if s.Kept == measure.Largest {
		s = s.negated()
	}
	return with.common().smaller(s)
}

// negated is the same source told of the value with its sign turned: of such readings the smallest is the largest.
func (s Source) negated() Source {
	s.Known.Off = -s.Known.Off
	s.Effect = slices.Clone(s.Effect)
	for l := range s.Effect {
		s.Effect[l] = -s.Effect[l]
	}
	return s
}

// nothing is a part of an error that does not count, but keeps the levels that it alone moves among those in doubt.
const nothing = 1e-9

func sq(x float64) float64 { return x * x }

// smaller is the chance of strain anywhere where, beside all else, the smaller of what was kept of s and one more
// reading is kept. The truth lies above it by the larger of two errors that are apart: of what was kept, and of the
// new reading. The density of the larger of two is that of each times the chance that the other is
// below (David and Nagaraja, chapter 2).
func (c common) smaller(s Source) float64 {
	k := s.Known
	kept, fresh := normal{k.Off, k.SD}, normal{0, k.Once}
	lo, hi := math.Max(k.Off-farTail*k.SD, -farTail*k.Once), math.Max(k.Off+farTail*k.SD, farTail*k.Once)
	by := make([]float64, len(c.mean))
	var places, steps []float64
	for _, b := range bell {
		places = append(places, k.Off+b*k.SD, b*k.Once)
	}
	for i, l := range c.level {
		if e := s.Effect[l]; c.sd[i] < steep*math.Abs(e)*k.SD {
			mid, wide := -c.mean[i]/e, blur*c.sd[i]/math.Abs(e)
			steps = append(steps, mid-wide, mid, mid+wide)
		}
	}
	return integrate(lo, hi, places, steps, func(w float64) float64 {
		dense := kept.density(w)*fresh.below(w) + fresh.density(w)*kept.below(w)
		if dense*k.SD < slight {
			return 0
		}
		for i, l := range c.level {
			by[i] = s.Effect[l] * w
		}
		return dense * c.strains(0, by)
	})
}

// normal is an error with a mean and a standard deviation above 0.
type normal struct{ mean, sd float64 }

func (n normal) density(x float64) float64 { return density((x-n.mean)/n.sd) / n.sd }
func (n normal) below(x float64) float64   { return tail((n.mean - x) / n.sd) }
