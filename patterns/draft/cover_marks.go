package draft

import (
	"math"
	"slices"

	"understructure/geometry/padding"
	"understructure/geometry/plane"
	"understructure/patterns/piece"
)

// coverMarks draws the line to cut, the levels, the balance lines, the notches and which way is up.
func coverMarks(p part, seams [][]int, lines []Line) []piece.Mark {
	ring := p.flat.Outline()
	out := []piece.Mark{{Kind: piece.Allowance, Points: ring.Offset(CoverAllowance)}}
	for _, l := range lines {
		if l.Height <= p.patch.Zone.Lo+1e-6 || l.Height >= p.patch.Zone.Hi-1e-6 {
			continue // it is the edge itself
		}
		for _, path := range levelPaths(p.flat, l.Height) {
			out = append(out, piece.Mark{Kind: piece.LevelLine, Label: l.Name, Points: path})
		}
	}
	out = append(out, borders(p.flat, p.patch)...)
	for _, v := range notched(p.patch, seams) {
		out = append(out, notch(ring, slices.Index(p.flat.Boundary, v)))
	}
	return append(out, up(p.flat))
}

// notched are the places along the seams of a panel where both sides are held together, corners left out.
func notched(p padding.Patch, seams [][]int) []int {
	var out []int
	for i, run := range seams {
		v := run[0]
		before := seams[(i+len(seams)-1)%len(seams)]
		if b := p.Borders[v]; before[len(before)-1] == v && (b&(b-1)) == 0 {
			out = append(out, v)
		}
	}
	return out
}

// notchLength is that of a notch, mm: well inside the allowance.
const notchLength = 8.0

// notch is a short line square to the seam line, from its i-th corner outward.
func notch(ring plane.Ring, i int) piece.Mark {
	n := len(ring)
	along := ring[(i+1)%n].Sub(ring[(i+n-1)%n])
	out := plane.Point{X: along.Y, Y: -along.X}.Mul(notchLength / math.Max(along.Norm(), 1e-9))
	return piece.Mark{Kind: piece.Notch, Points: []plane.Point{ring[i], ring[i].Add(out)}}
}
