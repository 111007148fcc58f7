package pipeline

import (
	"fmt"
	"math"

	"understructure/geometry/padding"
	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/surface"
	"understructure/patterns/plan"
)

// stages are the steps of building with what stands after each, from the bare form or the lowest
// slice to the finished mount, at the heights of its outlines.
func (j *job) stages(s plan.Surface) []plan.Stage {
	b := newBuilding(j, s.Heights)
	if j.form != nil {
		b.lay(plan.Stage{Kind: plan.FormStage, Number: 1, Name: "form", Material: "form"}, j.bare)
	}
	for _, slice := range j.slices {
		name := fmt.Sprintf("slice %d of %d", slice.Number, len(j.slices))
		skin := surface.Surface{Z: []float64{slice.Bottom, slice.Top}, R: []section.Section{slice.Lower, slice.Upper}}
		b.lay(plan.Stage{Kind: plan.SliceStage, Number: slice.Number, Name: name, Material: fmt.Sprintf("plank %g mm", j.stock.Plank.Thickness)}, skin)
	}
	cut := j.cutLayers()
	for k, l := range cut {
		name := fmt.Sprintf("layer %d of %d", k+1, len(cut))
		b.lay(plan.Stage{Kind: plan.WaddingStage, Number: k + 1, Name: name, Material: fmt.Sprintf("wadding %g mm", l.Thickness)}, b.wadded(cut[k+1:]))
	}
	if j.stock.Cover > 0 {
		b.lay(plan.Stage{Kind: plan.CoverStage, Number: 1, Name: "cover", Material: "cover"}, j.mount.Built)
	}
	if n := len(b.stages); n > 0 {
		b.stages[n-1].Outlines = s.Built
	}
	return b.stages
}

// cutLayers are the layers that have pieces: one of nothing but scraps is not laid.
func (j *job) cutLayers() []padding.Layer {
	var out []padding.Layer
	for _, l := range j.mount.Layers {
		if len(j.mount.Patches(l, j.zones()(l))) > 0 {
			out = append(out, l)
		}
	}
	return out
}

// building is a mount as it grows.
type building struct {
	mount   padding.Mount
	heights []float64          // from the waist
	built   []section.Section  // what is to stand in the end
	stand   []*section.Section // what stands now; nil where nothing does
	stages  []plan.Stage
}

func newBuilding(j *job, heights []float64) *building {
	b := &building{mount: j.mount, stand: make([]*section.Section, len(heights))}
	for _, h := range heights {
		b.heights = append(b.heights, h-j.waist)
		b.built = append(b.built, j.mount.Built.At(h-j.waist))
	}
	return b
}

// wadded is the skin when these layers are still to be laid: known from what lies under the next; under the
// cover it is the finished mount less the cover.
func (b *building) wadded(to []padding.Layer) surface.Surface {
	m := b.mount
	if len(to) > 0 {
		under := to[0].Under
		return m.Base.Displaced(m.Normals, func(i, j int) float64 { return under[i][j] }).Surface(b.heights, false)
	}
	return m.Built.Displaced(m.Built.Normals(), func(int, int) float64 { return -m.Cover }).Surface(b.heights, true)
}

// lay adds the step after which a skin stands, as far as it reaches.
func (b *building) lay(st plan.Stage, skin surface.Surface) {
	st.Outlines = make([]plane.Ring, len(b.heights))
	for i, z := range b.heights {
		if !reaches(skin, z) || !reaches(b.mount.Base, z) {
			continue
		}
		if at, grown := b.grow(i, skin.At(z), st.Kind == plan.SliceStage); grown {
			b.stand[i], st.Outlines[i] = &at, coarse(&at)
		}
	}
	b.stages = append(b.stages, st)
}

// grow is what stands at a height when an outline is added, and whether that is more than before.
// No step takes anything away, and nothing stands out of the finished mount. Only slices stand upon
// each other, and where two meet the upper one's own outline counts.
func (b *building) grow(i int, at section.Section, upon bool) (section.Section, bool) {
	before := b.stand[i]
	grown := before == nil || upon
	for k := range at {
		at[k] = math.Min(at[k], b.built[i][k])
		if before != nil && !upon {
			grown = grown || at[k] > before[k]+stageGrain
			at[k] = math.Max(at[k], before[k])
		}
	}
	return at, grown
}

// stageGrain is how finely a stage is known, mm: finer than wadding is, and short to write.
const stageGrain = 0.1

// coarse is every second point of an outline, rounded: within a tenth of a millimetre of it round any torso.
func coarse(s *section.Section) plane.Ring { return thinned(s.Ring()) }

func thinned(ring plane.Ring) plane.Ring {
	out := make(plane.Ring, 0, len(ring)/2)
	for k := 0; k < len(ring); k += 2 {
		out = append(out, rounded(ring[k]))
	}
	return out
}

func rounded(p plane.Point) plane.Point {
	return plane.Point{X: math.Round(p.X/stageGrain) * stageGrain, Y: math.Round(p.Y/stageGrain) * stageGrain}
}
