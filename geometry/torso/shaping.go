package torso

import (
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
	b := s.before
	if s.aim.Girth > 0 && (s.aim.Breadth > 0) != (s.aim.Depth > 0) {
		b = s.usual().Near(s.aim.Girth, s.aim.Breadth, s.aim.Depth)
	}
	b = s.uneven(s.nearest(b, s.aim))
	s.aim.FrontArc = s.taken.FrontArc
	if s.hand.FrontArc != nil {
		s.aim.FrontArc = b.FrontArcs().Clamp(*s.hand.FrontArc)
	}
	return b
}

// nearest is the slice nearest to b that has girth, breadth, depth and left arc as aimed at; the
// front arc is seamed's. A breadth or depth that is open gives way; where none is, fullness does.
func (s *shaping) nearest(b section.Body, aim section.Readings) section.Body {
	switch {
	case aim.Girth == 0:
		b.Breadth, b.Depth = aim.Breadth, aim.Depth
		aim.Girth, _, _ = b.Arcs()
		if aim.LeftArc == 0 {
			return b
		}
	case aim.LeftArc == 0:
		return reaching(b, aim)
	}
	// Fullness and the open length hardly change what one side has of the girth.
	for range 2 {
		b = reaching(b.Uneven(aim.Girth, aim.LeftArc), aim)
	}
	return b
}

// reaching is b with the girth, breadth and depth aimed at.
func reaching(b section.Body, aim section.Readings) section.Body {
	switch {
	case aim.Breadth > 0 && aim.Depth > 0:
		return b.Filled(aim.Girth, aim.Breadth, aim.Depth)
	case aim.Breadth > 0 || aim.Depth > 0:
		return b.Reaching(aim.Girth, aim.Breadth, aim.Depth)
	}
	return b.Around(aim.Girth)
}

// uneven gives the slice the left arc wanted.
func (s *shaping) uneven(b section.Body) section.Body {
	s.aim.LeftArc = s.taken.LeftArc
	if s.hand.LeftArc != nil {
		s.aim.LeftArc = b.LeftArcs().Clamp(*s.hand.LeftArc)
	}
	if s.aim.LeftArc == 0 {
		return b
	}
	return s.nearest(b, s.aim)
}

// allowed are girth, breadth and depth as wanted, each brought into what the girth leaves it:
// what the hand set first, then what was taken.
func (s *shaping) allowed() section.Readings {
	r := section.Readings{Girth: s.taken.Girth, Breadth: given(s.hand.Breadth, s.taken.Breadth), Depth: given(s.hand.Depth, s.taken.Depth)}
	r.Breadth, r.Depth = s.box(r.Breadth, r.Depth)
	return r
}

// yielding is by how much more than it must a reading yields to the hand, mm, so that what the
// hand asks for can be corrected for the way in which it is drawn.
const yielding = 1.0

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
		breadth = s.usual().Breadths(girth).Clamp(breadth)
		if depth > 0 {
			depth = b.Depths(girth, breadth).Inside(yielding).Clamp(depth)
		}
	case depth > 0:
		depth = s.usual().Depths(girth).Clamp(depth)
		if breadth > 0 {
			breadth = b.Breadths(girth, depth).Inside(yielding).Clamp(breadth)
		}
	}
	return breadth, depth
}

// likely is how far the hand may change a breadth or a depth that no girth limits: our judgement.
func likely(v float64) section.Span { return section.Span{Least: 0.6 * v, Most: 1.6 * v} }

// usual says how readily breadth over depth and fullness give way. The rest gives way to what
// asks for it, and else stays as it is.
func (s *shaping) usual() section.Usual {
	return section.Usual{Body: s.before, Ratio: s.ratio, Fullness: fullnessSpread}
}
