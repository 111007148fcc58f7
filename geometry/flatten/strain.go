package flatten

import (
	"cmp"
	"math"
	"slices"

	"understructure/geometry/plane"
)

// strain measures the laid patch.
func (sh sheet) strain(x []plane.Point) Strain {
	type part struct{ strain, area float64 }
	parts := make([]part, len(sh.elements))
	total, mean := 0.0, 0.0
	for i := range sh.elements {
		e := &sh.elements[i]
		parts[i] = part{e.strain(x), e.area}
		total += e.area
		mean += parts[i].strain * e.area
	}
	slices.SortFunc(parts, func(a, b part) int { return cmp.Compare(a.strain, b.strain) })
	st := Strain{Greatest: parts[len(parts)-1].strain, Mean: mean / total}
	for sum, i := 0.0, 0; i < len(parts) && sum < 0.95*total; i++ {
		sum += parts[i].area
		st.P95 = parts[i].strain
	}
	return st
}

// greatest is the greatest strain alone.
func (sh sheet) greatest(x []plane.Point) float64 {
	g := 0.0
	for i := range sh.elements {
		g = math.Max(g, sh.elements[i].strain(x))
	}
	return g
}

// worst is the greatest strain, and at least one where a triangle is turned over.
func (sh sheet) worst(x []plane.Point) float64 {
	g := sh.greatest(x)
	for i := range sh.elements {
		if _, σ2 := sh.elements[i].stretches(x); σ2 <= 0 {
			return 1 + g
		}
	}
	return g
}
