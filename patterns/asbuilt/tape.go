package asbuilt

import (
	"understructure/geometry/plane"
	"understructure/geometry/space"
)

// Tape is the girth of a taut tape round the mount at a height, mm; 0 where the mount is not.
func (m Mount) Tape(z float64) float64 {
	if m.skin == nil {
		return 0
	}
	return m.skin.crossings(z).Tape()
}

// Span is the lowest and the highest height of the mount.
func (m Mount) Span() (lo, hi float64) {
	if m.skin == nil {
		return 0, 0
	}
	p := m.skin.points
	lo, hi = p[0][0].Z, p[0][0].Z
	for i := range p {
		for _, q := range p[i] {
			lo, hi = min(lo, q.Z), max(hi, q.Z)
		}
	}
	return lo, hi
}

// crossings are the places where the edges of the grid meet a level plane. The hull of these is the
// hull of the whole slice, since between them the skin is flat.
func (g *grid) crossings(z float64) plane.Ring {
	var out plane.Ring
	meet := func(a, b space.Point) {
		if (a.Z < z) == (b.Z < z) {
			return
		}
		p := a.Lerp(b, (z-a.Z)/(b.Z-a.Z))
		out = append(out, plane.Point{X: p.X, Y: p.Y})
	}
	for i := range g.points {
		for j, a := range g.points[i] {
			meet(a, g.points[i][(j+1)%columns])
			if i+1 < len(g.points) {
				meet(a, g.points[i+1][j])
			}
		}
	}
	return out
}
