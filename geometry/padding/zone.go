package padding

import (
	"understructure/geometry/flatten"
	"understructure/geometry/section"
	"understructure/geometry/space"
)

// Zone is a part of the body that is padded for itself: from one column to another,
// counter-clockwise, and from one height to another.
type Zone struct {
	Name     string
	From, To int // columns, From < To ≤ From + section.Directions
	Lo, Hi   float64
}

// Border says on which edges of its zone a point lies, and whether on the edge of the layer.
type Border uint8

// The borders of a zone. East is the first column, West the last: seen from outside, the
// first column lies on the left hand.
const (
	First Border = 1 << iota
	Last
	Bottom
	Top
	Edge // the sheet itself ends here
)

// Patch is the part of one layer that lies in one zone, in one piece.
type Patch struct {
	Zone    Zone
	Mesh    flatten.Patch // half a sheet above what lies beneath, where a bent sheet keeps its length
	Borders []Border      // one a point
	Keys    []Key         // one a point: the same place in a neighbouring zone has the same key
}

// Key names a point of a layer: a crossing of row and column, or a place between two.
type Key [4]int

// least is the smallest piece worth cutting, in square millimetres: two fingers by two.
// From memory; smaller ones are left off, and there the mount is slacker than reckoned, never tighter.
const least = 900.0

// cell is how finely a piece is drawn: every second column, rows about 8 mm apart.
const columnStep, rowGap = 2, 8.0

// Patches cuts a layer along the zones' borders, in the order of the zones.
func (m *Mount) Patches(l Layer, zones []Zone) []Patch {
	var out []Patch
	for _, z := range zones {
		out = append(out, m.disks(l, z, 0)...)
	}
	return out
}

// disks returns the pieces of a zone; a piece with a hole in it is divided until it has none.
func (m *Mount) disks(l Layer, z Zone, depth int) []Patch {
	var out []Patch
	for _, p := range m.clip(l, z).parts() {
		if p.Mesh.Area() < least {
			continue
		}
		if _, err := p.Mesh.Boundary(); err != nil && depth < 4 && z.To-z.From > 2*columnStep {
			a, b := z, z
			middle := (z.From + z.To) / 2 / columnStep * columnStep
			a.To, b.From = middle, middle
			return append(m.disks(l, a, depth+1), m.disks(l, b, depth+1)...)
		}
		out = append(out, p)
	}
	return out
}

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

// parts returns the pieces of a patch that hang together by whole edges. Where a piece
// touches itself at a point, the point is taken twice, so that it can be cut apart there.
func (p Patch) parts() []Patch {
	owner, corner := p.joined(), p.fans()
	index := map[int]int{}
	var out []Patch
	ids := map[int]int{}
	for t, tri := range p.Mesh.Triangles {
		n, ok := index[owner[t]]
		if !ok {
			n = len(out)
			index[owner[t]] = n
			out = append(out, Patch{Zone: p.Zone})
		}
		q := &out[n]
		var mine [3]int
		for a, v := range tri {
			fan := corner[3*t+a]
			id, ok := ids[fan]
			if !ok {
				id = len(q.Mesh.Points)
				ids[fan] = id
				q.Mesh.Points = append(q.Mesh.Points, p.Mesh.Points[v])
				q.Borders = append(q.Borders, p.Borders[v])
				q.Keys = append(q.Keys, p.Keys[v])
			}
			mine[a] = id
		}
		q.Mesh.Triangles = append(q.Mesh.Triangles, mine)
	}
	return out
}

// groups is a union of numbers into groups, each known by its lowest.
type groups []int

func alone(n int) groups {
	g := make(groups, n)
	for i := range g {
		g[i] = i
	}
	return g
}

func (g groups) root(i int) int {
	for g[i] != i {
		g[i] = g[g[i]]
		i = g[i]
	}
	return i
}

func (g groups) join(i, k int) {
	a, b := g.root(i), g.root(k)
	g[max(a, b)] = min(a, b)
}

// roots is every number's group.
func (g groups) roots() []int {
	out := make([]int, len(g))
	for i := range g {
		out[i] = g.root(i)
	}
	return out
}

// neighbours calls f for every edge that two triangles share: corner a of triangle t and the
// next, and the like corners of triangle u.
func (p Patch) neighbours(f func(t, a, u, b int)) {
	type side struct{ t, a int }
	first := map[[2]int]side{}
	for t, tri := range p.Mesh.Triangles {
		for a, v := range tri {
			w := tri[(a+1)%3]
			if s, ok := first[[2]int{w, v}]; ok {
				f(t, a, s.t, s.a)
				continue
			}
			first[[2]int{v, w}] = side{t, a}
		}
	}
}

// joined gives each triangle the lowest triangle that it hangs together with.
func (p Patch) joined() []int {
	g := alone(len(p.Mesh.Triangles))
	p.neighbours(func(t, _, u, _ int) { g.join(t, u) })
	return g.roots()
}

// fans gives each corner, numbered three a triangle, the lowest corner that shares its
// point and an edge with it, directly or through others.
func (p Patch) fans() []int {
	g := alone(3 * len(p.Mesh.Triangles))
	p.neighbours(func(t, a, u, b int) {
		g.join(3*t+a, 3*u+(b+1)%3)
		g.join(3*t+(a+1)%3, 3*u+b)
	})
	return g.roots()
}

// Halves divides a patch across its longer way along whole edges, for a piece that cannot be laid
// in one. The cut carries no border.
func (p Patch) Halves() []Patch {
	mid, up := p.middle()
	var out []Patch
	for _, high := range []bool{false, true} {
		half := Patch{Zone: p.Zone, Borders: p.Borders, Keys: p.Keys}
		half.Mesh.Points = p.Mesh.Points
		for _, t := range p.Mesh.Triangles {
			c := p.Mesh.Points[t[0]].Add(p.Mesh.Points[t[1]]).Add(p.Mesh.Points[t[2]]).Mul(1.0 / 3)
			if (c.Sub(mid).Dot(up) > 0) == high {
				half.Mesh.Triangles = append(half.Mesh.Triangles, t)
			}
		}
		out = append(out, half.parts()...)
	}
	return out
}

// middle is the middle of the patch's bounds and the direction of the longest of them.
func (p Patch) middle() (mid, along space.Point) {
	lo, hi := p.Mesh.Points[0], p.Mesh.Points[0]
	for _, q := range p.Mesh.Points {
		lo = space.Point{X: min(lo.X, q.X), Y: min(lo.Y, q.Y), Z: min(lo.Z, q.Z)}
		hi = space.Point{X: max(hi.X, q.X), Y: max(hi.Y, q.Y), Z: max(hi.Z, q.Z)}
	}
	d := hi.Sub(lo)
	switch {
	case d.Z >= d.X && d.Z >= d.Y:
		along = space.Point{Z: 1}
	case d.X >= d.Y:
		along = space.Point{X: 1}
	default:
		along = space.Point{Y: 1}
	}
	return lo.Lerp(hi, 0.5), along
}
