// Package skirt makes a skirt hang as in its year: from its own lengths and girths and the silhouette of the date to the
// stand, the profile all round, and the shapes that hold it out.
//
// A skirt is cloth in 256 directions about the mount's axis, each as long as it was taken, or between two lengths taken as long as a level, oval hem asks for.
// How steeply the cloth leans out along its length is the profile; how far it leans is solved,
// so that the hem is level and every length exact. Heights are counted from the waist up,
// as in package torso, so that a skirt can be drawn under a torso.
//
// Cones and frusta are exact, and so are the flat pieces between two level hoops; see Strip.
// It does not know files, cloth by the yard or seam allowances, and it does not date a dress.
package skirt

import (
	"math"

	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/space"
	"understructure/geometry/surface"
)

// Skirt is a skirt as it hangs. It is not changed once made. The zero Skirt is none.
type Skirt struct {
	Stand                    float64       // height of the waist above the floor, mm
	Front, Right, Left, Back Fall          // the four balance lines
	Cloth                    surface.Shell // from the waist, z = 0, down to the hem, and along the floor where cloth lies there
	Girths                   []Girth       // one for every row of Cloth but the first, from the top
	Trained                  bool          // the back is meant to lie on the floor
	Silhouette               Silhouette
	Drawn                    map[measure.Key]Drawn
	Notices                  []measure.Notice

	body     Body
	taken    measure.Sheet
	standing int // the last row above the floor
	lengths  section.Section
}

// Fall is the cloth along one balance line, mm.
type Fall struct {
	Length float64 // from waist to hem, as taken
	Foot   float64 // from the axis to where the cloth meets the floor or, above it, the hem hangs
	Train  float64 // lying on the floor beyond that
	Drop   float64 // from the waist down to the foot
}

// Reach is the distance of the hem from the axis.
func (f Fall) Reach() float64 { return f.Foot + f.Train }

// Girth compares the garment with the support at one row.
type Girth struct {
	Height  float64 // mean height of the row, from the waist up, mm
	Garment float64 // inside girth of the garment, ease taken off, mm; +Inf where nothing says
	Tape    float64 // taut tape round the support
}

// Fullness is the girth that is left for folds.
func (g Girth) Fullness() float64 { return g.Garment - g.Tape }

// Gather is how many times as wide the cloth is as what it hangs over.
func (g Girth) Gather() float64 { return g.Garment / g.Tape }

// skirt writes down how the cloth hangs.
func (h *hanger) skirt() Skirt {
	s := Skirt{
		Stand: h.stand, Trained: h.train, Silhouette: h.sil, Drawn: h.drawn,
		body: h.body, taken: h.taken, standing: h.standing(),
	}
	n := h.last()
	s.Cloth = make(surface.Shell, n+1)
	for j := range h.meridians {
		s.lengths[j] = h.meridians[j].length
		d := section.Direction(j)
		for k, p := range h.meridians[j].line(h.lean[j], n > s.standing) {
			s.Cloth[k][j] = space.Point{X: d.X * p.X, Y: d.Y * p.X, Z: p.Y}
		}
	}
	for k := 1; k <= n; k++ {
		s.Girths = append(s.Girths, Girth{Height: s.height(k), Garment: h.garment(k), Tape: h.tape(k)})
	}
	s.Front, s.Right, s.Left, s.Back = s.fall(section.Front), s.fall(section.Right), s.fall(section.Left), s.fall(section.Back)
	h.judge(s)
	s.Notices = h.notices
	return s
}

func (s Skirt) height(k int) float64 {
	z := 0.0
	for _, p := range s.Cloth[k] {
		z += p.Z
	}
	return z / section.Directions
}

func (s Skirt) fall(j int) Fall {
	foot, hem := s.Cloth[s.standing][j], s.Cloth[len(s.Cloth)-1][j]
	out := math.Hypot(foot.X, foot.Y)
	return Fall{Length: s.lengths[j], Foot: out, Train: math.Hypot(hem.X, hem.Y) - out, Drop: -foot.Z}
}

// Length is the cloth from waist to hem in direction j of package section, mm: as taken in
// front, at the sides and behind, and between them as a level, oval hem asks for.
func (s Skirt) Length(j int) float64 { return s.lengths[j] }

// Hem is the outline of the hem seen from above, a train included.
func (s Skirt) Hem() plane.Ring { return s.seen(len(s.Cloth) - 1) }

// Foot is the outline of the skirt where it stands or hangs lowest, a train left out.
func (s Skirt) Foot() plane.Ring { return s.seen(s.standing) }

func (s Skirt) seen(k int) plane.Ring {
	r := make(plane.Ring, section.Directions)
	for j, p := range s.Cloth[k] {
		r[j] = plane.Point{X: p.X, Y: p.Y}
	}
	return r
}

// Waist is the mount's own outline at the waist, as an oval of the same tape.
func (s Skirt) Waist() Oval { return about(s.body.Waist) }

// Hip is the same at the hip, or at the waist where no hip is known.
func (s Skirt) Hip() Oval { return about(s.body.at(s.body.HipDepth)) }

// Lowest is the height down to which the skirt goes all the way round, from the waist up, mm: below 0.
func (s Skirt) Lowest() float64 {
	z := math.Inf(-1)
	for _, p := range s.Cloth[s.standing] {
		z = math.Max(z, p.Z)
	}
	return z
}

// Section is the skirt cut level at a height between Lowest and 0; beyond them it is the nearest.
func (s Skirt) Section(z float64) section.Section {
	return s.Surface(math.Max(s.Lowest(), math.Min(0, z))).R[0]
}

// Surface is the skirt's outside at rising heights between Lowest and 0.
func (s Skirt) Surface(heights ...float64) surface.Surface {
	out := s.Cloth.Surface(heights, false)
	for i, z := range heights {
		if z >= 0 {
			out.R[i] = s.body.Waist
		}
	}
	return out
}

// judge says what the maker should know about how the cloth hangs.
func (h *hanger) judge(s Skirt) {
	short := 0.0
	for _, m := range h.meridians {
		if m.stand == m.length {
			short = math.Max(short, h.stand-h.wish.Gap-m.drop(0))
		}
	}
	if short > unevenness+readable {
		h.notice("hem-hangs-short", "", measure.FrontLength, short,
			"At this stand the hem hangs up to %.0f mm higher than the %.0f mm above the floor that were wanted.", short, h.wish.Gap)
	}
	if hem := s.Girths[s.standing-1]; !h.train && h.aim() > 0 && hem.Tape > h.sil.Spread*h.aim()+readable && h.wish.Stand == 0 {
		h.notice("wider-than-silhouette", "", measure.HemGirth, hem.Tape-h.sil.Spread*h.aim(),
			"By its lengths and the body under it a level hem is %.0f mm round, wider than the %.0f mm of the silhouette.", hem.Tape, h.sil.Spread*h.aim())
	}
	for k := 1; k <= s.standing; k++ {
		if over := h.bare(k) - h.garment(k); h.cloth.hip > 0 && over > readable {
			h.notice("body-over-skirt", measure.Hip, measure.HipGirth, over,
				"The mount measures up to %.0f mm more round than the skirt with its ease, %.0f mm below the waist.", over, -s.height(k))
			return
		}
	}
}
