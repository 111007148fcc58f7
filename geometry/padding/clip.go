package padding

import (
	"sort"

	"understructure/geometry/section"
	"understructure/geometry/space"
)

// clipper gathers the triangles of a zone inside the edge of a layer.
type clipper struct {
	m     *Mount
	l     Layer
	zone  Zone
	rows  []int
	patch Patch
	ids   map[Key]int
}

func (m *Mount) clip(l Layer, z Zone) Patch {
	c := clipper{m: m, l: l, zone: z, rows: m.rows(z), ids: map[Key]int{}, patch: Patch{Zone: z}}
	for a := 1; a < len(c.rows); a++ {
		for j := z.From; j < z.To; j += columnStep {
			k := min(j+columnStep, z.To)
			lo, hi := c.rows[a-1], c.rows[a]
			// Alternate diagonals would bend the mesh no less; one way keeps it simple.
			c.triangle([3][2]int{{lo, j}, {lo, k}, {hi, k}})
			c.triangle([3][2]int{{lo, j}, {hi, k}, {hi, j}})
		}
	}
	return c.patch
}

// rows picks rows about rowGap apart. The first and the last are those nearest to the zone's ends, so
// that two zones that meet share one.
func (m *Mount) rows(z Zone) []int {
	first, last := m.nearest(z.Lo), m.nearest(z.Hi)
	rows := []int{first}
	for i := first + 1; i <= last; i++ {
		if i == last || m.Base.Z[i]-m.Base.Z[rows[len(rows)-1]] >= rowGap-1e-6 {
			rows = append(rows, i)
		}
	}
	return rows
}

// nearest is the row of the base that lies nearest to a height.
func (m *Mount) nearest(h float64) int {
	z := m.Base.Z
	i := min(sort.SearchFloat64s(z, h), len(z)-1)
	if i > 0 && h-z[i-1] < z[i]-h {
		i--
	}
	return i
}

// triangle adds what of a triangle lies inside.
func (c *clipper) triangle(t [3][2]int) {
	var poly []int
	for a := range t {
		p, q := t[a], t[(a+1)%3]
		fp, fq := c.inside(p), c.inside(q)
		if fp > 0 {
			poly = append(poly, c.corner(p))
		}
		if (fp > 0) != (fq > 0) {
			poly = append(poly, c.crossing(p, q, fp, fq))
		}
	}
	for k := 2; k < len(poly); k++ {
		c.patch.Mesh.Triangles = append(c.patch.Mesh.Triangles, [3]int{poly[0], poly[k-1], poly[k]})
	}
}

func wrap(j int) int { return (j%section.Directions + section.Directions) % section.Directions }

func (c *clipper) inside(p [2]int) float64 { return c.l.Inside[p[0]][wrap(p[1])] }

// place is where the middle of the sheet lies.
func (c *clipper) place(p [2]int) space.Point {
	j := wrap(p[1])
	up := c.l.Under[p[0]][j] + c.l.Thickness/2
	return c.m.Base.Point(p[0], j).Add(c.m.Normals[p[0]][j].Mul(up))
}

func (c *clipper) corner(p [2]int) int {
	j := wrap(p[1])
	return c.add(Key{p[0], j, p[0], j}, c.place(p), c.border(p))
}

// crossing adds the point between p and q where the sheet ends, a little away from both,
// so that no sliver of a triangle is left.
func (c *clipper) crossing(p, q [2]int, fp, fq float64) int {
	if fp < fq { // one order, so that both triangles of an edge agree
		p, q = q, p
	}
	key := Key{p[0], wrap(p[1]), q[0], wrap(q[1])}
	at, step := c.end(p, q)
	b := c.border(p)&c.border(q) | Edge
	if step {
		b |= Step
	}
	return c.add(key, at, b)
}

// end goes from p, where the sheet lies, to q, where it does not, over all the rows between, and returns
// where it ends and whether that is at a step of the core.
func (c *clipper) end(p, q [2]int) (space.Point, bool) {
	const away = 0.12 // of the way
	n := max(q[0]-p[0], p[0]-q[0], q[1]-p[1], p[1]-q[1])
	at := func(k int) [2]int { return [2]int{p[0] + (q[0]-p[0])*k/n, p[1] + (q[1]-p[1])*k/n} }
	k := 1
	for k < n && c.inside(at(k)) > 0 {
		k++
	}
	from, to := c.inside(at(k-1)), c.inside(at(k))
	t := min(max((float64(k-1)+from/(from-to))/float64(n), away), 1-away) * float64(n)
	k = int(t)
	a, b := at(k), at(min(k+1, n))
	return c.place(a).Lerp(c.place(b), t-float64(k)), c.steep(a, b)
}

// ledge is how much the space to fill must change, mm a mm along the base, for a step of the core: shapes of
// bodies change by a third of that.
const ledge = 0.6

// steep reports whether a step of the core lies between two points.
func (c *clipper) steep(p, q [2]int) bool {
	i, j := wrap(p[1]), wrap(q[1])
	change := c.m.Thickness[p[0]][i] - c.m.Thickness[q[0]][j]
	return max(change, -change) > ledge*c.m.Base.Point(p[0], i).Dist(c.m.Base.Point(q[0], j))
}

func (c *clipper) add(k Key, p space.Point, b Border) int {
	if id, ok := c.ids[k]; ok {
		return id
	}
	id := len(c.patch.Mesh.Points)
	c.ids[k] = id
	c.patch.Mesh.Points = append(c.patch.Mesh.Points, p)
	c.patch.Borders = append(c.patch.Borders, b)
	c.patch.Keys = append(c.patch.Keys, k)
	return id
}

func (c *clipper) border(p [2]int) Border {
	var b Border
	if p[1] == c.zone.From {
		b |= First
	}
	if p[1] == c.zone.To {
		b |= Last
	}
	if p[0] == c.rows[0] {
		b |= Bottom
	}
	if p[0] == c.rows[len(c.rows)-1] {
		b |= Top
	}
	return b
}
