package fitting

import (
	"math"
	"strings"

	"understructure/geometry/plane"
	"understructure/patterns/piece"
)

// pairing says which piece of one plan is which of another: indices, −1 where there is none.
type pairing struct{ was, is int }

// kin is what pieces have in common that can stand for each other: their kind, their place, and what
// they are cut from. Slices of one plank are kin however thin they are cut.
func kin(p piece.Piece) string {
	kind := strings.TrimRight(p.ID, "0123456789")
	if i := strings.IndexByte(p.ID, '-'); i >= 0 {
		kind = strings.TrimRight(p.ID[:i], "0123456789") + strings.TrimRight(p.ID[i:], "-0123456789")
	}
	stuff, _, _ := strings.Cut(p.Material, ",")
	return kind + "|" + stuff
}

// paired finds for the pieces of one plan those of another that they become. Kin are paired in the order in
// which they are laid, so that as little as possible is cut, taken off and added.
func paired(was, is []piece.Piece) []pairing {
	before, after := map[string][]int{}, map[string][]int{}
	var order []string
	for i, p := range was {
		k := kin(p)
		if before[k] == nil {
			order = append(order, k)
		}
		before[k] = append(before[k], i)
	}
	for i, p := range is {
		k := kin(p)
		if before[k] == nil && after[k] == nil {
			order = append(order, k)
		}
		after[k] = append(after[k], i)
	}
	var out []pairing
	for _, k := range order {
		out = append(out, aligned(was, is, before[k], after[k])...)
	}
	return out
}

// aligned pairs two lines of pieces without crossing (S. B. Needleman and C. D. Wunsch, 1970), at the
// least cost in square millimetres of stuff.
func aligned(was, is []piece.Piece, a, b []int) []pairing {
	n, m := len(a), len(b)
	cost := make([][]float64, n+1)
	for i := range cost {
		cost[i] = make([]float64, m+1)
	}
	rest := func(p piece.Piece) float64 { return p.Outline.Area() }
	meet := func(i, j int) float64 { return cost[i+1][j+1] + strip(was[a[i]], is[b[j]]) }
	for i := n; i >= 0; i-- {
		for j := m; j >= 0; j-- {
			switch {
			case i == n && j == m:
			case i == n:
				cost[i][j] = cost[i][j+1] + rest(is[b[j]])
			case j == m:
				cost[i][j] = cost[i+1][j] + rest(was[a[i]])
			default:
				cost[i][j] = min(meet(i, j), cost[i+1][j]+rest(was[a[i]]), cost[i][j+1]+rest(is[b[j]]))
			}
		}
	}
	var out []pairing
	for i, j := 0, 0; i < n || j < m; {
		switch {
		case i < n && j < m && cost[i][j] == meet(i, j):
			out = append(out, pairing{a[i], b[j]})
			i, j = i+1, j+1
		case i < n && cost[i][j] == cost[i+1][j]+rest(was[a[i]]):
			out = append(out, pairing{a[i], -1})
			i++
		default:
			out = append(out, pairing{-1, b[j]})
			j++
		}
	}
	return out
}

// looked is how many corners of an outline are enough to tell roughly how far two lie apart.
const looked = 24

// strip is roughly the area between the edges of two pieces where they lie on the mount, or, where that is
// not known, laid on each other by their middles.
func strip(a, b piece.Piece) float64 {
	far := func(i, j int) float64 { return a.Position[i].Dist(b.Position[j]) }
	if !known(a) || !known(b) {
		move := plane.Point{}
		if !isSlice(a) {
			move = b.Outline.Centroid().Sub(a.Outline.Centroid())
		}
		far = func(i, j int) float64 { return a.Outline[i].Add(move).Dist(b.Outline[j]) }
	}
	if isSlice(a) { // where a slice stands follows from those below it
		far = func(i, j int) float64 { return a.Outline[i].Dist(b.Outline[j]) }
	}
	n, m := len(a.Outline), len(b.Outline)
	if n == 0 || m == 0 {
		return math.Inf(1)
	}
	gap := apart(n, m, far) + apart(m, n, func(j, i int) float64 { return far(i, j) })
	return gap / 2 * (a.Outline.Perimeter() + b.Outline.Perimeter()) / 2
}

// apart is the mean distance of n corners, or of some of them, each from the nearest of m others.
func apart(n, m int, far func(i, j int) float64) float64 {
	sum, count := 0.0, 0.0
	for i := 0; i < n; i += 1 + n/looked {
		least := math.Inf(1)
		for j := range m {
			least = min(least, far(i, j))
		}
		sum, count = sum+least, count+1
	}
	return sum / count
}
