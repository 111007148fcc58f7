package skirt

import (
	"math"

	"understructure/geometry/curve"
	"understructure/geometry/section"
)

// leastDrop is the least part of its length that a skirt hangs down: no support holds it
// flatter. From memory.
const leastDrop = 0.5

// level finds the depth of a level hem that is as wide as wanted, or as near as the cloth allows.
func (h *hanger) level(wide float64) float64 {
	if h.train {
		j := h.shortest()
		m := &h.meridians[j]
		return m.drop(m.leanTo(h.most.Reach(section.Direction(j))))
	}
	lo, hi := 0.0, math.Inf(1)
	for _, j := range balance {
		m := &h.meridians[j]
		straight := m.drop(0)
		lo, hi = math.Max(lo, math.Max(m.drop(1), leastDrop*straight)), math.Min(hi, straight)
	}
	if lo >= hi {
		return hi
	}
	if h.hemAt(hi) >= wide {
		return h.uneven(hi, wide)
	}
	if level, err := curve.Root(func(l float64) float64 { return h.hemAt(l) - wide }, lo, hi, 1e-10); err == nil {
		return level
	}
	return lo
}

// unevenness is how much higher than the rest a hem may hang in places, mm, before all the
// rest is pushed out to make it level: cloth that goes over broad hips hangs so. From memory.
const unevenness = 10.0

// uneven finds the depth where a hem that is level at hi is wider than wanted: a little lower, if that makes
// it narrower.
func (h *hanger) uneven(hi, wide float64) float64 {
	wide = math.Max(wide, h.hemAt(hi+unevenness)) + readable
	if level, err := curve.Root(func(l float64) float64 { return h.hemAt(l) - wide }, hi, hi+unevenness, 1e-7); err == nil {
		return level
	}
	return hi
}

// shortest is the balance line with the least cloth.
func (h *hanger) shortest() int {
	best := section.Front
	for _, j := range balance {
		if h.meridians[j].length < h.meridians[best].length {
			best = j
		}
	}
	return best
}

// hemAt is the girth of the hem when it is level at a depth.
func (h *hanger) hemAt(level float64) float64 {
	return h.four(func(j int) float64 {
		m := &h.meridians[j]
		_, lean := m.hang(level, math.Inf(1), math.Inf(1))
		return m.reach(lean)
	}).Girth()
}
