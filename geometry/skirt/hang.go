package skirt

import (
	"fmt"
	"maps"
	"math"

	"understructure/geometry/curve"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/section"
)

// trained is how much longer than its front a skirt's back is when it is meant to lie on the
// floor, mm. Published day skirts differ by up to 127 (about 1903), a train by 736 (Museum of
// the City of New York 62.190.1, 1866–67); the figure between them is ours.
const trained = 150.0

// leastDrop is the least part of its length that a skirt hangs down: no support holds it
// flatter. From memory.
const leastDrop = 0.5

// readable is the least that a tape can tell, mm.
const readable = 0.5

// Hang hangs a garment on a body. In every direction the cloth is as long as taken; at no
// depth does it need more girth than the garment has. With Wish.Stand it finds how far out the
// hem reaches; without it, the stand at which the hem is as wide as the silhouette has it. A
// skirt whose back is longer than its front by 150 mm or more has a train: there the
// silhouette says how far the skirt reaches where it stands, and the rest lies on the floor.
//
// The error names a value and what is allowed when nothing can hang so.
func Hang(g Garment, b Body, w Wish) (Skirt, error) {
	for _, err := range []error{g.check(), b.check(), w.check()} {
		if err != nil {
			return Skirt{}, err
		}
	}
	h := newHanger(g, b, w)
	if least := w.leastStand(h.body); w.Stand != 0 && w.Stand < least {
		return Skirt{}, fmt.Errorf("skirt: waist_height is %.6g mm, want at least %.0f, or 0 to find it: the hem hangs below the hip", w.Stand, math.Ceil(least))
	}
	if w.Stand == 0 && h.aim() == 0 {
		return Skirt{}, fmt.Errorf("skirt: hem_girth was not taken and the silhouette knows none; the stand cannot be found, so give a waist_height")
	}
	if err := h.settle(); err != nil {
		return Skirt{}, err
	}
	return h.skirt(), nil
}

// hanger is a skirt on its way to hang.
type hanger struct {
	body    Body
	wish    Wish
	sil     Silhouette
	taken   measure.Sheet
	cloth   cloth
	train   bool
	notices []measure.Notice
	drawn   map[measure.Key]Drawn

	meridians []meridian // one a direction
	even      bool       // left and right are alike
	stand     float64
	most      Oval // how far out the balance lines may reach where they stand
	lean      section.Section
}

func newHanger(g Garment, b Body, w Wish) *hanger {
	h := &hanger{body: b, wish: w, sil: w.Silhouette.orPlain(), taken: maps.Clone(g.Readings), drawn: map[measure.Key]Drawn{}}
	h.take(g)
	if over := b.Waist.Tape() - (h.cloth.waist - w.Ease); over > readable {
		h.notice("waist-over-skirt", measure.Waist, measure.WaistGirth, over,
			"The mount measures %.0f mm round at the waist, %.0f mm more than the skirt leaves with its ease.", b.Waist.Tape(), over)
	}
	h.body = b.above(0.9 * min(h.cloth.front, h.cloth.side, h.cloth.back))
	h.even = h.body.even()
	h.meridians = make([]meridian, section.Directions)
	taper := h.taper()
	for j := range h.meridians {
		m := &h.meridians[j]
		m.waist, m.hip, m.taper = h.body.Waist[j], h.body.Hip[j], taper
		if h.body.HipDepth > 0 {
			m.bend = math.Hypot(h.body.HipDepth, m.hip-m.waist)
		}
		d := section.Direction(j)
		m.length = toward(Oval{h.cloth.side, h.cloth.side, h.cloth.front, h.cloth.back}, d)
		m.profile, m.cut = h.sil.toward(d), h.cloth.cutOf(m.length)
	}
	return h
}

// taper is how far cloth draws in towards a hem that is narrower than the body above it.
func (h *hanger) taper() float64 {
	lowest := h.body.at(h.body.HipDepth)
	return math.Max(0, math.Min(0.9, 1-(h.cloth.hem-h.wish.Ease)/lowest.Tape()))
}

func (h *hanger) notice(code string, l measure.Level, k measure.Key, amount float64, format string, args ...any) {
	h.notices = append(h.notices, measure.Notice{Code: code, Level: l, Key: k, Amount: math.Round(amount*10) / 10, Message: fmt.Sprintf(format, args...)})
}

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
			"The garment is not wide enough for this silhouette; its hem is stretched to %.0f %% of that.", 100*(leastSpread+(1-leastSpread)*share))
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
	for j := range h.meridians {
		h.meridians[j].drawn = drawn
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

// balance are the four lines along which a skirt is measured.
var balance = [4]int{section.Right, section.Front, section.Left, section.Back}

// four gathers something of the balance lines.
func (h *hanger) four(of func(j int) float64) Oval {
	return Oval{Right: of(section.Right), Left: of(section.Left), Front: of(section.Front), Back: of(section.Back)}
}

// toward goes smoothly from one of four values to the next, in the direction of the unit vector d.
func toward(v Oval, d plane.Point) float64 {
	x, y := v.axes(d)
	return x*d.X*d.X + y*d.Y*d.Y
}

// fall hangs the balance lines at the stand found. Between them foot and hem are ovals, and the cloth is as
// long as it then must be.
func (h *hanger) fall() {
	for _, j := range balance {
		_, h.lean[j] = h.meridians[j].hang(h.stand-h.wish.Gap, h.stand, h.most.Reach(section.Direction(j)))
	}
	foot := h.four(func(j int) float64 { return h.meridians[j].reach(h.lean[j]) })
	hem := h.four(func(j int) float64 { m := &h.meridians[j]; return m.reach(h.lean[j]) + m.length - m.stand })
	depth := h.four(func(j int) float64 { return h.meridians[j].drop(h.lean[j]) })
	for j := range h.meridians {
		if j%(section.Directions/4) == 0 {
			continue
		}
		m, like := &h.meridians[j], (section.Directions*3/2-j)%section.Directions
		if h.even && like < j {
			h.lean[j], m.length = h.lean[like], h.meridians[like].length
			m.set(h.meridians[like].stand)
			continue
		}
		d := section.Direction(j)
		h.lean[j] = m.span(foot.Reach(d), toward(depth, d))
		m.length = m.stand + math.Max(0, hem.Reach(d)-foot.Reach(d))
	}
}

// level finds the depth of a level hem that is as wide as wanted, or as near as the cloth allows.
func (h *hanger) level(wide float64) float64 {
	if h.train {
		j := h.shortest()
		m := &h.meridians[j]
		return m.drop(m.leanTo(h.most.Reach(section.Direction(j))))
	}
	lo, hi := 0.0, math.Inf(1)
	for _, j := range balance {
		m := &h.meridians[j]
		straight := m.drop(0)
		lo, hi = math.Max(lo, math.Max(m.drop(1), leastDrop*straight)), math.Min(hi, straight)
	}
	if lo >= hi {
		return hi
	}
	if h.hemAt(hi) >= wide {
		return h.uneven(hi, wide)
	}
	if level, err := curve.Root(func(l float64) float64 { return h.hemAt(l) - wide }, lo, hi, 1e-10); err == nil {
		return level
	}
	return lo
}

// unevenness is how much higher than the rest a hem may hang in places, mm, before all the
// rest is pushed out to make it level: cloth that goes over broad hips hangs so. From memory.
const unevenness = 10.0

// uneven finds the depth where a hem that is level at hi is wider than wanted: a little lower, if that makes
// it narrower.
func (h *hanger) uneven(hi, wide float64) float64 {
	wide = math.Max(wide, h.hemAt(hi+unevenness)) + readable
	if level, err := curve.Root(func(l float64) float64 { return h.hemAt(l) - wide }, hi, hi+unevenness, 1e-7); err == nil {
		return level
	}
	return hi
}

// shortest is the balance line with the least cloth.
func (h *hanger) shortest() int {
	best := section.Front
	for _, j := range balance {
		if h.meridians[j].length < h.meridians[best].length {
			best = j
		}
	}
	return best
}

// hemAt is the girth of the hem when it is level at a depth.
func (h *hanger) hemAt(level float64) float64 {
	return h.four(func(j int) float64 {
		m := &h.meridians[j]
		_, lean := m.hang(level, math.Inf(1), math.Inf(1))
		return m.reach(lean)
	}).Girth()
}

// rest lets cloth lie on the floor until the garment has the girth for what stands. Where even
// straight cloth lies too far out, the readings contradict each other.
func (h *hanger) rest() error {
	far, least := h.four(func(j int) float64 { return h.meridians[j].reach(h.lean[j]) }), Through(h.body.Waist)
	if h.on(least) {
		share := largest(func(t float64) bool { return h.on(least.blend(far, t)) })
		h.notice("hem-on-floor", "", measure.HemGirth, 0,
			"The lengths would reach farther out than the hem girth goes round; the support is drawn in to %.0f %% and the rest lies on the floor.", 100*share)
		return nil
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
