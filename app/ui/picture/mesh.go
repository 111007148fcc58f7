package picture

import (
	"understructure/geometry/section"
	"understructure/geometry/space"
)

// columns is how many points each outline of the mesh has.
const columns = section.Directions

// mesh is what can be shaded: rows of points, each once round the axis counter-clockwise, with
// their outward normals. Rows of one net are joined.
type mesh struct {
	points  []vec
	normals []vec
	heights []float64 // one a row
	nets    []net
}

// net is a range of rows, from the first to before the last. The outside is where rows run to the right and
// the next row lies above. Of every skin there are three: its side, its flat lower end, whose first row is all
// in one point, and its flat upper end, whose last row is.
type net struct{ first, end int }

// vec is a space.Point as the painter wants it: half as large.
type vec struct{ x, y, z float32 }

func small(p space.Point) vec { return vec{float32(p.X), float32(p.Y), float32(p.Z)} }

func (v vec) dot(w vec) float32 { return v.x*w.x + v.y*w.y + v.z*w.z }

// add puts a skin and its two flat ends into the mesh.
func (m *mesh) add(s skin) {
	m.begin()
	for i, normals := range s.normals() {
		m.row(s, i, 1)
		for _, n := range normals {
			m.normals = append(m.normals, small(n))
		}
	}
	m.end()
	last := len(s.Z) - 1
	m.flat(s, 0, -1, 0, 1)
	m.flat(s, last, 1, 1, 0)
}

// flat closes a skin with the row given, drawn in to the axis.
func (m *mesh) flat(s skin, row int, up float64, scales ...float64) {
	m.begin()
	for _, scale := range scales {
		m.row(s, row, scale)
		for range columns {
			m.normals = append(m.normals, vec{z: float32(up)})
		}
	}
	m.end()
}

func (m *mesh) begin() { m.nets = append(m.nets, net{first: len(m.heights)}) }

func (m *mesh) end() { m.nets[len(m.nets)-1].end = len(m.heights) }

func (m *mesh) row(s skin, i int, scale float64) {
	m.heights = append(m.heights, s.Z[i])
	for j := range columns {
		p := s.Point(i, j)
		m.points = append(m.points, small(space.Point{X: p.X * scale, Y: p.Y * scale, Z: p.Z}))
	}
}
