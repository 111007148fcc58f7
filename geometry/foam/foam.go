// Package foam cuts a core into slices of plank, to be threaded on a pole.
//
// The core is smaller than the figure by the padding and cover that always go over raw
// foam, whose cut cells are abrasive. Every slice lies inside the core whichever way the
// step between two slices is treated.
// It does not pad the core, nor lay slices on planks.
package foam

import (
	"fmt"
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

// Heights divides a height into slices of plank, bottom to top, that add up to it exactly.
// The last is cut thinner; where it would be a sliver, the last two share alike.
func Heights(lo, hi, plank float64) []float64 {
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

// Cut slices a core between two heights. The error says which slice would be too small for the pole.
func Cut(core surface.Surface, lo, hi, plank, pole float64, step Step) ([]Slice, error) {
	zs := Heights(lo, hi, plank)
	out := make([]Slice, len(zs)-1)
	for k := range out {
		s := Slice{Number: k + 1, Bottom: zs[k], Top: zs[k+1]}
		if step == Inside {
			s.Lower = narrowest(core, s.Bottom, s.Top)
			s.Upper = s.Lower
		} else {
			s.Lower, s.Upper = ruled(core, s.Bottom, s.Top)
		}
		if least := smallest(s); least < pole/2+wall {
			return nil, fmt.Errorf("foam: slice %d would leave %.0f mm of foam beside the pole of %.0f mm; at least %.0f mm is needed", s.Number, least-pole/2, pole, wall)
		}
		out[k] = s
	}
	for k := 1; k < len(out); k++ {
		pin(&out[k-1], &out[k], pole)
	}
	return out, nil
}

// wall is the least foam beside the pole or a pin, mm: less tears out. Workshop habit, from memory.
const wall = 10.0

func smallest(s Slice) float64 {
	least := math.Inf(1)
	for j := range s.Lower {
		least = math.Min(least, math.Min(s.Lower[j], s.Upper[j]))
	}
	return least
}

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
		a[j] -= out[j]
		b[j] -= out[j]
	}
	return a, b
}

// pin places two pins between neighbours, right and left, at different distances from the
// pole so that a slice cannot be turned round or over by mistake.
func pin(below, above *Slice, pole float64) {
	for _, p := range []struct {
		j    int
		part float64
	}{{section.Right, 0.62}, {section.Left, 0.5}} {
		room := math.Min(below.Upper[p.j], above.Lower[p.j])
		d := math.Min(math.Max(p.part*room, pole/2+wall), room-wall)
		at := section.Direction(p.j).Mul(d)
		below.Pins = append(below.Pins, Pin{at, true})
		above.Pins = append(above.Pins, Pin{at, false})
	}
}

// hair keeps the two rows at a step apart, mm.
const hair = 1e-3

// Skin is the stack as it stands, steps and all, its rows no more than gap apart.
func Skin(slices []Slice, gap float64) surface.Surface {
	var s surface.Surface
	for _, sl := range slices {
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
