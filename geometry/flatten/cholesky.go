package flatten

import (
	"cmp"
	"math"
	"slices"

	"understructure/geometry/space"
)

// leaf is the number of vertices below which dividing further costs more than it saves.
const leaf = 10

// solver solves sparse symmetric systems with two unknowns a vertex, assembled from triangles. It is a
// multifrontal Cholesky decomposition (Duff and Reid, "The multifrontal solution of
// indefinite sparse symmetric linear equations", ACM Trans. Math. Softw. 9, 1983) on
// a nested dissection (George, "Nested dissection of a regular finite element mesh", SIAM J.
// Numer. Anal. 10, 1973) that halves the vertices along the widest axis.
type solver struct {
	fronts []front // children before parents
	at     []int   // front that eliminates each vertex
	spare  [][]float64
}

// front is the dense system of one separator: its own unknowns first, then those of its border,
// which later fronts eliminate.
type front struct {
	vertices  []int // own, then border
	own       int
	triangles []int
	corners   [][3]int // of those triangles, as places in vertices
	children  []int
	places    []int     // of the border, in the parent's vertices
	panel     []float64 // the columns of own unknowns, row by row
	update    []float64 // what is handed to the parent, lower half; nil at other times
}

// newSolver orders the vertices, which lie at the given places, and lays out the fronts.
func newSolver(sh sheet, at []space.Point) *solver {
	near := sh.neighbours()
	s := &solver{at: make([]int, sh.points)}
	all := make([]int, sh.points)
	for i := range all {
		all[i] = i
	}
	side := make([]int, sh.points)
	s.dissect(at, near, all, side)
	s.border(sh, near)
	return s
}

// dissect appends the fronts for the vertices set and returns the index of the last.
func (s *solver) dissect(pts []space.Point, near [][]int, set []int, side []int) int {
	var f front
	if len(set) > leaf {
		a, b, cut := halve(pts, near, set, side)
		for _, part := range [][]int{a, b} {
			if len(part) > 0 {
				f.children = append(f.children, s.dissect(pts, near, part, side))
			}
		}
		set = cut
	}
	f.vertices, f.own = slices.Clone(set), len(set)
	slices.Sort(f.vertices)
	for _, v := range set {
		s.at[v] = len(s.fronts)
	}
	s.fronts = append(s.fronts, f)
	return len(s.fronts) - 1
}

// halve splits a set along its widest axis into two parts that no edge joins, and the cut between them.
func halve(pts []space.Point, near [][]int, set, side []int) (a, b, cut []int) {
	axis := widest(pts, set)
	slices.SortFunc(set, func(i, j int) int {
		return cmp.Or(cmp.Compare(axis(pts[i]), axis(pts[j])), cmp.Compare(i, j))
	})
	half := len(set) / 2
	for i, v := range set {
		side[v] = 1
		if i >= half {
			side[v] = 2
		}
	}
	b = set[half:]
	for _, v := range set[:half] {
		if slices.ContainsFunc(near[v], func(w int) bool { return side[w] == 2 }) {
			cut = append(cut, v)
		} else {
			a = append(a, v)
		}
	}
	for _, v := range set {
		side[v] = 0
	}
	return a, b, cut
}

// widest returns the coordinate in which the set extends most.
func widest(pts []space.Point, set []int) func(space.Point) float64 {
	axes := []func(space.Point) float64{
		func(p space.Point) float64 { return p.X },
		func(p space.Point) float64 { return p.Y },
		func(p space.Point) float64 { return p.Z },
	}
	best, span := axes[0], -1.0
	for _, axis := range axes {
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, v := range set {
			lo, hi = math.Min(lo, axis(pts[v])), math.Max(hi, axis(pts[v]))
		}
		if hi-lo > span {
			best, span = axis, hi-lo
		}
	}
	return best
}

// border finds which later unknowns each front touches, and where triangles are assembled:
// in the front that eliminates their first vertex.
func (s *solver) border(sh sheet, near [][]int) {
	for i := range sh.elements {
		t := sh.elements[i].v
		f := min(s.at[t[0]], s.at[t[1]], s.at[t[2]])
		s.fronts[f].triangles = append(s.fronts[f].triangles, i)
	}
	place := make([]int, sh.points)
	seen := make([]int, sh.points)
	for i := range s.fronts {
		f := &s.fronts[i]
		add := func(v int) {
			if s.at[v] > i && seen[v] != i+1 {
				seen[v] = i + 1
				f.vertices = append(f.vertices, v)
			}
		}
		for _, v := range f.vertices[:f.own] {
			for _, w := range near[v] {
				add(w)
			}
		}
		for _, c := range f.children {
			for _, v := range s.fronts[c].vertices[s.fronts[c].own:] {
				add(v)
			}
		}
		slices.SortFunc(f.vertices[f.own:], func(a, b int) int { return cmp.Or(s.at[a]-s.at[b], a-b) })
		s.layOut(f, sh, place)
	}
}

// layOut numbers the unknowns of one front and takes its memory.
func (s *solver) layOut(f *front, sh sheet, place []int) {
	for k, v := range f.vertices {
		place[v] = k
	}
	for _, t := range f.triangles {
		q := sh.elements[t].v
		f.corners = append(f.corners, [3]int{place[q[0]], place[q[1]], place[q[2]]})
	}
	for _, c := range f.children {
		child := &s.fronts[c]
		for _, v := range child.vertices[child.own:] {
			child.places = append(child.places, place[v])
		}
	}
	n, m := 2*f.own, 2*(len(f.vertices)-f.own)
	f.panel = make([]float64, (n+m)*n)
}

// neighbours lists the vertices joined to each vertex by an edge.
func (sh sheet) neighbours() [][]int {
	near := make([][]int, sh.points)
	join := func(a, b int) {
		if !slices.Contains(near[a], b) {
			near[a] = append(near[a], b)
		}
	}
	for i := range sh.elements {
		t := sh.elements[i].v
		for j := range t {
			join(t[j], t[(j+1)%3])
			join(t[(j+1)%3], t[j])
		}
	}
	return near
}
