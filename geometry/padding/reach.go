package padding

import (
	"math"

	"understructure/geometry/section"
	"understructure/geometry/space"
	"understructure/geometry/surface"
)

// farthestReach bounds how far a normal is followed, mm.
const farthestReach = 400.0

// reach returns how far from p, which lies in direction column j, along the unit vector n
// the skin lies: positive when p is inside it. It is found by secant steps on the distance
// from the axis, from a guess on. row is where to begin looking among the skin's rows, and where it ended.
func reach(skin surface.Surface, p, n space.Point, j int, guess float64, row *int) float64 {
	d := section.Direction(j)
	gap := func(s float64) float64 {
		x, y, z := p.X+n.X*s, p.Y+n.Y*s, p.Z+n.Z*s
		turn := float64(j) + arc(d.X*y-d.Y*x, d.X*x+d.Y*y)*section.Directions/(2*math.Pi)
		var r float64
		r, *row = skin.RadiusNear(*row, turn, z)
		return r - math.Sqrt(x*x+y*y)
	}
	outward := max(n.X*d.X+n.Y*d.Y, 0.2)
	s0 := clamp(guess)
	g0 := gap(s0)
	s1 := clamp(s0 + g0*outward)
	for range 12 {
		if math.Abs(s1-s0) < met {
			break
		}
		g1 := gap(s1)
		if math.Abs(g1) < met || g1 == g0 {
			break
		}
		next := clamp(s1 - g1*(s1-s0)/(g1-g0))
		s0, g0, s1 = s1, g1, next
	}
	return s1
}

// met is how near to the skin, or to the last guess, ends the search, mm.
const met = 1e-4

// arc is the angle of a place so far across a direction and so far along it. A direction
// turns little along a normal, and for small angles four terms of Gregory's series (1671) are
// right to 2·10⁻⁷.
func arc(across, along float64) float64 {
	t := across / along
	if along <= 0 || math.Abs(t) > 0.2 {
		return math.Atan2(across, along)
	}
	q := t * t
	return t * (1 - q*(1.0/3-q*(1.0/5-q/7)))
}

func clamp(s float64) float64 { return max(-farthestReach, min(farthestReach, s)) }
