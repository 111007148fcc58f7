package pipeline

import (
	"fmt"
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/patterns/plan"
)

// clearOf is how far a form may stand outside the drawn garment without a word, mm: less than figures of
// the same readings differ by (a section drawn from a girth alone is 2 to 5 mm off, see package torso).
const clearOf = 2.0

// standsOut says where the bare form stands outside the garment's outline though the tape round it is clear: the
// mount contains its form, and the cloth must take that shape there.
func (j *job) standsOut() []plan.Warning {
	if j.form == nil {
		return nil
	}
	var out []plan.Warning
	for _, l := range j.garment.Levels {
		lo, hi := j.reachOf(l.Name)
		if _, tooBig := worst(j.excess, lo, hi); tooBig {
			continue // said already
		}
		by, at, both := j.farthestOut(lo, hi)
		if by < clearOf {
			continue
		}
		out = append(out, plan.Warning{
			Code: "form-stands-out", Level: string(l.Name), Amount: by,
			Message: fmt.Sprintf("At or near the %s the form stands %.0f mm outside the garment as it is drawn, %s; its tape is not too long. Take the garment's breadth and depth there, or a form of another shape.",
				l.Name, by, toward(at, both)),
		})
	}
	return out
}

// farthestOut is how far the form stands outside the garment between two heights, where, and
// whether it does so on the other side too.
func (j *job) farthestOut(lo, hi float64) (by float64, at plane.Point, both bool) {
	for i, z := range j.bare.Z {
		if z < lo || z > hi {
			continue
		}
		garment := j.garment.Skin.At(z)
		dir, most := 0, 0.0
		for k, r := range j.bare.R[i] {
			if over := r - garment[k]; over > most {
				dir, most = k, over
			}
		}
		if most <= by {
			continue
		}
		q := section.Direction(dir).Mul(j.bare.R[i][dir])
		if d := away(q, garment.Ring()); d > by {
			across := (section.Directions/2 - dir + section.Directions) % section.Directions
			by, at, both = d, q, j.bare.R[i][across]-garment[across] > most/2
		}
	}
	return by, at, both
}

// away is the distance of a point from an outline.
func away(q plane.Point, r plane.Ring) float64 {
	d := math.Inf(1)
	for i, p := range r {
		d = math.Min(d, plane.Nearest(q, p, r[(i+1)%len(r)]).Dist(q))
	}
	return d
}

// toward says where a place lies as the figure has it; both, that its mirror image is meant too.
func toward(p plane.Point, both bool) string {
	along := "in front"
	if p.Y < 0 {
		along = "at the back"
	}
	side := "on the right"
	switch {
	case math.Abs(p.X) < math.Abs(p.Y)/4:
		return along
	case both:
		side = "on both sides"
	case p.X < 0:
		side = "on the left"
	}
	if math.Abs(p.Y) < math.Abs(p.X)/4 {
		return side
	}
	return along + " " + side
}
