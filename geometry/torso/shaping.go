package torso

import (
	"math"

	"understructure/geometry/measure"
	"understructure/geometry/section"
)

// shaping is one slice that is shaped by hand. The slice as it was before departs as little
// as it can, so that a hand that asks for what is there already changes nothing.
type shaping struct {
	before section.Body
	ratio  float64            // how readily breadth over depth gives; see section.Usual
	taken  section.Readings   // what the tape has settled; it yields to the hand. A girth of 0 is free
	hand   measure.Adjustment // what the hand asks for; it yields to the girth
	aim    section.Readings   // what is built of both; set by settle
}

// shapes reports whether an adjustment changes a slice in more than its size.
func shapes(a measure.Adjustment) bool {
	return a.Breadth != nil || a.Depth != nil || a.FrontArc != nil || a.LeftArc != nil
}

// given is the value that the hand set, or the other where it set none.
func given(hand *float64, otherwise float64) float64 {
	if hand != nil {
		return *hand
	}
	return otherwise
}

// settle finds the slice that has the girth, what the hand asks for as far as the girth
// allows it, and of what was taken what the hand allows.
func (s *shaping) settle() section.Body {
	s.aim = s.allowed()
	b, err := s.nearest(s.before, s.aim)
	if err != nil {
		// Nothing holds what was left open: hold it where it was.
		s.aim.Breadth, s.aim.Depth = s.box(or(s.aim.Breadth, s.before.Breadth), or(s.aim.Depth, s.before.Depth))
		b = s.before.Filled(s.aim.Girth, s.aim.Breadth, s.aim.Depth)
	}
	b = s.uneven(b)
	s.aim.FrontArc = s.taken.FrontArc
	if s.hand.FrontArc != nil {
		s.aim.FrontArc = b.FrontArcs().Clamp(*s.hand.FrontArc)
	}
	return b
}

// nearest is the slice nearest to the one before that has girth, breadth, depth and left arc as aimed
// at; the front arc is seamed's. It steps from b.
func (s *shaping) nearest(b section.Body, aim section.Readings) (section.Body, error) {
	aim.FrontArc = 0
	held := aim.Breadth > 0 || aim.Depth > 0
	switch {
	case aim.Girth == 0:
		return section.Refit(b, aim, s.usual(aim))
	case aim.LeftArc > 0 && !held:
		return s.before.Uneven(aim.Girth, aim.LeftArc), nil
	case aim.LeftArc > 0:
		u := s.before
		for range 2 { // fullness hardly changes what one side has of the girth
			u = u.Uneven(aim.Girth, aim.LeftArc).Filled(aim.Girth, or(aim.Breadth, b.Breadth), or(aim.Depth, b.Depth))
		}
		return u, nil
	case aim.Breadth > 0 && aim.Depth > 0:
		return s.before.Filled(aim.Girth, aim.Breadth, aim.Depth), nil
	}
	return section.Refit(b, aim, s.usual(aim))
}

// uneven gives the slice the left arc wanted, where it can have one; what was taken yields.
func (s *shaping) uneven(b section.Body) section.Body {
	plain := s.aim
	s.aim.LeftArc = s.taken.LeftArc
	if s.hand.LeftArc != nil {
		s.aim.LeftArc = b.LeftArcs().Clamp(*s.hand.LeftArc)
	}
	if s.aim == plain {
		return b
	}
	with, err := s.nearest(b, s.aim)
	if err != nil {
		s.aim = plain
		return b
	}
	return with
}

// allowed are girth, breadth and depth as wanted, each brought into what the girth leaves it:
// what the hand set first, then what was taken.
func (s *shaping) allowed() section.Readings {
	r := section.Readings{Girth: s.taken.Girth, Breadth: given(s.hand.Breadth, s.taken.Breadth), Depth: given(s.hand.Depth, s.taken.Depth)}
	r.Breadth, r.Depth = s.box(r.Breadth, r.Depth)
	return r
}

// box brings a breadth and a depth, 0 where open, into what the girth allows.
func (s *shaping) box(breadth, depth float64) (float64, float64) {
	b, girth := s.before, s.taken.Girth
	if girth == 0 {
		return likely(b.Breadth).Clamp(breadth), likely(b.Depth).Clamp(depth)
	}
	handB, handD := s.hand.Breadth != nil, s.hand.Depth != nil
	switch {
	case breadth > 0 && depth > 0 && handB == handD:
		f := b.Within(girth, breadth, depth)
		return f * breadth, f * depth
	case breadth > 0 && !handD:
		breadth = b.Breadths(girth, 0).Clamp(breadth)
		if depth > 0 {
			depth = b.Depths(girth, breadth).Clamp(depth)
		}
	case depth > 0:
		depth = b.Depths(girth, 0).Clamp(depth)
		if breadth > 0 {
			breadth = b.Breadths(girth, depth).Clamp(breadth)
		}
	}
	return breadth, depth
}

// likely is how far the hand may change a breadth or a depth that no girth limits: our judgement.
func likely(v float64) section.Span { return section.Span{Least: 0.6 * v, Most: 1.6 * v} }

// usual says how readily each part of the slice gives way. Front and back keep their own
// fullness against each other, and what no reading asks for stays as it is. Where the side seams lie
// does not touch the outline; seamed sees to that.
func (s *shaping) usual(aim section.Readings) section.Usual {
	u := section.Usual{Body: s.before, Ratio: s.ratio}
	if aim.Girth > 0 {
		u.Fullness = fullnessSpread
	}
	if aim.LeftArc > 0 {
		u.Balance = balanceSpread
	}
	return u
}

// drawing is a slice drawn about the axis, and the y of its side seams.
type drawing struct {
	section.Section
	seam float64
}

func (d drawing) reading() section.Readings { return d.Reading(d.seam) }

// grown is the drawing at the size at which its tape has the girth.
func (d drawing) grown(girth float64) drawing {
	f := girth / d.Tape()
	return drawing{d.Scale(f), d.seam * f}
}

// near is how nearly a slice drawn must have what is wanted of it, mm.
const near = 0.02

// correct sets the side seams, and makes up for what drawing a slice in directions, and the
// hollow between two lobes, take from its readings: it aims past the mark by as much as it fell short.
func (s *shaping) correct(b section.Body, draw func(section.Body) drawing) (section.Body, drawing) {
	const mostTries = 6
	best, least := s.seamed(b, s.aim), math.Inf(1)
	var drawn drawing
	aim := newAiming(s.aim)
	for next := best; ; {
		d := draw(next)
		short, most := aim.short(d.reading())
		if most < least {
			best, drawn, least = next, d, most
		}
		if most < near || aim.tries == mostTries {
			break
		}
		past := aim.next(short)
		b, err := s.nearest(next, past)
		if err != nil {
			break
		}
		next = s.seamed(b, past)
	}
	if s.taken.Girth > 0 {
		drawn = drawn.grown(s.taken.Girth)
	}
	return best, drawn
}

// seamed is the slice with its side seams where they cut off the front arc aimed at; where
// the hand set that arc, the slice moves forward past its seams, which stay where they were.
func (s *shaping) seamed(b section.Body, aim section.Readings) section.Body {
	if aim.FrontArc > 0 {
		b.Seam = b.SeamOf(aim.FrontArc)
	}
	if s.hand.FrontArc != nil {
		b.Y = s.before.Y + s.before.Seam - b.Seam
	}
	return b
}
