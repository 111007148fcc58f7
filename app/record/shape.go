package record

import (
	"slices"
	"strings"

	"understructure/geometry/measure"
)

// Part is one length of an adjustment: its key in the file, its range and its place.
type Part struct {
	Key   string
	Limit Limit
	At    func(*measure.Adjustment) **float64
}

// Parts lists the lengths of an adjustment.
var Parts = []Part{
	{"height", ShapeHeightLimit, func(a *measure.Adjustment) **float64 { return &a.Height }},
	{"girth", ShapeGirthLimit, func(a *measure.Adjustment) **float64 { return &a.Girth }},
	{"breadth", ShapeAcrossLimit, func(a *measure.Adjustment) **float64 { return &a.Breadth }},
	{"depth", ShapeAcrossLimit, func(a *measure.Adjustment) **float64 { return &a.Depth }},
	{"front_arc", ShapeArcLimit, func(a *measure.Adjustment) **float64 { return &a.FrontArc }},
	{"left_arc", ShapeArcLimit, func(a *measure.Adjustment) **float64 { return &a.LeftArc }},
}

// CheckAdjustment says, as Decode would, why an adjustment at a level cannot stand in a record
// of the given unit; nil where it can.
func CheckAdjustment(l measure.Level, a measure.Adjustment, unit string) error {
	if !slices.Contains(measure.Levels, l) {
		return &Refusal{Path: join("mount.shape", short(string(l))), Message: "the level is not known", Allowed: strings.Join(levels(), ", ")}
	}
	var into measure.Shape
	return check(unit, func(d *decoder, e encoder) {
		d.shape("mount.shape", e.shape(measure.Shape{l: a}), &into)
	})
}

// shape reads what the maker set by hand, a level at a time; a level of which nothing is set
// is left out.
func (d *decoder) shape(path string, n node, into *measure.Shape) {
	var levels []field
	for _, l := range measure.Levels {
		levels = append(levels, field{string(l), func(path string, n node) {
			var a measure.Adjustment
			var parts []field
			for _, p := range Parts {
				parts = append(parts, field{p.Key, d.optional(p.At(&a), d.lengths(), p.Limit)})
			}
			d.object(path, n, parts...)
			if a == (measure.Adjustment{}) {
				return
			}
			if *into == nil {
				*into = measure.Shape{}
			}
			(*into)[l] = a
		}})
	}
	d.object(path, n, levels...)
}

func (e encoder) shape(s measure.Shape) node {
	var o object
	for _, l := range measure.Levels {
		a := s[l]
		var parts object
		for _, p := range Parts {
			parts.put(p.Key, e.optional(*p.At(&a)))
		}
		o.put(string(l), parts)
	}
	return o
}
