package plan

import "understructure/geometry/plane"

// Stage is one step of building. What stands when it is done is Plan.After.
type Stage struct {
	Kind     string `json:"kind"`   // FormStage, SliceStage, WaddingStage or CoverStage
	Number   int    `json:"number"` // of its kind, from 1: that of the slice or layer
	Name     string `json:"name"`   // such as "layer 2 of 5"
	Material string `json:"material"`
	// Outlines has one ring for each height of the surface, coarser than those of the surface and
	// rounded to a tenth of a millimetre; nil where the step changes nothing. A slice has both its
	// faces, so at the height where two meet the upper one's replaces the lower's. The last
	// stage has the surface's built outlines themselves.
	Outlines []plane.Ring `json:"outlines"`
}

// The kinds of stages.
const (
	FormStage    = "form"
	SliceStage   = "slice"
	WaddingStage = "wadding"
	CoverStage   = "cover"
)

// After returns the outlines, one for each height of the surface, that stand when a stage is done:
// at each height those of the latest step that changed it, nil where nothing stands yet.
// Numbers beyond the stages mean the first and the last; a plan without stages has what is built.
func (p Plan) After(stage int) []plane.Ring {
	if len(p.Stages) == 0 {
		return p.Surface.Built
	}
	out := make([]plane.Ring, len(p.Surface.Heights))
	for _, s := range p.Stages[:max(0, min(stage, len(p.Stages)-1))+1] {
		for i, r := range s.Outlines[:min(len(s.Outlines), len(out))] {
			if r != nil {
				out[i] = r
			}
		}
	}
	return out
}
