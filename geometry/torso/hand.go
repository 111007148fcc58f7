package torso

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"understructure/geometry/measure"
)

// sound returns an error for a shape that no hand could have set.
func sound(hand measure.Shape) error {
	for _, l := range slices.Sorted(maps.Keys(hand)) {
		if !slices.Contains(measure.Levels, l) {
			return fmt.Errorf("torso: shape: there is no level %q", l)
		}
		a := hand[l]
		for _, p := range [...]struct {
			name  string
			value *float64
			least float64
		}{
			{"height", a.Height, math.Inf(-1)}, {"girth", a.Girth, 0}, {"breadth", a.Breadth, 0},
			{"depth", a.Depth, 0}, {"front arc", a.FrontArc, 0}, {"left arc", a.LeftArc, 0},
		} {
			if p.value != nil && (!(*p.value > p.least) || math.IsInf(*p.value, 0)) {
				return fmt.Errorf("torso: shape: the %s of the %s is set to %g mm, want a finite length above %g", p.name, l, *p.value, p.least)
			}
		}
	}
	return nil
}

// girthKey is the measurement that takes the girth at a level, "" where none does.
func girthKey(l measure.Level) measure.Key {
	if l == measure.NeckBase {
		return measure.NeckBaseGirth
	}
	if i := levelIndex(l); i >= 0 {
		return taped[i].girth
	}
	return ""
}

// overruled is the sheet with the girths that were set by hand in place of those taken.
func overruled(s measure.Sheet, hand measure.Shape) measure.Sheet {
	if hand.Empty() {
		return s
	}
	s = maps.Clone(s)
	for l, a := range hand {
		if k := girthKey(l); k != "" && a.Girth != nil {
			s[k] = *a.Girth
		}
	}
	return s
}
