package padding

import (
	"understructure/geometry/parallel"
	"understructure/geometry/section"
	"understructure/geometry/space"
	"understructure/geometry/surface"
)

// A cell of the base must keep this part of its area as the layers build up over it. In a
// narrow hollow, such as where the neck meets the shoulders, normals run together and
// thick wadding would cross itself; real wadding there fills the hollow and turns outward.
const keeps = 0.2

// mostTurns bounds how often directions in a hollow are turned towards their neighbours'.
const mostTurns = 80

// turnOut replaces the normals, where layers along them would cross, by the mean of the
// normals around, until they do not.
func (m *Mount) turnOut() {
	own := m.Normals
	m.Normals = make(surface.Shell, len(own))
	copy(m.Normals, own)
	cells := m.cells()
	for range mostTurns {
		tight := m.crowded(cells)
		if len(tight) == 0 {
			return
		}
		means := make([]space.Point, len(tight))
		inBlocks(len(tight), func(k int) { means[k] = around(m.Normals, tight[k][0], tight[k][1]) })
		if m.still(tight, means) {
			return
		}
		inBlocks(len(tight), func(k int) {
			i, j := tight[k][0], tight[k][1]
			n, t := means[k], m.Thickness[i][j]
			row, _ := m.Wanted.Row(m.Base.Z[i] + n.Z*(t+m.Cover))
			m.Normals[i][j], m.Thickness[i][j] = n, reach(m.Wanted, m.Base.Point(i, j), n, j, t+m.Cover, &row)-m.Cover
		})
		cells = m.touching(tight)
	}
}

// still reports whether no direction would turn by more than a hair: at the steps of a core, where cells lose
// their area whatever is done, directions come to rest long before mostTurns. Each turn being
// less than nine tenths of the one before, all the turns left out move nothing by a hundredth of a millimetre.
func (m *Mount) still(points [][2]int, directions []space.Point) bool {
	const hair = 2e-5 // radians
	for k, p := range points {
		if directions[k].Sub(m.Normals[p[0]][p[1]]).Norm() > hair {
			return false
		}
	}
	return true
}

// inBlocks does small work for every number below n on all processors, some hundred numbers at a time.
func inBlocks(n int, f func(k int)) {
	const size = 256
	parallel.Each((n+size-1)/size, func(b int) {
		for k := b * size; k < min(b*size+size, n); k++ {
			f(k)
		}
	})
}

// cells lists every cell of the base by its upper right point: row i, column after j.
func (m *Mount) cells() [][2]int {
	var out [][2]int
	for i := 1; i < len(m.Base.Z); i++ {
		for j := range section.Directions {
			out = append(out, [2]int{i, j})
		}
	}
	return out
}

// touching lists the cells that have one of the points as a corner.
func (m *Mount) touching(points [][2]int) [][2]int {
	s := newSet(len(m.Base.Z))
	for _, p := range points {
		for _, i := range []int{p[0], p[0] + 1} {
			if i >= 1 && i < len(m.Base.Z) {
				s.add(i, p[1]-1)
				s.add(i, p[1])
			}
		}
	}
	return s.members
}

// crowded lists the points of the cells that lose too much of their area, and the points next to them.
func (m *Mount) crowded(cells [][2]int) [][2]int {
	s := newSet(len(m.Base.Z))
	cross := make([]bool, len(cells))
	inBlocks(len(cells), func(k int) { cross[k] = m.crosses(cells[k][0], cells[k][1]) })
	for k, c := range cells {
		if !cross[k] {
			continue
		}
		for a := -2; a <= 1; a++ {
			for b := -1; b <= 2; b++ {
				s.add(min(max(c[0]+a, 0), len(m.Base.Z)-1), c[1]+b)
			}
		}
	}
	return s.members
}

// set is a set of places on the base, in the order in which they came.
type set struct {
	has     [][section.Directions]bool
	members [][2]int
}

func newSet(rows int) *set { return &set{has: make([][section.Directions]bool, rows)} }

func (s *set) add(i, j int) {
	j &= section.Directions - 1
	if !s.has[i][j] {
		s.has[i][j] = true
		s.members = append(s.members, [2]int{i, j})
	}
}

// crosses reports whether the cell below row i and after column j would nearly fold.
func (m *Mount) crosses(i, j int) bool {
	k := (j + 1) & (section.Directions - 1)
	at := func(i, j int) (base, top, n space.Point) {
		base, n = m.Base.Point(i, j), m.Normals[i][j]
		return base, base.Add(n.Mul(max(m.Thickness[i][j], 0))), n
	}
	a, ta, na := at(i-1, j)
	b, tb, nb := at(i-1, k)
	c, tc, nc := at(i, k)
	d, td, nd := at(i, j)
	n := na.Add(nb).Add(nc).Add(nd).Unit()
	before := c.Sub(a).Cross(d.Sub(b)).Norm()
	after := tc.Sub(ta).Cross(td.Sub(tb)).Dot(n)
	return after < keeps*before
}

// around is the mean direction of the points about one, three rows and columns each way.
func around(n surface.Shell, i, j int) space.Point {
	var sum space.Point
	for a := max(i-3, 0); a <= min(i+3, len(n)-1); a++ {
		for b := -3; b <= 3; b++ {
			sum = sum.Add(n[a][(j+b)&(section.Directions-1)])
		}
	}
	return sum.Unit()
}
