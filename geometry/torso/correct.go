package torso

import (
	"math"

	"understructure/geometry/section"
)

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
// hollow between two lobes, take from its readings. Where a breadth or depth that was taken cannot be
// drawn beside what the hand set, it yields: the outline stays as full or as lean as it may be.
func (s *shaping) correct(b section.Body, draw func(section.Body) drawing) (section.Body, drawing) {
	found, drawn, short := s.sought(b, s.aim, draw)
	if open, yields := s.yielded(); yields && short > near {
		limit := found.Leanest()
		if full := found.Fullest(); full.Front-found.Front < found.Front-limit.Front {
			limit = full
		}
		found, drawn, _ = s.sought(s.nearest(limit, open), open, draw)
	}
	if s.taken.Girth > 0 {
		drawn = drawn.grown(s.taken.Girth)
	}
	return found, drawn
}

// yielded is what is aimed at once the breadth or depth taken has yielded to the other, which the
// hand set; false where neither does.
func (s *shaping) yielded() (section.Readings, bool) {
	open := s.aim
	if s.aim.Girth == 0 || s.aim.Breadth == 0 || s.aim.Depth == 0 || (s.hand.Breadth != nil) == (s.hand.Depth != nil) {
		return open, false
	}
	if s.hand.Breadth != nil {
		open.Depth = 0
	} else {
		open.Breadth = 0
	}
	return open, true
}

// sought steps from b to the slice that has the readings wanted when it is drawn: it aims past the
// mark by as much as it fell short. The nearest found, and what it falls short by, mm.
func (s *shaping) sought(b section.Body, want section.Readings, draw func(section.Body) drawing) (section.Body, drawing, float64) {
	const mostTries = 6
	best, least := s.seamed(b, want), math.Inf(1)
	var drawn drawing
	aim := newAiming(want)
	for next := best; ; {
		d := draw(next)
		short, most := aim.short(d.reading())
		if most < least {
			best, drawn, least = next, d, most
		}
		if most < near || aim.tries == mostTries {
			return best, drawn, least
		}
		past := aim.next(short)
		next = s.seamed(s.nearest(next, past), past)
	}
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
