package nest

import (
	"math"

	"understructure/geometry/plane"
)

// near is an item as an obstacle to a pose that looks for a place.
type near struct {
	lo, hi plane.Point // box of the no-fit polygon where the item lies
	at     plane.Point
	factor float64 // from depth to weighted overlap
	view   view
}

// How many places are tried: all over each room, in at most so many rooms and poses, and round where the item
// lies; the best are followed downhill. Chosen by trial on the instances in testdata/nesting.
const (
	scattered  = 20
	mostRooms  = 4
	mostPoses  = 4
	roundabout = 10
	followed   = 3
)

// relocate moves an item to a better place, if it finds one.
func (c *crowd) relocate(i int) {
	now := c.weighed(i)
	best := spot{cost: math.Inf(1)}
	rooms := c.someRooms(c.items[i].room)
	for _, o := range c.somePoses(&c.items[i]) {
		if s := c.bestSpot(i, o, rooms); s.cost < best.cost {
			best = s
		}
	}
	if best.cost < now {
		it := &c.items[i]
		it.pose, it.room, it.at = best.pose, best.room, best.at
		c.measure(i)
	}
}

// somePoses is the item's own pose and some others, drawn by chance where there are many.
func (c *crowd) somePoses(it *item) []int {
	of := c.of[it.kind]
	if len(of) <= mostPoses {
		return of
	}
	c.tried = append(c.tried[:0], it.pose)
	for range mostPoses - 1 {
		c.tried = append(c.tried, of[c.rnd.IntN(len(of))])
	}
	return c.tried
}

// someRooms is the item's own room and some others, drawn by chance where there are many.
func (c *crowd) someRooms(own int) [mostRooms]int {
	rooms := [mostRooms]int{own}
	for k := 1; k < mostRooms; k++ {
		rooms[k] = -1
		if len(c.rooms) <= mostRooms && k < len(c.rooms) {
			rooms[k] = (own + k) % len(c.rooms)
		} else if len(c.rooms) > mostRooms {
			rooms[k] = (own + 1 + c.rnd.IntN(len(c.rooms)-1)) % len(c.rooms)
		}
	}
	return rooms
}

// bestSpot finds a good place for item i in pose o.
func (c *crowd) bestSpot(i, o int, rooms [mostRooms]int) spot {
	p, it := &c.poses[o], &c.items[i]
	var top shortlist
	top.clear()
	c.surround(i, o)
	try := func(r int, at plane.Point) {
		if cost := c.weigh(c.near, at, top[followed-1].cost); cost < top[followed-1].cost {
			top.add(spot{o, r, at, cost})
		}
	}
	for _, r := range rooms {
		if r < 0 {
			continue
		}
		lo, hi, fits := c.rooms[r].span(p)
		if !fits {
			continue
		}
		if r == it.room {
			w, h := (p.hi.X-p.lo.X)/2, (p.hi.Y-p.lo.Y)/2
			try(r, clamp(it.at, lo, hi))
			for range roundabout {
				try(r, clamp(plane.Point{X: it.at.X + w*(2*c.rnd.Float64()-1), Y: it.at.Y + h*(2*c.rnd.Float64()-1)}, lo, hi))
			}
		}
		for range scattered {
			try(r, c.any(lo, hi))
		}
	}
	size := min(p.hi.X-p.lo.X, p.hi.Y-p.lo.Y)
	best := spot{cost: math.Inf(1)}
	for _, s := range top {
		if !math.IsInf(s.cost, 1) {
			c.descend(&s, size/4, size/50)
			if s.cost < best.cost {
				best = s
			}
		}
	}
	if !math.IsInf(best.cost, 1) {
		c.descend(&best, size/100, size/1000)
	}
	return best
}

// surround lists all other items as obstacles to item i in pose o.
func (c *crowd) surround(i, o int) {
	c.near = c.near[:0]
	for j := range c.items {
		if j != i {
			c.obstruct(o, &c.items[j], c.load[i*len(c.items)+j])
		}
	}
}

// obstruct adds an item to the obstacles to pose o.
func (c *crowd) obstruct(o int, b *item, load float64) {
	p, q := &c.poses[b.pose], &c.poses[o]
	lo, hi := b.at.Add(p.lo).Sub(q.hi), b.at.Add(p.hi).Sub(q.lo)
	c.near = append(c.near, near{
		lo: plane.Point{X: lo.X - c.gap - hair, Y: lo.Y - c.gap - hair},
		hi: plane.Point{X: hi.X + c.gap + hair, Y: hi.Y + c.gap + hair},
		at: b.at, factor: load * p.size * q.size, view: c.view(b.pose, o),
	})
}

// weigh is the weighted overlap with obstacles at p, or at least enough where it is more than that.
func (c *crowd) weigh(near []near, p plane.Point, enough float64) float64 {
	c.meter.spent++
	t := 0.0
	for k := range near {
		q := &near[k]
		if p.X <= q.lo.X || p.X >= q.hi.X || p.Y <= q.lo.Y || p.Y >= q.hi.Y {
			continue
		}
		c.meter.spent++
		if d := q.view.depth(plane.Point{X: p.X - q.at.X, Y: p.Y - q.at.Y}); d > 0 {
			if t += d * q.factor; t >= enough {
				return t
			}
		}
	}
	return t
}
