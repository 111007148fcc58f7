package skirt

import (
	"math"

	"understructure/geometry/measure"
	"understructure/geometry/section"
)

// take fills the cloth from the readings, and draws what was not taken from the silhouette.
func (h *hanger) take(g Garment) {
	c, r := &h.cloth, g.Readings
	c.hipDepth, c.straight = g.HipDepth, g.Cut == Straight
	if c.hipDepth == 0 {
		c.hipDepth = UsualHipDepth
	}
	var ok bool
	if c.waist, ok = r[measure.WaistGirth]; !ok {
		c.waist = h.body.Waist.Tape() + h.wish.Ease
		h.draw(measure.WaistGirth, c.waist, "the mount's own waist and the ease")
	}
	c.hip = r[measure.HipGirth]
	if c.hem, ok = r[measure.HemGirth]; !ok {
		c.hem = math.Inf(1)
		h.notice("hem-not-taken", "", measure.HemGirth, 0,
			"The hem girth was not taken, so nothing says how wide the support may be at the hem; please take it before anything is made.")
		if h.sil.Hem > 0 {
			h.draw(measure.HemGirth, h.sil.Hem, "the usual hem of the years; not a limit that the garment sets")
		}
	}
	h.takeLengths(r)
}

func (h *hanger) draw(k measure.Key, v float64, source string) { h.drawn[k] = Drawn{v, source} }

// aim is the hem girth that the support may stretch, mm; 0 where nothing says.
func (h *hanger) aim() float64 {
	if math.IsInf(h.cloth.hem, 1) {
		return h.sil.Hem
	}
	return math.Max(h.cloth.hem-h.wish.Ease, leastHem/2)
}

// lines are the directions of the lengths, the right for the side.
var lines = [3]int{section.Front, section.Right, section.Back}

// takeLengths fills in the lengths taken, and notes the one that the others are drawn from.
func (h *hanger) takeLengths(r measure.Sheet) {
	h.known = -1
	for i, k := range lengths {
		v, ok := r[k]
		if *h.cloth.line(i) = v; ok && h.known < 0 {
			h.known = i
		}
	}
	front, okF := r[measure.FrontLength]
	back, okB := r[measure.BackLength]
	h.train = h.wish.Train == OnFloor || h.wish.Train == ByLength && okF && okB && back-front >= trained
}

// line is the length in front, at the side or behind.
func (c *cloth) line(i int) *float64 { return [3]*float64{&c.front, &c.side, &c.back}[i] }

// drawLengths draws the lengths that were not taken so that the hem hangs level, as wide as a
// part of the silhouette and with a profile that is drawn in as far.
func (h *hanger) drawLengths(drawn, share float64) {
	taken := *h.cloth.line(h.known)
	reach := h.reach(share)
	hung := func(i int) meridian {
		m := h.meridian(lines[i])
		m.cut, m.drawn = h.cloth.cutOf(taken), drawn
		return m
	}
	m := hung(h.known)
	m.set(taken)
	level := math.Max(m.drop(m.leanTo(reach[h.known])), leastDrop*taken)
	for i, k := range lengths {
		if _, ok := h.taken[k]; !ok {
			m := hung(i)
			m.span(reach[i], level)
			*h.cloth.line(i) = h.between(i, m.stand)
			h.draw(k, *h.cloth.line(i), "the "+string(lengths[h.known])+" and a level hem on the silhouette of the years")
		}
	}
	for j := range h.meridians {
		h.meridians[j].length = toward(Oval{h.cloth.side, h.cloth.side, h.cloth.front, h.cloth.back}, section.Direction(j))
	}
}

// shortestTaken is the least length that was taken.
func (h *hanger) shortestTaken() float64 {
	least := math.Inf(1)
	for _, k := range lengths {
		if v, ok := h.taken[k]; ok {
			least = math.Min(least, v)
		}
	}
	return least
}

// meridian is the cloth in direction j, its length not yet known.
func (h *hanger) meridian(j int) meridian {
	m := meridian{waist: h.body.Waist[j], hip: h.body.Hip[j], profile: h.sil.toward(section.Direction(j))}
	if h.body.HipDepth > 0 {
		m.bend = math.Hypot(h.body.HipDepth, m.hip-m.waist)
	}
	return m
}

// between keeps the length of a side between front and back, where both were taken.
func (h *hanger) between(i int, v float64) float64 {
	f, okF := h.taken[measure.FrontLength]
	b, okB := h.taken[measure.BackLength]
	if lengths[i] != measure.SideLength || !okF || !okB {
		return v
	}
	return math.Max(math.Min(f, b), math.Min(math.Max(f, b), v))
}

// reach is how far a hem as wide as a part of the silhouette lies from the axis in front, at the sides and behind, never
// within the waist.
func (h *hanger) reach(share float64) [3]float64 {
	w := &h.body.Waist
	out := [3]float64{w[section.Front], w[section.Right], w[section.Back]}
	if h.aim() > 0 {
		hem := h.sil.oval(h.sil.Spread * share * h.aim())
		for i, r := range [3]float64{hem.Front, hem.Right, hem.Back} {
			out[i] = math.Max(out[i], r)
		}
	}
	return out
}
