package flatten

import (
	"fmt"
	"math"

	"understructure/geometry/space"
)

// Patch is a triangulated piece of surface with the topology of a disk. Triangles run
// counter-clockwise seen from outside; lengths are millimetres.
type Patch struct {
	Points    []space.Point
	Triangles [][3]int
}

// Area is the area of the surface in square millimetres.
func (p Patch) Area() float64 {
	a := 0.0
	for _, t := range p.Triangles {
		a += p.cross(t).Norm() / 2
	}
	return a
}

// length is that of a path of vertices on the surface.
func (p Patch) length(path []int) float64 {
	sum := 0.0
	for i := 1; i < len(path); i++ {
		sum += p.Points[path[i]].Dist(p.Points[path[i-1]])
	}
	return sum
}

func (p Patch) cross(t [3]int) space.Point {
	a := p.Points[t[0]]
	return p.Points[t[1]].Sub(a).Cross(p.Points[t[2]].Sub(a))
}

// TotalCurvature is the Gaussian curvature summed over the patch: the angle missing from a full turn
// round each inner vertex, in radians. It is positive over a bust, zero on a cone away from its tip,
// and negative round a waist. A patch that is no disk has the curvature of its inner vertices all the same.
func (p Patch) TotalCurvature() float64 {
	sum := 0.0
	for _, k := range p.curvature() {
		sum += k
	}
	return sum
}

// Saddle reports whether the curvature is negative on the whole. A slit where it is negative would make the
// flat piece overlap itself, so Lay opens no dart there; a full seam that divides the patch takes strain away.
func (p Patch) Saddle() bool { return p.TotalCurvature() < 0 }

// curvature gives each vertex its angle defect; vertices on the boundary have none.
func (p Patch) curvature() []float64 {
	k := make([]float64, len(p.Points))
	used := make([]bool, len(p.Points))
	for _, t := range p.Triangles {
		for j, v := range t {
			u, w := p.Points[t[(j+1)%3]].Sub(p.Points[v]), p.Points[t[(j+2)%3]].Sub(p.Points[v])
			k[v] -= math.Atan2(u.Cross(w).Norm(), u.Dot(w))
			used[v] = true
		}
	}
	for v := range k {
		if used[v] {
			k[v] += 2 * math.Pi
		}
	}
	for e := range p.rim() {
		k[e[0]], k[e[1]] = 0, 0
	}
	return k
}

// rim returns the directed edges that have a triangle on their left only.
func (p Patch) rim() map[[2]int]int {
	m := p.sides()
	for e := range m {
		if _, twin := m[[2]int{e[1], e[0]}]; twin {
			delete(m, e)
			delete(m, [2]int{e[1], e[0]})
		}
	}
	return m
}

// sides maps every directed edge to the triangle on its left.
func (p Patch) sides() map[[2]int]int {
	m := make(map[[2]int]int, 3*len(p.Triangles))
	for i, t := range p.Triangles {
		for j := range t {
			m[[2]int{t[j], t[(j+1)%3]}] = i
		}
	}
	return m
}

// Boundary returns the vertices of the edge of the patch, counter-clockwise seen from outside, beginning with
// the lowest index. The error says why a patch that is not one disk cannot be laid.
func (p Patch) Boundary() ([]int, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	next := map[int]int{}
	first := len(p.Points)
	for e := range p.rim() {
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
	seen := make(map[[2]int]bool, 3*len(p.Triangles))
	for i, t := range p.Triangles {
		for j, v := range t {
			w := t[(j+1)%3]
			if v < 0 || v >= len(p.Points) {
				return fmt.Errorf("flatten: triangle %d names vertex %d, want 0–%d", i, v, len(p.Points)-1)
			}
			if v == w || seen[[2]int{v, w}] {
				return fmt.Errorf("flatten: triangle %d: edge %d–%d is used twice in one direction; want a surface with one outside", i, v, w)
			}
			seen[[2]int{v, w}], used[v] = true, true
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
func (p Patch) walk(i, j int, sides map[[2]int]int, seen [][3]bool) {
	v := p.Triangles[i][j]
	for _, step := range []int{2, 1} {
		for t, c, ok := i, j, true; ok; {
			seen[t][c] = true
			w := p.Triangles[t][(c+step)%3]
			edge := [2]int{v, w}
			if step == 1 {
				edge = [2]int{w, v}
			}
			if t, ok = sides[edge]; !ok {
				break
			}
			for c = 0; p.Triangles[t][c] != v; c++ {
			}
			ok = !seen[t][c]
		}
	}
}
