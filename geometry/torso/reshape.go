package torso

import (
	"understructure/geometry/measure"
	"understructure/geometry/section"
)

// Reshape returns one level of the figure as the hand would shape it, while it is being
// dragged: the slice that Build would draw there, but for what the other levels would do in answer. It
// takes a fraction of the time. The tape is exact; what the girth does not allow is among the notices.
//
// What a leaves open follows the measurements, not what the hand had set there before; only a
// girth left open is the figure's. The level keeps its height.
func (t Torso) Reshape(l measure.Level, a measure.Adjustment) (Level, []measure.Notice) {
	a.Height = nil
	if sound(measure.Shape{l: a}) != nil || t.draft == nil {
		return t.At(l), nil
	}
	s, draw := t.draft.live(l, a)
	_, drawn := s.correct(s.settle(), draw)
	now := t.At(l)
	now.Section, now.Seam = drawn.Section, drawn.seam
	now.Girth, now.Reading = now.Section.Tape(), now.Section.Reading(now.Seam)
	return now, unmet(now, a)
}

// Limits are the ranges in which the hand may set what it sets at a level.
type Limits struct{ Height, Breadth, Depth, FrontArc, LeftArc section.Span }

// Limits returns the ranges of each part of an adjustment at a level while the others that a
// sets are held: a drag stops where they end. Beyond them Build and Reshape build the nearest that there is, and say so.
func (t Torso) Limits(l measure.Level, a measure.Adjustment) Limits {
	if sound(measure.Shape{l: a}) != nil || t.draft == nil {
		return Limits{}
	}
	d := t.draft
	s, _ := d.live(l, a)
	b := s.settle()
	m := Limits{Height: d.heightRoom(l), FrontArc: b.FrontArcs(), LeftArc: b.LeftArcs()}
	m.Breadth, m.Depth = likely(s.before.Breadth), likely(s.before.Depth)
	if girth := s.taken.Girth; girth > 0 {
		m.Breadth, m.Depth = s.usual().Breadths(girth), s.usual().Depths(girth)
		breadth, depth := m.Breadth, m.Depth
		if a.Depth != nil {
			m.Breadth = s.before.Breadths(girth, depth.Clamp(*a.Depth))
		}
		if a.Breadth != nil {
			m.Depth = s.before.Depths(girth, breadth.Clamp(*a.Breadth))
		}
	} else if l == measure.Shoulder {
		u := d.upper
		u.across = 0
		m.Breadth = u.acrossRoom()
	}
	return m
}

// live is what the hand does at a level of the finished figure, and how the slice is drawn.
func (d *draft) live(l measure.Level, a measure.Adjustment) (*shaping, func(section.Body) drawing) {
	girth := given(a.Girth, d.girth[l])
	switch i := levelIndex(l); {
	case l == measure.NeckBase:
		s := d.again(l, a, d.shapingNeck)
		s.taken.Girth = girth
		return s, neckDrawer(d.upper.nape+d.upper.neckDepth, 2*d.upper.neckDepth)
	case i < 0:
		e := *d
		e.upper.bentChest, e.upper.bentTip = nil, nil
		if l == measure.Shoulder {
			e.upper.setAcross(a)
		}
		if a.Girth == nil {
			a.Girth = d.hand[l].Girth
		}
		raw, s := e.shapingUpper(l, a)
		return s, bender(raw, s.before)
	default:
		s := d.again(l, a, func(a measure.Adjustment) *shaping { return d.shaping(i, a) })
		s.taken.Girth = girth
		if l == measure.Bust {
			was := *s
			lobes := d.lobed(l, was.settle())
			s.before.Lobe, s.before.Valley = lobes.Lobe, lobes.Valley
		}
		return s, drawBody
	}
}

// again is what the hand does at a level where it may have done something else before.
func (d *draft) again(l measure.Level, a measure.Adjustment, first func(measure.Adjustment) *shaping) *shaping {
	s := d.shaped[l]
	if s == nil {
		return first(a)
	}
	now := *s
	now.hand = a
	return &now
}

// heightRoom is where a level may stand between those next to it that were set by hand.
func (d *draft) heightRoom(l measure.Level) section.Span {
	switch l {
	case measure.NeckBase:
		return d.neckRoom()
	case measure.Shoulder:
		return d.shoulderRoom()
	}
	for _, r := range d.ladders() {
		from, first := 0.0, -1
		for i, name := range r.levels {
			if name == l {
				to, last := d.nextPinned(r, i)
				s := r.room(i, from, first, to, last)
				if r.way < 0 {
					s = section.Span{Least: -s.Most, Most: -s.Least}
				}
				return s
			}
			if d.hand[name].Height != nil {
				from, first = r.way*d.z.level[name], i
			}
		}
	}
	return section.Span{} // the waist
}
