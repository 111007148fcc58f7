package skirt

import (
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/section"
)

// balance are the four lines along which a skirt is measured.
var balance = [4]int{section.Right, section.Front, section.Left, section.Back}

// four gathers something of the balance lines.
func (h *hanger) four(of func(j int) float64) Oval {
	return Oval{Right: of(section.Right), Left: of(section.Left), Front: of(section.Front), Back: of(section.Back)}
}

// toward goes smoothly from one of four values to the next, in the direction of the unit vector d.
func toward(v Oval, d plane.Point) float64 {
	x, y := v.axes(d)
	return x*d.X*d.X + y*d.Y*d.Y
}

// fall hangs the balance lines at the stand found. Between them foot and hem are ovals, and the cloth is as
// long as it then must be.
func (h *hanger) fall() {
	for _, j := range balance {
		_, h.lean[j] = h.meridians[j].hang(h.stand-h.wish.Gap, h.stand, h.most.Reach(section.Direction(j)))
	}
	foot := h.four(func(j int) float64 { return h.meridians[j].reach(h.lean[j]) })
	hem := h.four(func(j int) float64 { m := &h.meridians[j]; return m.reach(h.lean[j]) + m.length - m.stand })
	depth := h.four(func(j int) float64 { return h.meridians[j].drop(h.lean[j]) })
	for j := range h.meridians {
		if j%(section.Directions/4) == 0 {
			continue
		}
		m, like := &h.meridians[j], (section.Directions*3/2-j)%section.Directions
		if h.even && like < j {
			h.lean[j], m.length = h.lean[like], h.meridians[like].length
			m.set(h.meridians[like].stand)
			continue
		}
		d := section.Direction(j)
		h.lean[j] = m.span(foot.Reach(d), toward(depth, d))
		m.length = m.stand + math.Max(0, hem.Reach(d)-foot.Reach(d))
	}
}
