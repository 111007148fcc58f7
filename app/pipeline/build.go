package pipeline

import (
	"fmt"

	"understructure/geometry/foam"
	"understructure/geometry/measure"
	"understructure/geometry/padding"
	"understructure/geometry/surface"
)

// sheets are the thicknesses of wadding in stock.
func (j *job) sheets() []padding.Sheet {
	var out []padding.Sheet
	for _, w := range j.stock.Wadding {
		out = append(out, padding.Sheet{Thickness: w.Thickness})
	}
	return out
}

// pad sets the form in the figure, reshapes the figure round it and pads it out.
func (j *job) pad() error {
	dy, dz := padding.Place(j.form.Skin, j.figure)
	j.raised = dz
	j.bare = j.form.Skin.Lift(dy, dz)
	if !j.bare.Sound(leastRadius) {
		return fmt.Errorf("form.bodice: the form is so much smaller than the garment that it does not stand round the middle of its figure; take a larger form, or build slices")
	}
	var wanted surface.Surface
	wanted, j.excess = padding.Contain(j.figure, j.bare, j.stock.Cover)
	b := j.bands()
	j.excess = within(j.excess, b.Hip, b.Neck)
	j.mount = padding.Lay(padding.Job{
		Base: j.bare, Wanted: wanted, Stock: j.sheets(), Cover: j.stock.Cover, From: b.Hip, To: b.Neck,
	})
	return j.enough()
}

// leastRadius is how near the axis a form may come, mm; our judgement.
const leastRadius = 1.0

// enough refuses a mount that would take more layers than anyone lays.
func (j *job) enough() error {
	short, layers := j.mount.Short()
	if short < 1 {
		return nil
	}
	return fmt.Errorf("mount.wadding: %d layers leave %.0f mm unfilled; take thicker wadding, or a form nearer to the garment", layers, short)
}

// within keeps the excesses between two heights: above the neck base and below the hip a
// form meets no bodice.
func within(xs []padding.Excess, lo, hi float64) []padding.Excess {
	var out []padding.Excess
	for _, x := range xs {
		if x.Height >= lo-1e-6 && x.Height <= hi+1e-6 {
			out = append(out, x)
		}
	}
	return out
}

// stack cuts a core from planks, smaller than the figure by one sheet and the cover
// everywhere, and pads it out.
func (j *job) stack() error {
	soft := j.thinnest() + j.stock.Cover
	normals := j.figure.Normals()
	core := j.figure.Displaced(normals, func(int, int) float64 { return -soft }).Surface(j.figure.Z, true)
	if !core.Sound(leastRadius) {
		return fmt.Errorf("mount.wadding: %.0f mm of wadding and cover leave no core inside this figure; take thinner wadding", soft)
	}
	b, p := j.bands(), j.stock.Plank
	var err error
	stock := foam.Stock{Plank: p.Thickness, Pole: p.Pole, ThinFrom: j.height(measure.Shoulder) - stub}
	if j.slices, err = stock.Cut(core, b.Hip-stub, b.Neck+stub, foam.Step(j.stock.Step)); err != nil {
		return fmt.Errorf("mount.plank: %w", err)
	}
	j.bare = foam.Skin(j.slices, 2*surfaceGap)
	if !j.bare.Sound(leastRadius) {
		return fmt.Errorf("mount.plank: planks of %.0f mm leave no core inside this figure; take thinner ones", p.Thickness)
	}
	j.mount = padding.Lay(padding.Job{
		Base: j.bare, Normals: core.Resampled(j.bare.Z).Normals(), Wanted: j.figure,
		Stock: j.sheets(), Cover: j.stock.Cover, From: b.Hip, To: b.Neck,
	})
	return j.enough()
}

// stub is how far the core goes on above the neck base and below the hip, mm, so that neither
// is an edge. Workshop habit, from memory.
const stub = 25.0

// surfaceGap is the row spacing of skins, mm.
const surfaceGap = 2.0

// height of a level of the garment.
func (j *job) height(l measure.Level) float64 { return j.garment.At(l).Height }
