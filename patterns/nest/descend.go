package nest

import (
	"math"

	"understructure/geometry/plane"
)

// descend follows a spot downhill, by steps to both sides along upright, level and slanting lines drawn by chance.
// Steps grow where they lead down and shrink where they do not, until they are shorter than to.
func (c *crowd) descend(s *spot, from, to float64) {
	lo, hi, _ := c.rooms[s.room].span(&c.poses[s.pose])
	reach := 2 * from
	centre := s.at
	near := c.within(centre, reach)
	for dx, dy := from, from; max(dx, dy) > to && s.cost > 0; {
		var step plane.Point
		line := c.rnd.IntN(4)
		switch line {
		case 0:
			step.X = dx
		case 1:
			step.Y = dy
		case 2:
			step = plane.Point{X: dx, Y: dy}.Mul(math.Sqrt2 / 2)
		case 3:
			step = plane.Point{X: dx, Y: -dy}.Mul(math.Sqrt2 / 2)
		}
		a, b := clamp(s.at.Add(step), lo, hi), clamp(s.at.Sub(step), lo, hi)
		if beyond(a, centre, reach) || beyond(b, centre, reach) {
			centre, reach = s.at, 2*max(dx, dy)
			near = c.within(centre, reach)
		}
		costA := c.weigh(near, a, s.cost)
		costB := c.weigh(near, b, min(s.cost, costA))
		grow := 1.1
		switch {
		case costA >= s.cost && costB >= s.cost:
			grow = 0.5
		case costA <= costB:
			s.at, s.cost = a, costA
		default:
			s.at, s.cost = b, costB
		}
		switch line {
		case 0:
			dx *= grow
		case 1:
			dy *= grow
		default:
			dx, dy = dx*math.Sqrt(grow), dy*math.Sqrt(grow)
		}
	}
}

func beyond(p, centre plane.Point, reach float64) bool {
	return max(math.Abs(p.X-centre.X), math.Abs(p.Y-centre.Y)) > reach
}

// within lists the obstacles that can matter no farther from a place than reach.
func (c *crowd) within(p plane.Point, reach float64) []near {
	c.close = c.close[:0]
	for k := range c.near {
		q := &c.near[k]
		if p.X+reach > q.lo.X && p.X-reach < q.hi.X && p.Y+reach > q.lo.Y && p.Y-reach < q.hi.Y {
			c.close = append(c.close, *q)
		}
	}
	return c.close
}
