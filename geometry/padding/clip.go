package padding

import (
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

// rows picks rows about rowGap apart, the zone's own ends included.
func (m *Mount) rows(z Zone) []int {
	var rows []int
	for i, h := range m.Base.Z {
		if h < z.Lo-1e-6 || h > z.Hi+1e-6 {
			continue
		}
		if n := len(rows); n == 0 || h-m.Base.Z[rows[n-1]] >= rowGap-1e-6 {
			rows = append(rows, i)
		} else if i+1 == len(m.Base.Z) || m.Base.Z[i+1] > z.Hi+1e-6 {
			rows = append(rows, i)
		}
	}
	return rows
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
	const away = 0.12
	if fp < fq { // one order, so that both triangles of an edge agree
		p, q, fp, fq = q, p, fq, fp
	}
	t := min(max(fp/(fp-fq), away), 1-away)
	key := Key{p[0], wrap(p[1]), q[0], wrap(q[1])}
	return c.add(key, c.place(p).Lerp(c.place(q), t), c.border(p)&c.border(q)|Edge)
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
