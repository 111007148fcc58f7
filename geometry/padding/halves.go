package padding

import (
	"understructure/geometry/space"
)

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
