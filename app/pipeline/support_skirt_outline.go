package pipeline

import (
	"math"
	"slices"

	"understructure/geometry/plane"
	"understructure/geometry/skirt"
	"understructure/geometry/surface"
	"understructure/patterns/plan"
)

// skirtGap is the greatest distance between two outlines of a skirt in a plan, mm.
const skirtGap = 20.0

// outlines writes skirt and support from their lowest up to the waist.
func (h *hung) outlines(out *plan.Skirt, waist float64) {
	shape, _ := h.Petticoat(h.stock.Steels)
	if h.support.Shape != nil {
		shape = h.support.Shape
	}
	var fixed []float64
	for _, line := range shape {
		fixed = append(fixed, line.Height)
	}
	for _, hoop := range h.support.Frame {
		fixed = append(fixed, hoop.Height)
	}
	slices.Sort(fixed)
	zs := surface.Rows(h.Lowest(), 0, skirtGap, fixed...)
	outside := h.Surface(zs...)
	frame := draped(h.support.Frame, shape)
	for i, z := range zs {
		out.Heights = append(out.Heights, z+waist)
		out.Garment = append(out.Garment, coarse(&outside.R[i]))
		out.Support = append(out.Support, withFrame(clothAt(shape, z), frame, z))
	}
}

// clothAt is the cloth of a petticoat at a height, straight between its lines; nil where there is none.
func clothAt(p skirt.Petticoat, z float64) plane.Ring {
	const corners, touches = 128, 1e-6
	for i := 1; i < len(p); i++ {
		a, b := p[i-1], p[i]
		if z > a.Height+touches || z < b.Height-touches {
			continue
		}
		r := make(plane.Ring, corners)
		for k := range r {
			sin, cos := math.Sincos(2 * math.Pi * float64(k) / corners)
			d := plane.Point{X: cos, Y: sin}
			r[k] = rounded(a.Oval.Facing(d).Lerp(b.Oval.Facing(d), (a.Height-z)/(a.Height-b.Height)))
		}
		return r
	}
	return nil
}

// draped is a bustle frame with the cloth over it: gathered at the waist, and from the lowest half hoop down to the petticoat's hem.
func draped(frame []skirt.HalfHoop, p skirt.Petticoat) []skirt.HalfHoop {
	if len(frame) == 0 || len(p) == 0 {
		return nil
	}
	at := func(line skirt.Hoop) skirt.HalfHoop { // hardly a curve, on its back
		const flat = 1.0 // mm
		return skirt.HalfHoop{Height: line.Height, Strap: 2 * flat, Rise: flat, Back: line.Oval.Back - flat}
	}
	return append(append([]skirt.HalfHoop{at(p[0])}, frame...), at(p.Hem()))
}

// withFrame is an outline and round it the cloth over a bustle frame at that height.
func withFrame(r plane.Ring, frame []skirt.HalfHoop, z float64) plane.Ring {
	const steps = 48
	for i := 1; i < len(frame); i++ {
		above, below := frame[i-1], frame[i]
		if len(r) > 0 && z < above.Height && z >= below.Height {
			t := (above.Height - z) / (above.Height - below.Height)
			mix := func(a, b float64) float64 { return a + (b-a)*t }
			hoop := skirt.HalfHoop{Height: z, Strap: mix(above.Strap, below.Strap), Rise: mix(above.Rise, below.Rise), Back: mix(above.Back, below.Back)}
			return append(r, plane.Ring(hoop.Curve(steps)).Map(rounded)...).Hull()
		}
	}
	return r
}

// hoops are the lines of the petticoat with steels that was drafted.
func (h *hung) hoops(waist float64) []plan.Hoop {
	out := []plan.Hoop{}
	for _, line := range h.support.Shape {
		o := line.Oval
		out = append(out, plan.Hoop{Height: line.Height + waist, Girth: o.Girth(), Steel: line.Steel, Right: o.Right, Left: o.Left, Front: o.Front, Back: o.Back})
	}
	return out
}
