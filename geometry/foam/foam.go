// Package foam cuts a core into slices of plank, to be threaded on a pole.
//
// The core is smaller than the figure by the padding and cover that always go over raw
// foam, whose cut cells are abrasive. Every slice lies inside the core whichever way the
// step between two slices is treated.
// It does not pad the core, nor lay slices on planks.
package foam

import (
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/surface"
)

// Step is how the step between two slices is treated.
type Step string

// The three ways.
const (
	Inside Step = "inside" // upright sides inside the core: nothing to carve
	Flush  Step = "flush"  // cut along the larger outline, carve to the smaller on the other face
	Bevel  Step = "bevel"  // cut with the knife tilted from one outline to the other
)

// Slice is one thickness of plank.
type Slice struct {
	Number       int // from 1 at the bottom
	Bottom, Top  float64
	Lower, Upper section.Section // outlines of the bottom and the top face, finished
	Pins         []Pin
	Pole         *plane.Point // middle of the pole's hole; nil above the pole's end
}

// Pin is a hole for an alignment pin that enters the neighbour at one face.
type Pin struct {
	At    plane.Point
	Upper bool // it enters the slice above; otherwise the one below
}

// Thickness is the height of the slice.
func (s Slice) Thickness() float64 { return s.Top - s.Bottom }

// Cut is the outline to cut: the farther of both faces in every direction.
func (s Slice) Cut() section.Section {
	out := s.Lower
	for j, u := range s.Upper {
		out[j] = math.Max(out[j], u)
	}
	return out
}

// Stock is the plank that a core is cut from and the pole that it stands on, in mm.
type Stock struct {
	Plank    float64
	Pole     float64 // diameter, 0 for none
	ThinFrom float64 // height from which planks are cut down, because the shoulders close fast
}

// Heights divides a height into slices of plank, bottom to top, that add up to it exactly.
// The last below ThinFrom and the last of all are cut thinner; where one would be a sliver, it
// shares with the one below.
func (st Stock) Heights(lo, hi float64) []float64 {
	if st.ThinFrom <= lo || st.ThinFrom >= hi {
		return divide(lo, hi, st.Plank)
	}
	return append(divide(lo, st.ThinFrom, st.Plank), divide(st.ThinFrom, hi, st.Plank/thin)[1:]...)
}

// thin is how many boards a plank is cut into through the shoulders. A whole plank would
// leave steps as wide as the shoulder itself.
const thin = 3.0

func divide(lo, hi, plank float64) []float64 {
	const sliver = 0.3 // of a plank
	zs := []float64{lo}
	for hi-zs[len(zs)-1] > plank+1e-9 {
		zs = append(zs, zs[len(zs)-1]+plank)
	}
	if n := len(zs); n > 1 && hi-zs[n-1] < sliver*plank {
		zs[n-1] = (zs[n-2] + hi) / 2
	}
	return append(zs, hi)
}

// Cut slices a core between two heights. The pole stands where it leaves most foam all the way up; slices near the neck that are too
// small for it go on the pins alone. The error says when not even the lowest slice can
// carry the pole.
func (st Stock) Cut(core surface.Surface, lo, hi float64, step Step) ([]Slice, error) {
	zs := st.Heights(lo, hi)
	out := make([]Slice, len(zs)-1)
	for k := range out {
		s := Slice{Number: k + 1, Bottom: zs[k], Top: zs[k+1]}
		if step == Inside {
			s.Lower = narrowest(core, s.Bottom, s.Top)
			s.Upper = s.Lower
		} else {
			s.Lower, s.Upper = ruled(core, s.Bottom, s.Top)
		}
		out[k] = s
	}
	if st.Pole > 0 {
		if err := setPole(out, st.Pole); err != nil {
			return nil, err
		}
	}
	for k := 1; k < len(out); k++ {
		pin(&out[k-1], &out[k], st.Pole)
	}
	return out, nil
}

// least is the smallest distance of an outline from the axis, mm; nearer, and a slice would
// not be whole round the axis.
const least = 1.0

// between lists the heights at which a core is looked at inside one slice.
func between(core surface.Surface, lo, hi float64) []float64 {
	zs := []float64{lo}
	for _, z := range core.Z {
		if z > lo && z < hi {
			zs = append(zs, z)
		}
	}
	return append(zs, hi)
}

// narrowest is the outline that lies inside the core all the way from lo to hi.
func narrowest(core surface.Surface, lo, hi float64) section.Section {
	out := core.At(lo)
	for _, z := range between(core, lo, hi) {
		at := core.At(z)
		for j := range out {
			out[j] = math.Min(out[j], at[j])
		}
	}
	return out
}

// ruled returns two outlines whose straight sides lie inside the core: the core's own at
// both faces, each drawn in by what the straight side would stand out between them.
func ruled(core surface.Surface, lo, hi float64) (lower, upper section.Section) {
	a, b := core.At(lo), core.At(hi)
	var out section.Section
	for _, z := range between(core, lo, hi) {
		at := core.At(z)
		t := (z - lo) / (hi - lo)
		for j := range at {
			out[j] = math.Max(out[j], a[j]+(b[j]-a[j])*t-at[j])
		}
	}
	for j := range out {
		a[j] = math.Max(a[j]-out[j], least)
		b[j] = math.Max(b[j]-out[j], least)
	}
	return a, b
}

// hair keeps the two rows at a step apart, mm.
const hair = 1e-3

// Skin is the stack as it stands, steps and all, its rows no more than gap apart.
func Skin(slices []Slice, gap float64) surface.Surface {
	var s surface.Surface
	for k, sl := range slices {
		if k > 0 {
			s = ledge(s, sl, gap)
		}
		for _, z := range surface.Rows(sl.Bottom+hair, sl.Top-hair, gap) {
			t := (z - sl.Bottom) / sl.Thickness()
			var r section.Section
			for j := range r {
				r[j] = sl.Lower[j] + (sl.Upper[j]-sl.Lower[j])*t
			}
			s.Z, s.R = append(s.Z, z), append(s.R, r)
		}
	}
	return s
}

// ledge adds rows across the flat ring between the top of the stack and the next slice, so
// that what lies on it is known; they rise by less than two hairs in all.
func ledge(s surface.Surface, next Slice, gap float64) surface.Surface {
	last := len(s.Z) - 1
	from, z := s.R[last], s.Z[last]
	wide := 0.0
	for j := range from {
		wide = math.Max(wide, math.Abs(from[j]-next.Lower[j]))
	}
	n := int(wide/(2*gap)) + 1
	for k := 1; k < n; k++ {
		t := float64(k) / float64(n)
		var r section.Section
		for j := range r {
			r[j] = from[j] + (next.Lower[j]-from[j])*t
		}
		s.Z, s.R = append(s.Z, z+2*hair*t), append(s.R, r)
	}
	return s
}
