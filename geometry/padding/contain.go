package padding

import (
	"math"

	"understructure/geometry/curve"
	"understructure/geometry/section"
	"understructure/geometry/surface"
)

// blend is the width, in mm, over which the wanted shape passes from the figure to the
// form where the form stands out of it: wide enough that no ridge shows through the cover.
const blend = 6.0

// Excess is where a form is too big for the wanted tape.
type Excess struct {
	Height float64 // mm, in the heights of the wanted skin
	Tape   float64 // by how much a tape round the covered form is longer than the wanted tape, mm
	// By how much the form stands out of the figure, mm, on each side; 0 where it does not.
	Right, Front, Left, Back float64
}

// Contain returns the figure's skin reshaped, where it must, so that the covered base lies
// inside it while a tape round it stays the same at every height. Where a tape round the
// base alone is longer, the row takes the base's shape at the wanted tape, and the excess
// is listed from the bottom up.
func Contain(figure, base surface.Surface, cover float64) (surface.Surface, []Excess) {
	covered := base.Displaced(base.Normals(), func(int, int) float64 { return cover }).Surface(figure.Z, false)
	out := surface.Surface{Z: figure.Z, R: make([]section.Section, len(figure.Z))}
	var excess []Excess
	for i, z := range figure.Z {
		want := figure.R[i].Tape()
		if z < base.Bottom() || z > base.Top() {
			out.R[i] = figure.R[i]
			continue
		}
		b := &covered.R[i]
		if over := b.Tape() - want; over >= -slightly {
			out.R[i] = b.Grown(want)
			if over > 0 {
				excess = append(excess, standsOut(z, over, &figure.R[i], b))
			}
			continue
		}
		out.R[i] = reshape(figure.R[i], b, want)
	}
	return out, excess
}

// slightly is how much room, in mm of tape, is too little to reshape the figure in.
const slightly = 1e-6

// reshape shrinks the figure's slice until, drawn together with the base, it has the tape wanted.
func reshape(figure section.Section, base *section.Section, want float64) section.Section {
	drawn := func(f float64) section.Section { return section.Blend(figure.Scale(f), *base, blend) }
	off := func(f float64) float64 {
		s := drawn(f)
		return s.Tape() - want
	}
	f, err := curve.Root(off, 0.3, 1, 1e-7)
	if err != nil { // the blend alone is a little longer than the tape
		return base.Grown(want)
	}
	return drawn(f).Grown(want)
}

func standsOut(z, over float64, figure, base *section.Section) Excess {
	out := func(j int) float64 { return math.Max(0, base[j]-figure[j]) }
	return Excess{z, over, out(section.Right), out(section.Front), out(section.Left), out(section.Back)}
}

// Place returns how far forward and up a form, with its waist at height 0 and its own
// axis, should stand in the figure so that it stands out of it least. Waist to waist is
// kept unless another height is clearly better.
func Place(form, figure surface.Surface) (dy, dz float64) {
	best := math.Inf(1)
	for up := -mostShift; up <= mostShift; up += shiftStep {
		for forward := -mostShift; forward <= mostShift; forward += shiftStep {
			if c := standing(form, figure, forward, up); c < best {
				best, dy, dz = c, forward, up
			}
		}
	}
	return dy, dz
}

// A form is moved by at most this much, mm; more, and its waist would be no waist.
const mostShift, shiftStep = 40.0, 5.0

// standing is how badly a form stands: the squares of how far it stands out, summed over
// the skin, and a little for every millimetre that it was moved.
func standing(form, figure surface.Surface, dy, dz float64) float64 {
	const every, settle = 16.0, 0.02
	cost := settle * (dy*dy + 4*dz*dz)
	for z := math.Max(figure.Bottom(), form.Bottom()+dz); z <= math.Min(figure.Top(), form.Top()+dz); z += every {
		f := figure.At(z)
		b := form.At(z - dz)
		for j := 0; j < section.Directions; j += 8 {
			if out := b[j] + dy*section.Direction(j).Y - f[j]; out > 0 {
				cost += out * out
			}
		}
	}
	return cost
}
