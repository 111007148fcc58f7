// Package rest is a garment at rest: how large it lies flat, where it is folded so that it goes into a box, how thick
// the pads in its folds must be, and what it comes to on a roll. Lengths are millimetres.
// It knows no paper and no files, and it does not say whether a garment should be folded at all.
package rest

import (
	"fmt"
	"math"

	"understructure/geometry/measure"
)

// Garment is what was measured of a garment, or drawn where it was not. Skirt and sleeves may be empty.
type Garment struct{ Bodice, Skirt, Sleeve measure.Sheet }

// needed are the readings without which no outline can be drawn.
var needed = []measure.Key{measure.BustGirth, measure.WaistGirth, measure.BackWaist}

// check names the first reading that is missing or no length.
func (g Garment) check() error {
	for _, k := range needed {
		if _, ok := g.Bodice[k]; !ok {
			return fmt.Errorf("rest: the bodice's %s is not known; nothing can be said without it", k)
		}
	}
	for _, part := range []struct {
		name  string
		sheet measure.Sheet
		table []measure.Measure
	}{{"bodice", g.Bodice, measure.Keys}, {"skirt", g.Skirt, measure.Skirt}, {"sleeve", g.Sleeve, measure.Sleeve}} {
		for _, m := range part.table {
			if v, ok := part.sheet[m.Key]; ok && !m.Possible(v) {
				return fmt.Errorf("rest: the %s of the %s is %g; allowed %g to %g", m.Label, part.name, v, m.Min, m.Max)
			}
		}
	}
	return nil
}

// first is the first of the keys that a sheet has, otherwise the value given.
func first(s measure.Sheet, otherwise float64, keys ...measure.Key) float64 {
	for _, k := range keys {
		if v, ok := s[k]; ok {
			return v
		}
	}
	return otherwise
}

// longest is the longest of the lengths that a sheet has, 0 for none.
func longest(s measure.Sheet, keys ...measure.Key) float64 {
	most := 0.0
	for _, k := range keys {
		most = math.Max(most, s[k])
	}
	return most
}
