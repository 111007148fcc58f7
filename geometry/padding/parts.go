package padding

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
