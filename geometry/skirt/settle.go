package skirt

import (
	"fmt"
	"math"

	"understructure/geometry/measure"
)

// settle finds how the cloth hangs: with the silhouette's profile and width if the garment has
// the girth for it; else with the profile drawn towards the garment's own cut, no more than
// needed; else less wide; else with cloth lying on the floor.
func (h *hanger) settle() error {
	if h.try(0, 1) {
		return nil
	}
	if h.try(1, 1) {
		drawn := 1 - largest(func(t float64) bool { return h.try(1-t, 1) })
		h.notice("profile-drawn-in", "", measure.HipGirth, 0,
			"The garment is not cut wide enough below the waist for this profile; it is drawn in by %.0f %% towards the garment's own cut.%s", 100*drawn, h.askHip())
		return nil
	}
	if h.wish.Stand == 0 && h.try(1, leastSpread) {
		share := largest(func(t float64) bool { return h.try(1, leastSpread+(1-leastSpread)*t) })
		h.notice("less-wide-than-silhouette", "", measure.HemGirth, 0,
			"The garment is not wide enough for this silhouette; its hem is stretched to %.0f %% of that.%s", 100*(leastSpread+(1-leastSpread)*share), h.askHip())
		return nil
	}
	return h.rest()
}

// askHip says what would help where the hip girth is not known.
func (h *hanger) askHip() string {
	if h.cloth.hip > 0 || h.cloth.straight {
		return ""
	}
	return " The hip girth was not taken; if the skirt is of straight breadths gathered into the band, say so, or take it with its fullness."
}

// largest is the greatest t from 0 to 1 that is ok, 0 being ok. It asks for it last.
func largest(ok func(t float64) bool) float64 {
	lo, hi := 0.0, 1.0
	for range 14 {
		if t := (lo + hi) / 2; ok(t) {
			lo = t
		} else {
			hi = t
		}
	}
	ok(lo)
	return lo
}

// try hangs the skirt with the profile drawn in and the silhouette's width taken in part, and reports whether
// the garment has the girth for it.
func (h *hanger) try(drawn, share float64) bool {
	h.drawLengths(drawn, share)
	for j := range h.meridians {
		m := &h.meridians[j]
		m.drawn, m.cut = drawn, h.cloth.cutOf(m.length)
	}
	for _, j := range balance {
		h.meridians[j].set(h.meridians[j].length)
	}
	wide := h.sil.Spread * share * h.aim()
	h.most = Oval{math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(1)}
	if h.train && wide > 0 {
		h.most = h.sil.oval(wide)
	}
	if h.stand = h.wish.Stand; h.stand == 0 {
		h.stand = h.wish.Gap + h.level(wide)
	}
	h.fall()
	return h.fits()
}

// rest lets cloth lie on the floor until the garment has the girth for what stands. Where even
// straight cloth lies too far out, the readings contradict each other.
func (h *hanger) rest() error {
	far, least := h.four(func(j int) float64 { return h.meridians[j].reach(h.lean[j]) }), Through(h.body.Waist)
	if h.on(least) {
		share := largest(func(t float64) bool { return h.on(least.blend(far, t)) })
		h.notice("hem-on-floor", "", measure.HemGirth, 0,
			"The lengths would reach farther out than the hem girth goes round; the support is drawn in to %.0f %% and the rest lies on the floor.%s", 100*share, h.askHip())
		return nil
	}
	if math.IsInf(h.cloth.hem, 1) {
		return fmt.Errorf("skirt: hip_girth is %.0f mm, too narrow for the mount with the waist at %.0f mm and the lengths %.0f, %.0f, %.0f mm (front, side, back); raise the waist, or take the hem girth",
			h.cloth.hip, h.stand, h.cloth.front, h.cloth.side, h.cloth.back)
	}
	over := h.tape(h.last())
	return fmt.Errorf("skirt: hem_girth is %.0f mm, want at least %.0f: with the waist at %.0f mm, so much cloth of the lengths %.0f, %.0f, %.0f mm (front, side, back) lies on the floor; or raise the waist",
		h.cloth.hem, math.Ceil(over), h.stand, h.cloth.front, h.cloth.side, h.cloth.back)
}

// on hangs the skirt reaching no farther out than most, at the stand found.
func (h *hanger) on(most Oval) bool {
	h.most = most
	h.fall()
	return h.fits()
}
