// Package cover draws the smooth cover over a mount and divides it into panels.
//
// A cover is taut: round every height it touches what stands out and spans the hollows, so its
// skin is the tape's own outline, height by height. Hollows up and down, such as the waist, it
// follows, for it is sewn to the shape there. Edges of layers, which are feathered, it bridges.
// It does not lay panels flat, nor does it know cloth.
package cover

import (
	"math"
	"slices"

	"understructure/geometry/padding"
	"understructure/geometry/section"
	"understructure/geometry/surface"
)

// Cover is the middle of the cloth, half its thickness below its outside. It is not changed once made.
type Cover struct {
	Thickness float64 // of the cloth, mm

	z      []float64 // rows, rising
	levels []float64 // those of them that are levels, ends included, rising
	shell  surface.Shell
}

// Zone is the whole height of the cover between two columns.
func (c Cover) Zone(name string, from, to int) padding.Zone {
	return padding.Zone{Name: name, From: from, To: to, Lo: c.levels[0], Hi: c.levels[len(c.levels)-1]}
}

// level reports whether a row is one.
func (c Cover) level(row int) bool { return slices.Contains(c.levels, c.z[row]) }

// columnStep and rowGap are how finely a panel is drawn: every fourth column, and rows so
// close that no point of the skin lies farther than rowGap mm above the one below it.
const columnStep, rowGap = 4, 12.0

// Over draws a cover, its thickness in mm, over a mount as built, cover included, from
// height lo to height hi. Every level between them gets a row of its own, where panels can end.
func Over(built surface.Surface, thickness, lo, hi float64, levels ...float64) Cover {
	skin := eased(taut(built))
	knots := surface.Rows(lo, hi, math.Inf(1), levels...)
	rows := []float64{lo - rowGap, lo} // one row beyond each end, so that the ends have their normals
	for i := 1; i < len(knots); i++ {
		rows = append(rows, between(skin, knots[i-1], knots[i])...)
	}
	skin = skin.Resampled(append(rows, hi+rowGap))
	middle := skin.Displaced(skin.Normals(), func(int, int) float64 { return -thickness / 2 })
	last := len(skin.Z) - 1
	return Cover{Thickness: thickness, z: skin.Z[1:last], levels: knots, shell: middle[1:last]}
}

// taut spans the hollows round every height.
func taut(s surface.Surface) surface.Surface {
	out := surface.Surface{Z: s.Z, R: make([]section.Section, len(s.R))}
	for i := range s.R {
		out.R[i] = section.Of(s.R[i].Ring().Hull())
	}
	return out
}

// between returns the rows above lo up to hi, evenly spread along the skin where it leans most.
func between(s surface.Surface, lo, hi float64) []float64 {
	const fine = 1.0
	fines := surface.Rows(lo, hi, fine)
	skin := s.Resampled(fines)
	way := make([]float64, len(fines))
	for i := 1; i < len(fines); i++ {
		step := 0.0
		for j := range section.Directions {
			step = math.Max(step, skin.Point(i, j).Dist(skin.Point(i-1, j)))
		}
		way[i] = way[i-1] + step
	}
	total := way[len(way)-1]
	n := math.Ceil(total / rowGap)
	var rows []float64
	for i := 1; i < len(fines)-1; i++ {
		if way[i] >= total*float64(len(rows)+1)/n-1e-9 {
			rows = append(rows, fines[i])
		}
	}
	return append(rows, hi)
}
