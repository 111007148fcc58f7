package cutting

import (
	"understructure/geometry/plane"
	"understructure/patterns/plan"
)

// leastRest is the shortest side of a rest that is worth keeping, mm: the least that an offcut of a record may have.
const leastRest = 100.0

// keep notes what is left of a plank beside or above all that is cut from it, whichever is larger.
func keep(l *plan.Layout, cut plane.Ring) {
	_, hi := cut.Bounds()
	beside := plan.Rest{At: plane.Point{X: hi.X + foamGap}, Length: l.Length - hi.X - foamGap, Width: l.Width}
	above := plan.Rest{At: plane.Point{Y: hi.Y + foamGap}, Length: l.Length, Width: l.Width - hi.Y - foamGap}
	best := beside
	if above.Length*above.Width > beside.Length*beside.Width {
		best = above
	}
	if min(best.Length, best.Width) < leastRest {
		return
	}
	l.Rest = &best
	l.Waste -= best.Length * best.Width
}
