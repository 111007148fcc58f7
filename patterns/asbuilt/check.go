package asbuilt

import (
	"fmt"
	"math"
	"strings"

	"understructure/patterns/piece"
)

// Objection is what is wrong with a piece: cut out as it is, it does not fit where it is to lie.
type Objection struct {
	Piece   string
	Message string
}

// The greatest difference between an edge of a piece and the place that it is to lie on, beside the strain
// that the piece admits: in mm, what tears silk if it is the mount that is larger, and a share of the length for a strain that is
// the mean of what is beside it.
const (
	lengthSlip  = 3.0
	lengthShare = 0.005
)

// Check measures the outline of every piece against the places where its corners are to lie:
// the way round it, and each eighth of that, for a piece cut 3 mm too long somewhere is not seen in one edge.
func Check(pieces []piece.Piece) []Objection {
	var out []Objection
	for _, p := range pieces {
		if !strings.HasPrefix(p.Material, "wadding") && !strings.HasPrefix(p.Material, "plank") {
			continue // it lies everywhere, or apart from the body
		}
		if len(p.Position) != len(p.Outline) {
			out = append(out, Objection{p.ID, fmt.Sprintf("%d corners are to lie on %d places", len(p.Outline), len(p.Position))})
			continue
		}
		if flat, laid, ok := lengths(p); !ok {
			out = append(out, Objection{p.ID, fmt.Sprintf("an edge of %.1f mm is to lie along %.1f mm of the mount", flat, laid)})
		}
	}
	return out
}

// lengths returns the stretch of an outline that differs most from its place, and whether all agree.
func lengths(p piece.Piece) (flat, laid float64, ok bool) {
	n := len(p.Outline)
	ok = true
	worst := 0.0
	for _, long := range []int{n, max(n/8, 1)} {
		for k := 0; k < n; k += max(long/2, 1) { // stretches overlap, so that none is seen in halves only
			a, b := 0.0, 0.0
			for i := k; i < k+long; i++ {
				a += p.Outline[i%n].Dist(p.Outline[(i+1)%n])
				b += p.Position[i%n].Dist(p.Position[(i+1)%n])
			}
			allowed := lengthSlip + (lengthShare+p.Strain)*b
			if over := math.Abs(a-b) - allowed; over > worst {
				flat, laid, ok, worst = a, b, false, over
			}
		}
	}
	return flat, laid, ok
}
