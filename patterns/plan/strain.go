package plan

import (
	"fmt"

	"understructure/geometry/plane"
)

// Refused says why the templates must not be printed; nil where they may. The mount made anew from its
// pieces decides, not the one that they were cut from.
func (p Plan) Refused() error {
	if p.AsBuilt == nil || len(p.AsBuilt.Objections) == 0 {
		return nil
	}
	first := p.AsBuilt.Objections[0]
	text := first.Message
	if first.Piece != "" {
		text = first.Piece + ": " + text
	}
	if more := len(p.AsBuilt.Objections) - 1; more > 0 {
		text += fmt.Sprintf(" (and %d more)", more)
	}
	return fmt.Errorf("the templates are not printed, because a mount made from them would not fit: %s", text)
}

// exact is how truly tapes are built, in millimetres; less than this is not strain.
const exact = 0.1

// Strains reports whether the garment would be stretched anywhere: at a level, at any height of the
// surface where both the garment and the mount have an outline, or in the skirt.
func (p Plan) Strains() bool {
	if p.Skirt != nil && p.Skirt.Strain > exact {
		return true
	}
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
