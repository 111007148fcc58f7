package nest

import (
	"cmp"
	"math"
	"slices"

	"understructure/geometry/plane"
)

// shorten makes a room shorter, as often as the overlaps that this brings can be pulled apart: first in large
// steps, with a new start from among the nearest misses wherever that fails, then in ever smaller
// steps from the best layout. It ends with the best layout, when the effort is spent or the room is empty.
func (c *crowd) shorten(r int) {
	s := &shortening{crowd: c, room: r, best: slices.Clone(c.items)}
	s.end = s.reach()
	c.meter.stage(explored)
	s.explore()
	c.meter.stage(1)
	s.squeeze()
	copy(c.items, s.best)
	c.rooms[r].hi.X = s.end
	c.measureAll()
}

// How a room is shortened. Chosen by trial on the instances in testdata/nesting.
const (
	explored = 0.8 // part of the effort spent on large steps

	firstStep, leastStep = 0.01, 0.001 // part of the length taken off at once; halved at every miss
	patience, strikes    = 200, 3

	firstSqueeze, lastSqueeze       = 5e-4, 1e-5
	squeezePatience, squeezeStrikes = 100, 5
)

type shortening struct {
	*crowd
	room   int
	best   []item  // without overlap
	end    float64 // right edge of the room in best
	misses []miss  // from the nearest on
}

// miss is a layout in which some overlap was left.
type miss struct {
	overlap float64
	items   []item
}

// reach is how far the items in the room reach; its left edge where there are none.
func (s *shortening) reach() float64 {
	x := s.rooms[s.room].lo.X
	for i := range s.items[:s.moves] {
		if it := &s.items[i]; it.room == s.room {
			_, hi := s.box(it)
			x = max(x, hi.X)
		}
	}
	return x
}

// floor is a right edge that can't be undercut: by the longest piece that fits into no other room, and if
// there is no other room by the area of all pieces.
func (s *shortening) floor() float64 {
	r := s.rooms[s.room]
	area, long := 0.0, 0.0
	for i := range s.items[:s.moves] {
		kind := s.items[i].kind
		area += s.area[kind]
		if short, alone := s.shortest(kind); alone {
			long = max(long, short)
		}
	}
	if len(s.rooms) > 1 {
		area = 0
	}
	return r.lo.X + max(long, area/(r.hi.Y-r.lo.Y))
}

// shortest is the least length in which a kind fits into the room, and whether it fits into no other.
func (s *shortening) shortest(kind int) (length float64, alone bool) {
	length, alone = math.Inf(1), true
	r := s.rooms[s.room]
	for _, o := range s.of[kind] {
		p := &s.poses[o]
		if p.hi.Y-p.lo.Y <= r.hi.Y-r.lo.Y {
			length = min(length, p.hi.X-p.lo.X)
		}
		for k, other := range s.rooms {
			if _, _, fits := other.span(p); fits && k != s.room {
				alone = false
			}
		}
	}
	return length, alone
}

// keep takes the layout, which has no overlap, for the best.
func (s *shortening) keep() {
	copy(s.best, s.items)
	s.end = s.reach()
	s.misses = nil
}

// less is the right edge after a part of the length is taken off, but not below the floor.
func (s *shortening) less(step, floor float64) float64 {
	return max(floor, s.end-step*(s.end-s.rooms[s.room].lo.X))
}

func (s *shortening) explore() {
	floor := s.floor()
	for step := firstStep; !s.meter.over() && s.end > floor+hair; {
		end := s.less(step, floor)
		if len(s.misses) == 0 {
			s.restart(end)
		}
		s.unload()
		switch {
		case s.separate(patience, strikes):
			s.keep()
		case step > leastStep:
			step = max(step/2, leastStep)
			s.stretch(end, s.less(step, floor))
		default:
			s.missed()
			s.disturb()
		}
	}
}

func (s *shortening) squeeze() {
	floor := s.floor()
	from := s.meter.spent
	for !s.meter.over() && s.end > floor+hair {
		done := float64(s.meter.spent-from) / float64(s.meter.until-from)
		s.restart(s.less(firstSqueeze*math.Pow(lastSqueeze/firstSqueeze, done), floor))
		s.unload()
		if s.separate(squeezePatience, squeezeStrikes) {
			s.keep()
		}
	}
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
