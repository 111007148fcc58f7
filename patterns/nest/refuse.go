package nest

import (
	"fmt"
	"math"

	"understructure/geometry/plane"
)

// Beyond these a slip of the pen is likelier than a job, and tables would not fit the memory.
const (
	farthest  = 1e5 // distance of a point from the origin, mm
	mostItems = 2000
	mostWays  = 3000 // ways to lie of all pieces together
	leastArea = 1e-3 // mm²
)

// refuse names what can't be laid, and what can.
func refuse(pieces []Piece, o Options) error {
	if len(pieces) == 0 {
		return fmt.Errorf("nest: no pieces, want at least 1")
	}
	if !(o.Gap >= 0 && o.Gap <= farthest) {
		return fmt.Errorf("nest: gap %g mm, want 0 or more", o.Gap)
	}
	if !(o.Slack >= 0 && o.Slack <= MostSlack) {
		return fmt.Errorf("nest: slack %g mm, want 0 to %g", o.Slack, MostSlack)
	}
	if o.Effort < 0 {
		return fmt.Errorf("nest: effort %d, want 0 or more", o.Effort)
	}
	items, ways := 0, 0
	for i, p := range pieces {
		where := fmt.Sprintf("piece %d %q", i+1, p.ID)
		if err := refuseRing(where, p.Outline); err != nil {
			return err
		}
		for k, r := range p.Beside {
			if err := refuseRing(fmt.Sprintf("%s, beside it %d", where, k+1), r); err != nil {
				return err
			}
		}
		for _, t := range p.Turns {
			if math.IsNaN(float64(t)) || math.Abs(float64(t)) > 100 {
				return fmt.Errorf("nest: %s: turn %g rad, want -100 to 100", where, float64(t))
			}
		}
		if p.Count < 1 || p.Count > mostItems {
			return fmt.Errorf("nest: %s: count %d, want 1 to %d", where, p.Count, mostItems)
		}
		items += p.Count
		ways += waysOf(p)
	}
	if ways > mostWays {
		return fmt.Errorf("nest: pieces may lie in %d ways in all, want at most %d; name fewer turns", ways, mostWays)
	}
	if items > mostItems {
		return fmt.Errorf("nest: %d pieces in all, want at most %d", items, mostItems)
	}
	return nil
}

// refuseRing wants a simple outline with an area, within reach of the origin.
func refuseRing(where string, r plane.Ring) error {
	if len(r) < 3 {
		return fmt.Errorf("nest: %s: outline of %d points, want at least 3", where, len(r))
	}
	for _, p := range r {
		if !(math.Abs(p.X) <= farthest && math.Abs(p.Y) <= farthest) {
			return fmt.Errorf("nest: %s: point (%g, %g), want at most %g mm from the origin", where, p.X, p.Y, farthest)
		}
	}
	if a := math.Abs(r.Area()); !(a >= leastArea) {
		return fmt.Errorf("nest: %s: outline round an area of %g mm², want at least %g", where, a, leastArea)
	}
	if p, meets := clean(r).Crossing(); meets {
		return fmt.Errorf("nest: %s: the outline meets itself near (%.4g, %.4g)", where, p.X, p.Y)
	}
	return nil
}

// waysOf is in how many poses a piece may lie.
func waysOf(p Piece) int {
	if p.Over {
		return 2 * len(allowed(p))
	}
	return len(allowed(p))
}
