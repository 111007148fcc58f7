package picture

import (
	"sync"

	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/surface"
)

// skin is a run of outlines without a gap, joined.
type skin struct {
	surface.Surface
	normals func() surface.Shell
	ends    func() [2]plane.Ring // taut round its lower and its upper end
}

func joined(s surface.Surface) skin {
	return skin{s, sync.OnceValue(s.Normals), sync.OnceValue(func() [2]plane.Ring {
		return [2]plane.Ring{s.R[0].Ring().Hull(), s.R[len(s.R)-1].Ring().Hull()}
	})}
}

// stacked joins the outlines of one kind; a height without one ends a skin, and a single outline is none.
func stacked(heights []float64, rings []plane.Ring) []skin {
	var all []skin
	var run surface.Surface
	end := func() {
		if len(run.Z) > 1 {
			all = append(all, joined(run))
		}
		run = surface.Surface{}
	}
	for i, z := range heights {
		r := at(rings, i)
		if len(r) < 3 {
			end()
			continue
		}
		run.Z, run.R = append(run.Z, z), append(run.R, section.Of(r))
	}
	end()
	return all
}
