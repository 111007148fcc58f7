package plan

import "understructure/geometry/plane"

// exact is how truly tapes are built, in millimetres; less than this is not strain.
const exact = 0.1

// Strains reports whether the garment would be stretched anywhere: at a level, or at any
// height of the surface where both the garment and the mount have an outline.
func (p Plan) Strains() bool {
	for _, l := range p.Levels {
		if l.Clearance != nil && *l.Clearance < -exact {
			return true
		}
	}
	for i := range min(len(p.Surface.Garment), len(p.Surface.Built)) {
		if tighter(p.Surface.Garment[i], p.Surface.Built[i]) {
			return true
		}
	}
	return false
}

func tighter(garment, built plane.Ring) bool {
	return len(garment) > 0 && len(built) > 0 && garment.Tape() < built.Tape()-exact
}
