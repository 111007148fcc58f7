package picture

import (
	"image/color"

	"understructure/geometry/section"
	"understructure/patterns/plan"
)

// NewStage makes a mount ready as it stands when a stage of the plan is done; numbers beyond the stages mean the
// first and the last. Its box is that of the finished mount, so that one slides through the stages
// without the picture moving. In the Plain mode what is bare, padded, and newly added differ in colour.
func NewStage(p plan.Plan, stage int) *Body {
	stage = max(0, min(stage, len(p.Stages)-1))
	if len(p.Stages) == 0 || p.Stages[stage].Kind == plan.CoverStage {
		return NewBody(p.Surface)
	}
	s := p.Surface
	s.Built = p.After(stage)
	b := newBody(s)
	whole := newBody(p.Surface)
	b.Low, b.High, b.radius = whole.Low, whole.High, whole.radius
	if p.Stages[stage].Kind == plan.SliceStage {
		b.stack(p, stage)
	} else {
		b.clothe(p, stage)
	}
	return b
}

// The codes of the stages' colours. What is new lies between, so that its edges pass into either
// without a line.
const (
	codeBare   = 0
	codeNew    = (mostCode + 1) / 2
	codePadded = mostCode
)

// stack puts slices upon each other, each with its own faces.
func (b *Body) stack(p plan.Plan, stage int) {
	for i, s := range p.Stages[:stage+1] {
		for _, k := range stacked(p.Surface.Heights, s.Outlines) {
			b.mesh.add(k)
		}
		code := float32(codeBare)
		if i == stage {
			code = codeNew
		}
		for len(b.layers) < len(b.mesh.points) {
			b.layers = append(b.layers, code)
		}
	}
}

// clothe joins what stands into one skin, and notes where it is padded and where the latest step added
// to it.
func (b *Body) clothe(p plan.Plan, stage int) {
	first := 0 // the bare form, or the last slice
	for first < stage && p.Stages[first+1].Kind == plan.SliceStage {
		first++
	}
	bare := stacked(p.Surface.Heights, p.After(first))
	before := stacked(p.Surface.Heights, p.After(stage-1))
	for _, k := range b.skins[Built]() {
		b.mesh.add(k)
	}
	for row, z := range b.mesh.heights {
		base, last := slice(bare, z), slice(before, z)
		for j := range columns {
			q := b.mesh.points[row*columns+j]
			r := float64(q.x)*section.Direction(j).X + float64(q.y)*section.Direction(j).Y
			padded, added := thick(last[j]-base[j]), thick(r-last[j])
			b.layers = append(b.layers, float32(codePadded*padded*(1-added)+codeNew*added))
		}
	}
}

// slice is the outline of skins at a height, 0 where they have none.
func slice(skins []skin, z float64) section.Section {
	for _, k := range skins {
		if z >= k.Bottom() && z <= k.Top() {
			return k.At(z)
		}
	}
	return section.Section{}
}

// thick is 1 where something is thick enough to be seen, 0 where there is nothing, mm.
func thick(mm float64) float64 {
	const seen = 1.5
	return max(0, min(1, mm/seen))
}

// stageRamp has the colours of a mount in the making.
func stageRamp(p Palette) (out ramp) {
	bare := mix(p.Skin, p.Form, 0.45)
	added := mix(p.Skin, p.Wanted, 0.38)
	padded := mix(p.Skin, color.NRGBA{0xff, 0xff, 0xff, 0xff}, 0.3)
	for code := range out {
		c := mix(bare, added, min(1, float64(code)/codeNew))
		if code > codeNew {
			c = mix(added, padded, float64(code-codeNew)/(codePadded-codeNew))
		}
		out[code].tone = toneOf(c)
	}
	return out
}
