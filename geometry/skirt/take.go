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

// takeLengths draws a length that was not taken so that the hem hangs level on the year's
// silhouette, as a cone from the waist to the hem would.
func (h *hanger) takeLengths(r measure.Sheet) {
	c := &h.cloth
	at := []*float64{&c.front, &c.side, &c.back}
	out := h.flare()
	known := -1
	for i, k := range lengths {
		if v, ok := r[k]; ok {
			*at[i] = v
			if known < 0 {
				known = i
			}
		}
	}
	level := drop(*at[known], out[known])
	for i, k := range lengths {
		if _, ok := r[k]; !ok {
			*at[i] = h.between(i, math.Hypot(level, out[i]), r)
			h.draw(k, *at[i], "the "+string(lengths[known])+" and a level hem on the silhouette of the years")
		}
	}
	front, okF := r[measure.FrontLength]
	back, okB := r[measure.BackLength]
	h.train = h.wish.Train == OnFloor || h.wish.Train == ByLength && okF && okB && back-front >= trained
}

// between keeps the length of a side between front and back, where both were taken.
func (h *hanger) between(i int, v float64, r measure.Sheet) float64 {
	f, okF := r[measure.FrontLength]
	b, okB := r[measure.BackLength]
	if lengths[i] != measure.SideLength || !okF || !okB {
		return v
	}
	return math.Max(math.Min(f, b), math.Min(math.Max(f, b), v))
}

// flare is how far the year's hem lies outside the waist in front, at the sides and behind.
func (h *hanger) flare() [3]float64 {
	if h.aim() == 0 {
		return [3]float64{}
	}
	hem := h.sil.oval(h.sil.Spread * h.aim())
	w := &h.body.Waist
	out := func(hem, waist float64) float64 { return math.Max(0, hem-waist) }
	return [3]float64{
		out(hem.Front, w[section.Front]), out(hem.Right, (w[section.Right]+w[section.Left])/2), out(hem.Back, w[section.Back]),
	}
}

// drop is how far down a cloth goes that goes out by out; a flat one still goes down by leastDrop.
func drop(length, out float64) float64 {
	return math.Sqrt(math.Max(length*length*leastDrop*leastDrop, (length-out)*(length+out)))
}
