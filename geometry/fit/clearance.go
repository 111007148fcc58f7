package fit

import (
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/section"
)

// Round is the clearance of a mount all the way round at one height.
type Round struct {
	Height float64 // mm, as given
	// Tape is the garment's inside tape less the tape round the mount, mm.
	Tape float64
	// Point is, in each direction of package section, how far the garment's outline lies from the
	// mount's along the mount's outward normal, mm; negative where the mount stands out of it.
	// A mount that hangs in a garment with the same room everywhere has Tape = 2π·Point (Steiner).
	Point [section.Directions]float64
	// Mount is the mount's outline, its distance from the axis in each direction.
	Mount section.Section
}

// Compare measures the clearance at every height at which both the mount as built and the garment have
// an outline; rings are one a height, nil where there is none, and must go round the axis.
func Compare(heights []float64, built, garment []plane.Ring) []Round {
	var out []Round
	for i, z := range heights {
		if i >= len(built) || i >= len(garment) || len(built[i]) < 3 || len(garment[i]) < 3 {
			continue
		}
		r, cloth := Round{Height: z, Mount: section.Of(built[i])}, section.Of(garment[i])
		r.Tape = cloth.Tape() - r.Mount.Tape()
		r.measure(&cloth)
		out = append(out, r)
	}
	return out
}

// measure finds the clearance in every direction.
func (r *Round) measure(garment *section.Section) {
	mount, cloth := r.Mount.Ring(), garment.Ring()
	for j, p := range mount {
		along := mount[(j+1)%section.Directions].Sub(mount[(j+section.Directions-1)%section.Directions])
		normal := plane.Point{X: along.Y, Y: -along.X}.Mul(1 / math.Max(along.Norm(), 1e-9))
		d, ok := meets(p, normal, cloth, j)
		if !ok {
			d = garment[j] - r.Mount[j]
		}
		r.Point[j] = d
	}
}

// farthest is how many directions away from a point its normal is looked for on the garment: an
// eighth of the way round. A normal that leads farther runs along the garment rather than to it.
const farthest = section.Directions / 8

// meets walks along the outline from direction j on to where the normal at p, or the line behind p,
// crosses it, and returns how far out that is.
func meets(p, normal plane.Point, outline plane.Ring, j int) (out float64, ok bool) {
	side := func(k int) float64 { return normal.Cross(outline[k&(section.Directions-1)].Sub(p)) }
	k, s := j, side(j)
	step := 1
	if s > 0 {
		step = -1
	}
	for range farthest {
		next := side(k + step)
		if next == s || s > 0 != (next > 0) {
			a, b := outline[k&(section.Directions-1)], outline[(k+step)&(section.Directions-1)]
			t := 0.0
			if next != s {
				t = s / (s - next)
			}
			return a.Lerp(b, t).Sub(p).Dot(normal), true
		}
		k, s = k+step, next
	}
	return 0, false
}
