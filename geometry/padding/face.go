package padding

import (
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/section"
)

// face is what stands at one height of the wanted shape: for every column the wanted
// point and, of the place on the base whose normal leads there, what decides its wadding.
type face struct {
	wanted [section.Directions]plane.Point
	out    [section.Directions]plane.Point // how the slice moves for a mm of wadding
	fill   [section.Directions]float64     // thickness to fill, mm
	bias   [section.Directions]float64
	slope  [section.Directions]float64
	bare   [section.Directions]bool // no wadding may lie there
}

// levellest bounds how far a level slice moves for a mm of wadding where the skin is
// nearly level: 1/0.3.
const levellest = 0.3

// ring is the slice with rounding φ: the wanted point less what the sheets leave unfilled.
// A skin that lies δ inside another along the normal lies δ/cos β inside it on a level
// slice, β the normal's rise.
func (f *face) ring(s *solver, φ float64) [section.Directions]plane.Point {
	var p [section.Directions]plane.Point
	for j := range p {
		d := -f.fill[j]
		if !f.bare[j] {
			d += s.stack(f.bias[j], f.slope[j], φ)
		}
		p[j] = f.wanted[j].Add(f.out[j].Mul(d))
	}
	return p
}

// faces gathers, for every row of the wanted skin, what the normals that meet it bring.
func (s *solver) faces() []face {
	rows := len(s.m.Wanted.Z)
	out := make([]face, rows)
	for j := range section.Directions {
		i := 0
		for k := range rows {
			for i+2 < len(s.at) && s.at[i+1][j] < float64(k) {
				i++
			}
			s.meet(&out[k], k, i, j)
		}
	}
	return out
}

// meet fills column j of the face at wanted row k from base rows i and i+1.
func (s *solver) meet(f *face, k, i, j int) {
	t := 0.0
	if d := s.at[i+1][j] - s.at[i][j]; d > 0 {
		t = math.Max(0, math.Min(1, (float64(k)-s.at[i][j])/d))
	}
	mix := func(f Field) float64 { return f[i][j] + (f[i+1][j]-f[i][j])*t }
	f.fill[j], f.bias[j], f.slope[j] = mix(s.m.Thickness), mix(s.bias), mix(s.slope)
	f.bare[j] = !s.m.open(i, j) && !s.m.open(i+1, j)
	f.wanted[j] = section.Direction(j).Mul(s.m.Wanted.R[k][j])
	n := s.m.Normals[i][j].Lerp(s.m.Normals[i+1][j], t)
	h := math.Hypot(n.X, n.Y)
	f.out[j] = plane.Point{X: n.X, Y: n.Y}.Mul(1 / (h * math.Max(h, levellest)))
}
