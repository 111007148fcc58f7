package pipeline

import (
	"math"

	"understructure/geometry/measure"
	"understructure/geometry/skirt"
	"understructure/patterns/plan"
)

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
