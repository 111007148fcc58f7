package skirt

import (
	"math"

	"understructure/geometry/section"
)

// standing is the number of the last row above the floor; last is that of the hem, which lies on the
// floor where there is cloth to spare.
func (h *hanger) standing() int { return len(h.meridians[0].s) - 1 }

func (h *hanger) last() int {
	if h.lies() > 0 {
		return h.standing() + onFloor
	}
	return h.standing()
}

// lies is the most cloth of any direction that lies on the floor.
func (h *hanger) lies() float64 {
	most := 0.0
	for j := range h.meridians {
		most = math.Max(most, h.meridians[j].length-h.meridians[j].stand)
	}
	return most
}

// row is the distance from the axis all round at a row.
func (h *hanger) row(k int) section.Section {
	var out section.Section
	n := h.standing()
	for j := range h.meridians {
		m := &h.meridians[j]
		out[j] = m.radius(min(k, n), h.lean[j])
		if k > n {
			out[j] += (m.length - m.stand) * float64(k-n) / onFloor
		}
	}
	return out
}

// tape is the taut tape round a row, seen from above.
func (h *hanger) tape(k int) float64 {
	r := h.row(k)
	return r.Tape()
}

// garment is the girth that the cloth has at a row, ease taken off: the mean over the
// directions, each at its own depth.
func (h *hanger) garment(k int) float64 {
	n := h.standing()
	g := 0.0
	for j := range h.meridians {
		m := &h.meridians[j]
		s := m.s[min(k, n)]
		if k > n {
			s += (m.length - m.stand) * float64(k-n) / onFloor
		}
		g += h.cloth.girth(s, m.length)
	}
	return g/section.Directions - h.wish.Ease
}

// fits reports whether the garment has the girth for every row. Where the body alone takes
// more, nothing that a tape could tell is added to it.
func (h *hanger) fits() bool {
	for k := 1; k <= h.last(); k++ {
		most := h.garment(k) + slack
		if bare := h.bare(k); bare > most {
			most = bare + readable
		}
		if h.tape(k) > most {
			return false
		}
	}
	return true
}

// slack is below what any tape can tell, mm: it keeps a hem that is exactly as wide as the garment.
const slack = 1e-6

// bare is the tape round the body and the cloth that falls straight from it or from the waist, at a row above the floor.
func (h *hanger) bare(k int) float64 {
	if k > h.standing() {
		return 0
	}
	var out section.Section
	for j := range h.meridians {
		out[j] = h.meridians[j].radius(k, 0)
	}
	return out.Tape()
}
