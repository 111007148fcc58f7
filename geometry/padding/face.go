package padding

import (
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/section"
)

// face is what stands at one height of the wanted shape: for every column the wanted
// point and, of the place on the base whose normal leads there, what decides its wadding.
type face [section.Directions]struct {
	wanted plane.Point
	out    plane.Point // how the slice moves for a mm of wadding
	fill   float64     // thickness to fill, mm
	bias   float64
	slope  float64
	whole  int     // sheets that lie there, and reach beyond the feather, whatever the rounding
	below  float64 // their thickness, mm
	bare   bool    // no wadding may lie there
}

// levellest bounds how far a level slice moves for a mm of wadding where the skin is
// nearly level: 1/0.3.
const levellest = 0.3

// tape is the length of a taut tape round the slice with rounding φ: the wanted points less what the sheets
// leave unfilled. A skin that lies δ inside another along the normal lies δ/cos β inside it on a level
// slice, β the normal's rise.
func (f *face) tape(s *solver, φ float64) float64 {
	var ring [section.Directions]plane.Point
	for j := range f {
		c := &f[j]
		d := -c.fill
		if !c.bare {
			d += s.onto(c.whole, c.below, c.bias, c.slope, φ)
		}
		ring[j] = plane.Point{X: c.wanted.X + c.out.X*d, Y: c.wanted.Y + c.out.Y*d}
	}
	return section.Around(ring[:])
}

// faces gathers, for every row of the wanted skin, what the normals that meet it bring.
func (s *solver) faces() []face {
	out := make([]face, len(s.m.Wanted.Z))
	var row [section.Directions]int // of the base, for every column
	for k := range out {
		for j := range row {
			for row[j]+2 < len(s.at) && s.at[row[j]+1][j] < float64(k) {
				row[j]++
			}
			s.meet(&out[k], k, row[j], j)
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
	c := &f[j]
	c.fill, c.bias, c.slope = mix(s.m.Thickness), mix(s.bias), mix(s.slope)
	for c.whole < len(s.seq) && s.inside(c.whole, c.bias, leastRound) >= EdgeHalf*c.slope {
		c.below += s.seq[c.whole]
		c.whole++
	}
	c.bare = !s.open[i][j] && !s.open[i+1][j]
	c.wanted = section.Direction(j).Mul(s.m.Wanted.R[k][j])
	n := s.m.Normals[i][j].Lerp(s.m.Normals[i+1][j], t)
	h := math.Hypot(n.X, n.Y)
	c.out = plane.Point{X: n.X, Y: n.Y}.Mul(1 / (h * math.Max(h, levellest)))
}
