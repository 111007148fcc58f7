package nest

import (
	"math"
	"slices"
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
