package skirt

import (
	"fmt"
	"maps"
	"math"

	"understructure/geometry/measure"
	"understructure/geometry/section"
)

// trained is how much longer than its front a skirt's back is when it is meant to lie on the
// floor, mm. Published day skirts differ by up to 127 (about 1903), a train by 736 (Museum of
// the City of New York 62.190.1, 1866–67); the figure between them is ours.
const trained = 150.0

// mostOverHip is the most of its length with which a skirt lies over the hip; the hip of a shorter one counts as
// far as it reaches.
const mostOverHip = 0.9

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
	known   int // which of the three lengths the others are drawn from
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
	h.body = b.above(mostOverHip * h.shortestTaken())
	h.even = h.body.even()
	h.meridians = make([]meridian, section.Directions)
	taper := h.taper()
	for j := range h.meridians {
		h.meridians[j] = h.meridian(j)
		h.meridians[j].taper = taper
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
