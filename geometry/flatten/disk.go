package flatten

import (
	"fmt"
	"math"
)

// rim returns the directed edges that have a triangle on their left only, in the order of the triangles.
func (p Patch) rim() [][2]int {
	s := p.sides()
	var out [][2]int
	for _, t := range p.Triangles {
		for j, v := range t {
			w := t[(j+1)%3]
			if _, twin := s.left(w, v); !twin {
				out = append(out, [2]int{v, w})
			}
		}
	}
	return out
}

// sides finds the triangle on the left of a directed edge: those that leave vertex v stand from start[v] on.
type sides struct {
	start []int
	to    []int // where each leads
	tri   []int // what lies on its left
}

func (p Patch) sides() sides {
	n := len(p.Points)
	for _, t := range p.Triangles {
		n = max(n, t[0]+1, t[1]+1, t[2]+1)
	}
	s := sides{start: make([]int, n+2), to: make([]int, 3*len(p.Triangles)), tri: make([]int, 3*len(p.Triangles))}
	for _, t := range p.Triangles {
		for _, v := range t {
			s.start[v+2]++
		}
	}
	for v := range n {
		s.start[v+2] += s.start[v+1]
	}
	for i, t := range p.Triangles {
		for j, v := range t {
			k := s.start[v+1]
			s.to[k], s.tri[k] = t[(j+1)%3], i
			s.start[v+1]++
		}
	}
	return s
}

// left is the triangle on the left of the edge from v to w, and whether there is one.
func (s sides) left(v, w int) (int, bool) {
	for k := s.start[v]; k < s.start[v+1]; k++ {
		if s.to[k] == w {
			return s.tri[k], true
		}
	}
	return 0, false
}

// Boundary returns the vertices of the edge of the patch, counter-clockwise seen from outside, beginning with
// the lowest index. The error says why a patch that is not one disk cannot be laid.
func (p Patch) Boundary() ([]int, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	next := map[int]int{}
	first := len(p.Points)
	for _, e := range p.rim() {
		if _, twice := next[e[0]]; twice {
			return nil, fmt.Errorf("flatten: the patch touches itself at vertex %d; want one disk", e[0])
		}
		next[e[0]] = e[1]
		first = min(first, e[0])
	}
	if len(next) == 0 {
		return nil, fmt.Errorf("flatten: the patch is closed and has no edge; want one disk")
	}
	loop := []int{first}
	for v := next[first]; v != first; v = next[v] {
		loop = append(loop, v)
	}
	if len(loop) < len(next) {
		return nil, fmt.Errorf("flatten: the patch has holes or several parts: %d of %d edge vertices lie on its first boundary; want one disk", len(loop), len(next))
	}
	return loop, p.checkDisk(len(loop))
}

// check refuses what is no surface: bad indices, edges with more than two triangles or
// with triangles that disagree about the outside, points without triangles.
func (p Patch) check() error {
	if len(p.Triangles) == 0 {
		return fmt.Errorf("flatten: the patch has no triangles")
	}
	used := make([]bool, len(p.Points))
	for i, t := range p.Triangles {
		for _, v := range t {
			if v < 0 || v >= len(p.Points) {
				return fmt.Errorf("flatten: triangle %d names vertex %d, want 0–%d", i, v, len(p.Points)-1)
			}
			used[v] = true
		}
	}
	s := p.sides()
	for i, t := range p.Triangles {
		for j, v := range t {
			w := t[(j+1)%3]
			if first, _ := s.left(v, w); v == w || first != i {
				return fmt.Errorf("flatten: triangle %d: edge %d–%d is used twice in one direction; want a surface with one outside", i, v, w)
			}
		}
	}
	for v, q := range p.Points {
		if !used[v] {
			return fmt.Errorf("flatten: vertex %d belongs to no triangle", v)
		}
		if s := q.X + q.Y + q.Z; math.IsNaN(s) || math.IsInf(s, 0) {
			return fmt.Errorf("flatten: vertex %d is not a finite point", v)
		}
	}
	return nil
}

// checkDisk holds the patch against Euler's formula for a disk, V − E + F = 1, and
// sees that the triangles round each vertex form one fan.
func (p Patch) checkDisk(rim int) error {
	edges := (3*len(p.Triangles) + rim) / 2
	if χ := len(p.Points) - edges + len(p.Triangles); χ != 1 {
		return fmt.Errorf("flatten: the patch has Euler characteristic %d; want 1, one disk", χ)
	}
	fans := p.fans()
	for v, n := range fans {
		if n != 1 {
			return fmt.Errorf("flatten: the patch touches itself at vertex %d; want one disk", v)
		}
	}
	return nil
}

// fans counts, for each vertex, the separate fans of triangles round it.
func (p Patch) fans() []int {
	sides := p.sides()
	fans := make([]int, len(p.Points))
	seen := make([][3]bool, len(p.Triangles))
	for i := range p.Triangles {
		for j := range 3 {
			if seen[i][j] {
				continue
			}
			fans[p.Triangles[i][j]]++
			p.walk(i, j, sides, seen)
		}
	}
	return fans
}

// walk marks the fan of triangles that holds corner j of triangle i, in both directions.
func (p Patch) walk(i, j int, s sides, seen [][3]bool) {
	v := p.Triangles[i][j]
	for _, step := range []int{2, 1} {
		for t, c, ok := i, j, true; ok; {
			seen[t][c] = true
			w := p.Triangles[t][(c+step)%3]
			edge := [2]int{v, w}
			if step == 1 {
				edge = [2]int{w, v}
			}
			if t, ok = s.left(edge[0], edge[1]); !ok {
				break
			}
			for c = 0; p.Triangles[t][c] != v; c++ {
			}
			ok = !seen[t][c]
		}
	}
}
