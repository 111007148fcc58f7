package pipeline

import (
	"math"
	"slices"

	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/skirt"
	"understructure/geometry/surface"
	"understructure/patterns/plan"
)

// skirtGap is the greatest distance between two outlines of a skirt in a plan, mm.
const skirtGap = 20.0

// likest is how many rows of each comparison a plan has.
const likest = 4

// skirtPlan writes the skirt down, heights from the floor; nil where there is none.
func (j *job) skirtPlan() *plan.Skirt {
	h := j.skirt
	if h == nil {
		return nil
	}
	out := &plan.Skirt{
		Hold: h.stock.Hold, FloorGap: h.stock.Gap, Trained: h.Trained, Silhouette: h.silhouette(string(skirt.Worn(j.record.Object.Wearer))),
		Hem: h.hem(), Supports: []string{}, MassKg: h.support.MassKg, Cautions: orEmpty(h.support.Cautions), Hoops: h.hoops(j.waist), Practices: []plan.Practice{},
	}
	for _, k := range h.hold {
		out.Supports = append(out.Supports, string(k))
	}
	if _, taken := h.taken[measure.HipGirth]; taken {
		out.Strain = h.over(0)
	}
	h.outlines(out, j.waist)
	for k := len(h.Girths) - 1; k >= 0; k-- {
		out.Girths = append(out.Girths, h.girth(h.Girths[k], j.waist))
	}
	for _, f := range []struct {
		name string
		skirt.Fall
	}{{"front", h.Front}, {"right", h.Right}, {"left", h.Left}, {"back", h.Back}} {
		out.Falls = append(out.Falls, plan.Fall{Name: f.name, Length: f.Length, Reach: f.Reach(), Train: f.Train, Above: math.Max(0, j.waist-f.Drop)})
	}
	h.compare(j, out)
	return out
}

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

// girth is a row of the skirt's girths, the ease given back to the garment.
func (h *hung) girth(g skirt.Girth, waist float64) plan.SkirtGirth {
	out := plan.SkirtGirth{Height: g.Height + waist, Support: g.Tape}
	if garment := g.Garment + h.ease; !math.IsInf(garment, 1) {
		out.Garment, out.Fullness, out.Gather = number(garment), number(garment-g.Tape), number(garment/g.Tape)
	}
	return out
}

// hem compares the hem with the support where it stands or hangs lowest, and draws both from above.
func (h *hung) hem() plan.Hem {
	foot := h.Foot()
	out := plan.Hem{Support: foot.Tape(), Outline: thinned(h.Hem()), Foot: thinned(foot)}
	if girth, ok := h.taken[measure.HemGirth]; ok {
		out.Girth, out.Diameter = number(girth), number(girth/math.Pi)
		out.Fullness, out.Gather = number(girth-out.Support), number(girth/out.Support)
	}
	return out
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

// silhouette is the row that the skirt hangs by.
func (h *hung) silhouette(garment string) plan.Silhouette {
	s := plan.Silhouette{
		Garment: garment, Front: h.Silhouette.Front.Name(), Side: h.Silhouette.Side.Name(), Back: h.Silhouette.Back.Name(),
		Source: "a plain cone; the year is not known",
	}
	if r := h.row; r.Garment != "" {
		s.Years, s.Waist, s.Shoulder, s.Fullness, s.Source, s.Confidence = r.Years(), r.Waist, r.Shoulder, r.Fullness, r.Source, string(r.Confidence)
	}
	return s
}

// compare sets the skirt beside the years, and beside common practice in its own.
func (h *hung) compare(j *job, out *plan.Skirt) {
	o := j.record.Object
	c := silhouettes().Compare(h.Skirt, o.Wearer, skirt.Worn(o.Wearer))
	out.Dating, out.Comparison = c.Sentence, []plan.Likeness{}
	for _, by := range []struct {
		name string
		list []skirt.Match
	}{{"both", c.Together}, {"lengths", c.Distribution}, {"hem", c.Hem}} {
		for _, m := range by.list[:min(likest, len(by.list))] {
			out.Comparison = append(out.Comparison, plan.Likeness{By: by.name, Years: m.Row.Years(), Off: m.Off, Why: m.Why})
		}
	}
	for _, p := range skirt.Practices(o.Year, h.Skirt, j.bodice) {
		out.Practices = append(out.Practices, plan.Practice{
			Years: skirt.Row{From: p.From, To: p.To}.Years(), Says: p.Says, Finding: string(p.Finding), Seen: p.Seen, Source: p.Source,
		})
	}
}
