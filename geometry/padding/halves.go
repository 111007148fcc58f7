package padding

import (
	"math"

	"understructure/geometry/space"
)

// Halves divides a patch straight across its longer way, for a piece that cannot be laid in
// one. The cut carries no border.
func (p Patch) Halves() []Patch {
	mid, along := p.middle()
	var out []Patch
	for _, side := range []float64{-1, 1} {
		k := knife{from: p, depth: make([]float64, len(p.Mesh.Points)), ids: map[[2]int]int{}, half: Patch{Zone: p.Zone}}
		for v, q := range p.Mesh.Points {
			if d := side * q.Sub(mid).Dot(along); math.Abs(d) > onCut {
				k.depth[v] = d
			}
		}
		for _, t := range p.Mesh.Triangles {
			k.triangle(t)
		}
		out = append(out, k.half.parts()...)
	}
	return out
}

// onCut is how near to the cut a point counts as on it, mm, so that no sliver is left.
const onCut = 0.8

// knife keeps what lies on one side of a cut.
type knife struct {
	from  Patch
	depth []float64      // of every point of the patch: positive on the side kept, 0 on the cut
	ids   map[[2]int]int // of a point, named twice, or of where an edge is cut
	half  Patch
}

// triangle keeps what of a triangle lies on the side.
func (k *knife) triangle(t [3]int) {
	var poly []int
	inside := false
	for a, v := range t {
		w := t[(a+1)%3]
		if k.depth[v] >= 0 {
			poly = append(poly, k.point(v, v))
		}
		if k.depth[v]*k.depth[w] < 0 {
			poly = append(poly, k.point(v, w))
		}
		inside = inside || k.depth[v] > 0
	}
	for a := 2; inside && a < len(poly); a++ {
		k.half.Mesh.Triangles = append(k.half.Mesh.Triangles, [3]int{poly[0], poly[a-1], poly[a]})
	}
}

// point is a point of the half: v itself, or where the edge from v to w is cut.
func (k *knife) point(v, w int) int {
	v, w = min(v, w), max(v, w)
	id, ok := k.ids[[2]int{v, w}]
	if ok {
		return id
	}
	id = len(k.half.Mesh.Points)
	k.ids[[2]int{v, w}] = id
	place, border, key := k.from.Mesh.Points[v], k.from.Borders[v], k.from.Keys[v]
	if v != w {
		place = place.Lerp(k.from.Mesh.Points[w], k.depth[v]/(k.depth[v]-k.depth[w]))
		border &= k.from.Borders[w]
		key = between(key, k.from.Keys[w])
	}
	k.half.Mesh.Points = append(k.half.Mesh.Points, place)
	k.half.Borders = append(k.half.Borders, border)
	k.half.Keys = append(k.half.Keys, key)
	return id
}

// between names a place on the edge between two others, the same from both sides of a cut.
// The numbers are mixed as in the FNV-1a hash (G. Fowler, L. C. Noll, K.-P. Vo, 1991).
func between(a, b Key) Key {
	if b.Less(a) {
		a, b = b, a
	}
	h := uint64(14695981039346656037)
	for _, n := range append(a[:], b[:]...) {
		h = (h ^ uint64(n)) * 1099511628211
	}
	return Key{-1, int(h >> 32), int(h & math.MaxUint32), 0}
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
