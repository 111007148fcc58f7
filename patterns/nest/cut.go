package nest

import (
	"cmp"
	"math"
	"slices"

	"understructure/geometry/plane"
)

// less is the right edge after a part of the length is taken off, but not below the floor.
func (s *shortening) less(step, floor float64) float64 {
	return max(floor, s.end-step*(s.end-s.rooms[s.room].lo.X))
}

// restart takes the best layout and takes off its length up to end, at an upright line drawn by chance.
func (s *shortening) restart(end float64) {
	copy(s.items, s.best)
	lo := s.rooms[s.room].lo.X
	s.cut(s.end, end, lo+s.rnd.Float64()*(s.end-lo))
}

// stretch gives a near miss some length back, where its deepest overlap lies.
func (s *shortening) stretch(from, to float64) {
	s.cut(from, to, s.worst())
	s.unload()
	if s.separate(patience, strikes) {
		s.keep()
	}
}

// worst is where the deepest overlap lies.
func (s *shortening) worst() float64 {
	n := len(s.items)
	deepest, x := 0.0, 0.0
	for i := range s.moves {
		for j, d := range s.depth[i*n : (i+1)*n] {
			if d > deepest {
				deepest, x = d, (s.middle(i).X+s.middle(j).X)/2
			}
		}
	}
	return x
}

// cut moves the right edge of the room, and everything whose middle lies right of a line with it.
func (s *shortening) cut(from, to, line float64) {
	s.rooms[s.room].hi.X = to
	for i := range s.items[:s.moves] {
		it := &s.items[i]
		if it.room != s.room {
			continue
		}
		if s.middle(i).X > line {
			it.at.X += to - from
		}
		s.settle(it)
	}
	s.measureAll()
}

// missed files the layout among the misses.
func (s *shortening) missed() {
	m := miss{s.total(), slices.Clone(s.items)}
	k, _ := slices.BinarySearchFunc(s.misses, m, func(a, b miss) int { return cmp.Compare(a.overlap, b.overlap) })
	s.misses = slices.Insert(s.misses, k, m)
}

// disturb takes up a miss, rather a near one, and exchanges two of its larger items.
func (s *shortening) disturb() {
	k := int(math.Abs(s.rnd.NormFloat64()) / 4 * float64(len(s.misses)))
	copy(s.items, s.misses[min(k, len(s.misses)-1)].items)
	large := (s.moves + 1) / 2 // they stand in the order of their bulk
	i, j := s.rnd.IntN(large), s.rnd.IntN(s.moves)
	for n := 0; n < 100 && s.items[i].kind == s.items[j].kind; n++ {
		j = s.rnd.IntN(large)
	}
	s.swap(i, j)
	s.measureAll()
}

// settle puts an item back into its room, or into another where that has become too short for it.
func (c *crowd) settle(it *item) {
	if it.room >= 0 {
		if lo, hi, fits := c.rooms[it.room].span(&c.poses[it.pose]); fits {
			it.at = clamp(it.at, lo, hi)
			return
		}
	}
	first := c.rnd.IntN(len(c.rooms))
	for k := range c.rooms {
		r := (first + k) % len(c.rooms)
		for _, o := range c.of[it.kind] {
			if lo, hi, fits := c.rooms[r].span(&c.poses[o]); fits {
				it.pose, it.room, it.at = o, r, c.any(lo, hi)
				return
			}
		}
	}
}

// swap puts the middle of each of two items where the other's was.
func (c *crowd) swap(i, j int) {
	a, b := &c.items[i], &c.items[j]
	d := c.middle(j).Sub(c.middle(i))
	a.at, b.at = a.at.Add(d), b.at.Sub(d)
	a.room, b.room = b.room, a.room
	c.settle(a)
	c.settle(b)
}

// middle is that of the box round an item.
func (c *crowd) middle(i int) plane.Point {
	lo, hi := c.box(&c.items[i])
	return lo.Lerp(hi, 0.5)
}
