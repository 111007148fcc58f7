package skirt

import (
	"math"

	"understructure/geometry/curve"
	"understructure/geometry/plane"
)

// How many straight steps a meridian is drawn in: over the hip, from there to the hem or the
// floor, and along the floor. 64 steps keep a dome 1 m long to 0.1 mm.
const overHip, hanging, onFloor = 12, 64, 8

// meridian is the cloth in one direction, from waist to hem. Every step is as long on the
// skirt as on the cloth, whatever the profile.
type meridian struct {
	length     float64 // of the cloth
	waist, hip float64 // distance of the body from the axis
	bend       float64 // cloth from the waist to the hip; 0 where there is none
	taper      float64 // part by which cloth that nothing holds out draws in towards a narrow hem
	profile    Profile
	cut        cut
	drawn      float64 // how far the profile is drawn towards the garment's own cut, 0 to 1

	stand float64   // cloth above the floor, for which the rows below are valid
	s, q  []float64 // cloth from the waist at every row, and how far out it can have come there
	base  []float64 // distance from the axis where nothing holds the cloth out
	still []float64 // distance from the axis of the waist, drawn in as the taper says
}

// set prepares the rows for a length of cloth above the floor.
func (m *meridian) set(stand float64) {
	n := hanging
	if m.bend > 0 {
		n += overHip
	}
	if len(m.s) != n+1 {
		all := make([]float64, 4*(n+1))
		m.s, m.q, m.base, m.still = all[:n+1], all[n+1:2*(n+1)], all[2*(n+1):3*(n+1)], all[3*(n+1):]
	}
	m.stand = stand
	steepest := 0.0
	for k := range m.s {
		s := stand * float64(k) / hanging
		if m.bend > 0 {
			s = m.bend * float64(k) / overHip
			if k > overHip {
				s = m.bend + (stand-m.bend)*float64(k-overHip)/hanging
			}
		}
		v := math.Min(1, s/stand)
		m.s[k], m.q[k] = s, m.profile.out(v)
		slope := m.profile.slope(v)
		if m.drawn > 0 {
			m.q[k] += m.drawn * (m.cut.out(v) - m.q[k])
			slope += m.drawn * (m.cut.slope(v) - slope)
		}
		if k > 0 { // between two rows it may be steeper than at either
			slope = math.Max(math.Abs(slope), math.Abs(m.q[k]-m.q[k-1])/(v-m.s[k-1]/stand))
		}
		steepest = math.Max(steepest, math.Abs(slope))
		m.base[k], m.still[k] = m.body(s)
	}
	for k := range m.q {
		m.q[k] *= stand / steepest
	}
}

// body is where cloth lies that nothing holds out: over the hip, then straight down, drawn in by the taper.
func (m *meridian) body(s float64) (base, still float64) {
	if m.bend > 0 && s <= m.bend {
		return m.waist + (m.hip-m.waist)*s/m.bend, m.waist
	}
	in := 1 - m.taper*(s-m.bend)/(m.stand-m.bend)
	if m.bend == 0 {
		return m.waist * in, m.waist * in
	}
	return m.hip * in, m.waist * in
}

// radius is the distance from the axis at row k when the cloth leans out by the part lean of what it can: at 1 it
// lies level where it is steepest.
func (m *meridian) radius(k int, lean float64) float64 {
	if out := m.still[k] + lean*m.q[k]; out > m.base[k] {
		return out
	}
	return m.base[k]
}

// reach is the distance from the axis at the last row.
func (m *meridian) reach(lean float64) float64 { return m.radius(len(m.s)-1, lean) }

// drop is how far the last row hangs below the waist.
func (m *meridian) drop(lean float64) float64 {
	d, before := 0.0, m.radius(0, lean)
	for k := 1; k < len(m.s); k++ {
		r := m.radius(k, lean)
		d += down(m.s[k]-m.s[k-1], r-before)
		before = r
	}
	return d
}

// down is how far a step of cloth goes down that goes out, or in, by dr.
func down(ds, dr float64) float64 {
	if math.Abs(dr) >= ds {
		return 0
	}
	return math.Sqrt((ds - dr) * (ds + dr))
}

// exact is to what the lean is solved, as a part of its range.
const exact = 1e-13

// hang lets the cloth fall so that its hem is level at a depth below the waist, but reaches
// no farther out than most. What is too long then goes down to the floor and lies on it. It
// returns the cloth above the floor and the lean.
func (m *meridian) hang(level, floor, most float64) (stand, lean float64) {
	if m.stand != m.length {
		m.set(m.length)
	}
	if m.drop(0) <= level {
		return m.length, 0
	}
	if lean, err := curve.Root(func(a float64) float64 { return m.drop(a) - level }, 0, 1, exact); err == nil && m.reach(lean) <= most {
		return m.length, lean
	}
	if m.drop(m.leanTo(most)) <= floor {
		return m.length, m.leanTo(most)
	}
	least := m.bend + 1
	stand, err := curve.Root(func(l float64) float64 {
		m.set(l)
		return m.drop(m.leanTo(most)) - floor
	}, least, m.length, 1e-12)
	if err != nil { // the floor is not below the hip
		stand = least
	}
	m.set(stand)
	return stand, m.leanTo(most)
}

// span gives the meridian the cloth that it needs to reach from the waist to a distance from the axis at a depth,
// and returns its lean.
func (m *meridian) span(reach, depth float64) float64 {
	longest := depth + reach + 2*math.Max(m.waist, m.hip) + m.bend
	stand, err := curve.Root(func(l float64) float64 {
		m.set(l)
		return m.drop(m.leanTo(reach)) - depth
	}, math.Max(depth, m.bend+1), longest, 1e-9)
	if err != nil {
		stand = math.Max(depth, m.bend+1)
	}
	m.set(stand)
	return m.leanTo(reach)
}

// leanTo is the lean that reaches a distance from the axis, as far as it can.
func (m *meridian) leanTo(reach float64) float64 {
	last := len(m.s) - 1
	return math.Max(0, math.Min(1, (reach-m.still[last])/m.q[last]))
}

// line is the meridian in its upright plane: X away from the axis, Y up from the waist; the
// rows above the floor, then, where train is wanted, those on it.
func (m *meridian) line(lean float64, train bool) []plane.Point {
	at := plane.Point{X: m.radius(0, lean)}
	out := []plane.Point{at}
	for k := 1; k < len(m.s); k++ {
		r := m.radius(k, lean)
		at = plane.Point{X: r, Y: at.Y - down(m.s[k]-m.s[k-1], r-at.X)}
		out = append(out, at)
	}
	for k := 1; train && k <= onFloor; k++ {
		out = append(out, plane.Point{X: at.X + (m.length-m.stand)*float64(k)/onFloor, Y: at.Y})
	}
	return out
}
