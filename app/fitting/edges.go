package fitting

import (
	"math"
	"slices"

	"understructure/geometry/plane"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// beside is how near an edge must lie to a balance line to be named after it, mm.
const beside = 8.0

// balance are the marks that name an edge, and what they name it.
var balance = []struct {
	kind piece.Kind
	name string
}{{piece.CentreFront, "centre front"}, {piece.CentreBack, "centre back"}, {piece.Side, "side"}}

// order is that in which edges are named.
var order = []string{"upper", "lower", "centre front", "centre back", "side", "left", "right", "front", "back"}

// edges names the edges of a piece on which spots lie, those that matter: where at least a third of
// the most is to be done.
func edges(p piece.Piece, spots []spot) []string {
	least := most(spots) / 3
	var names []string
	for _, s := range spots {
		if name := edge(p, s); s.off >= least && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	slices.SortFunc(names, func(a, b string) int { return slices.Index(order, a) - slices.Index(order, b) })
	return names
}

// edge names one edge of a piece: on a slice by the side of the figure, else by which way it faces and, where
// it faces sideways, the balance line along it.
func edge(p piece.Piece, s spot) string {
	sideways := math.Abs(s.outward.X) > math.Abs(s.outward.Y)
	names := [2][2]string{{"lower", "upper"}, {"left", "right"}}
	if isSlice(p) {
		names[0] = [2]string{"back", "front"}
	}
	if !sideways {
		return names[0][sign(s.outward.Y)]
	}
	if !isSlice(p) {
		for _, b := range balance {
			if along(p, b.kind, s.at) {
				return b.name
			}
		}
	}
	return names[1][sign(s.outward.X)]
}

func sign(x float64) int {
	if x > 0 {
		return 1
	}
	return 0
}

// along reports whether a mark of a kind runs past a point.
func along(p piece.Piece, k piece.Kind, at plane.Point) bool {
	for _, m := range p.Marks {
		if m.Kind != k {
			continue
		}
		for i := 1; i < len(m.Points); i++ {
			if plane.Nearest(at, m.Points[i-1], m.Points[i]).Dist(at) < beside {
				return true
			}
		}
	}
	return false
}

// atLevel is how far from a level something still lies at it, mm: the breadth of a tape and a little.
const atLevel = 12.0

// levelsOf names the levels between which spots lie.
func levelsOf(spots []spot, levels []plan.Level) (low, top string) {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, s := range spots {
		if !math.IsNaN(s.height) {
			lo, hi = math.Min(lo, s.height), math.Max(hi, s.height)
		}
	}
	if lo > hi {
		return "", ""
	}
	for _, l := range levels { // from the neck down
		if l.Height >= hi-atLevel {
			top = l.Name
		}
		if l.Height <= lo+atLevel && low == "" {
			low = l.Name
		}
	}
	return low, top
}
