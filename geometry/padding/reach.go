package padding

import (
	"math"

	"understructure/geometry/section"
	"understructure/geometry/space"
	"understructure/geometry/surface"
)

// farthestReach bounds how far a normal is followed, mm.
const farthestReach = 400.0

// reach returns how far from p along the unit vector n the skin lies: positive when p is
// inside it. It is found by secant steps on the distance from the axis.
func reach(skin surface.Surface, p, n space.Point) float64 {
	r0 := math.Hypot(p.X, p.Y)
	ux, uy := p.X/r0, p.Y/r0
	turn0 := math.Atan2(p.Y, p.X) * section.Directions / (2 * math.Pi)
	gap := func(s float64) float64 {
		x, y, z := p.X+n.X*s, p.Y+n.Y*s, p.Z+n.Z*s
		// The direction turns little along a normal; atan is taken of the small turn only.
		turn := turn0 + math.Atan2(ux*y-uy*x, ux*x+uy*y)*section.Directions/(2*math.Pi)
		return skin.Radius(turn, z) - math.Hypot(x, y)
	}
	outward := max(n.X*ux+n.Y*uy, 0.2)
	s0, g0 := 0.0, gap(0)
	s1 := clamp(g0 * outward)
	for range 12 {
		if math.Abs(s1-s0) < 1e-4 {
			break
		}
		g1 := gap(s1)
		if g1 == g0 {
			break
		}
		next := clamp(s1 - g1*(s1-s0)/(g1-g0))
		s0, g0, s1 = s1, g1, next
	}
	return s1
}

func clamp(s float64) float64 { return max(-farthestReach, min(farthestReach, s)) }
