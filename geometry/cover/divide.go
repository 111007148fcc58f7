package cover

import (
	"cmp"
	"math"
	"slices"

	"understructure/geometry/flatten"
	"understructure/geometry/padding"
)

// mostPanels is how many a zone is divided into at most: more would be patchwork.
const mostPanels = 7

// narrow is the least number of columns in a panel, and narrower what is tried where that is not enough.
const narrow, narrower = 3 * columnStep, 2 * columnStep

// Divide cuts a zone into panels that lie flat with no more than the greatest strain given, as
// far as mostPanels and the least breadth let it, and tries to do with few: the panel that strains most
// gets the one full seam, upright or at a level, that takes most strain away, until none strains too much;
// then a seam that turns out to be needless is taken out again. (A dart would not do: round
// a waist the curvature is negative.)
func (c Cover) Divide(z padding.Zone, greatest float64) []padding.Zone {
	d := divider{c, greatest, narrow, map[padding.Zone]float64{}}
	zones := d.divided(z)
	if d.most(zones) <= greatest {
		return zones
	}
	d.narrowest = narrower
	if finer := d.divided(z); d.most(finer) < d.most(zones) {
		return finer
	}
	return zones
}

// divided is one try. What is joined again leaves room for further seams elsewhere.
func (d divider) divided(z padding.Zone) []padding.Zone {
	zones := []padding.Zone{z}
	for range mostPanels {
		before := len(zones)
		for len(zones) < mostPanels {
			i := d.worst(zones)
			if i < 0 {
				break
			}
			zones = slices.Replace(zones, i, i+1, d.best(zones[i])...)
		}
		if zones = d.joined(zones); len(zones) <= before || len(zones) == mostPanels {
			break
		}
	}
	return zones
}

// most is the strain of the panel that strains most.
func (d divider) most(zones []padding.Zone) float64 {
	most := 0.0
	for _, z := range zones {
		most = math.Max(most, d.strain(z))
	}
	return most
}

// worst is the panel that strains most of those that strain too much and can be divided, −1
// where there is none.
func (d divider) worst(zones []padding.Zone) int {
	worst, most := -1, d.greatest
	for i, z := range zones {
		if s := d.strain(z); s > most && len(d.seams(z)) > 0 {
			worst, most = i, s
		}
	}
	return worst
}

// divider remembers how much zones strain.
type divider struct {
	Cover
	greatest  float64
	narrowest int // columns
	known     map[padding.Zone]float64
}

// strain is the greatest strain with which a zone lies flat; where that is clearly too much,
// as a coarse panel has it.
func (d divider) strain(z padding.Zone) float64 {
	s, ok := d.known[z]
	if !ok {
		const clearly = 1.5
		if s = strain(d.panel(z, coarse)); s < clearly*d.greatest {
			s = strain(d.panel(z, 1))
		}
		d.known[z] = s
	}
	return s
}

func strain(p padding.Patch) float64 {
	f, err := flatten.Lay(p.Mesh, flatten.Options{})
	if err != nil {
		return math.Inf(1)
	}
	return f.Strain.Greatest
}

// best is the pair of panels that a zone, not too small, is best divided into.
func (d divider) best(z padding.Zone) []padding.Zone {
	pairs := d.seams(z)
	best, least := 0, math.Inf(1)
	for i, pair := range pairs {
		if w := d.work(pair[0]) + d.work(pair[1]); w < least {
			best, least = i, w
		}
	}
	return pairs[best][:]
}

// joined takes out every seam between two whole sides without which the panel still lies flat.
func (d divider) joined(zones []padding.Zone) []padding.Zone {
	for a := 0; a < len(zones); a++ {
		for b := 0; b < len(zones); b++ {
			if z, ok := together(zones[a], zones[b]); ok && d.strain(z) <= d.greatest {
				zones[a] = z
				zones = slices.Delete(zones, b, b+1)
				a, b = 0, -1
			}
		}
	}
	return zones
}

// together is the zone that two make, where they share a whole side.
func together(a, b padding.Zone) (padding.Zone, bool) {
	switch {
	case a.From == b.From && a.To == b.To && a.Hi == b.Lo:
		a.Hi = b.Hi
	case a.Lo == b.Lo && a.Hi == b.Hi && a.To == b.From:
		a.To = b.To
	default:
		return a, false
	}
	return a, true
}

// coarse is how many rows and columns at a time places for a seam are compared with.
const coarse = 2

// work is what strain is left in a panel: its square, over the area. Of two seams that leave the
// same greatest strain the one is better that leaves less of it.
func (c Cover) work(z padding.Zone) float64 {
	p := c.panel(z, coarse).Mesh
	f, err := flatten.Lay(p, flatten.Options{Rough: true})
	if err != nil {
		return math.Inf(1)
	}
	return f.Strain.P95 * f.Strain.P95 * p.Area()
}

// seams are the ways of dividing a zone in two: upright at every second column, and across.
func (d divider) seams(z padding.Zone) [][2]padding.Zone {
	var all [][2]padding.Zone
	for j := z.From + d.narrowest; j <= z.To-d.narrowest; j += columnStep {
		if (j-z.From)%(coarse*columnStep) == 0 {
			a, b := z, z
			a.To, b.From = j, j
			all = append(all, [2]padding.Zone{a, b})
		}
	}
	for _, h := range d.heights(z) {
		a, b := z, z
		a.Hi, b.Lo = h, h
		all = append(all, [2]padding.Zone{a, b})
	}
	return all
}

// tallEnough is how tall a zone must be to be worth dividing between levels, mm.
const tallEnough = 60.0

// heights are where a zone may be divided across: at the levels in it, or half way up where it has none.
func (d divider) heights(z padding.Zone) []float64 {
	var inside []float64
	for _, h := range d.levels {
		if h > z.Lo+1e-6 && h < z.Hi-1e-6 {
			inside = append(inside, h)
		}
	}
	if inside != nil || z.Hi-z.Lo < tallEnough {
		return inside
	}
	middle := (z.Lo + z.Hi) / 2
	best := slices.MinFunc(d.rows(z, 1), func(i, j int) int { return cmp.Compare(math.Abs(d.z[i]-middle), math.Abs(d.z[j]-middle)) })
	return []float64{d.z[best]}
}
