package skirt

import (
	"fmt"
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/space"
)

// Strip is a band of cloth between two lines in space, laid flat: triangle by triangle, so
// that both lines and every straight across keep their lengths.
//
// Two level hoops joined where they face the same way bound a developable surface (D. J.
// Struik, Lectures on Classical Differential Geometry, 1950, "Developable surfaces"): such a
// strip is exact. Between other lines the cloth would have to twist; Strain says how much.
type Strip struct {
	Lower, Upper []plane.Point // from left to right as seen from outside, equally many
	Strain       float64       // greatest change of length of any line along the strip or aslant, as a fraction
}

// LayStrip lays the band between two lines flat, which run to the right as seen from outside and have equally many
// points, at least two.
func LayStrip(lower, upper []space.Point) (Strip, error) {
	n := len(lower)
	if n < 2 || len(upper) != n {
		return Strip{}, fmt.Errorf("skirt: a strip has %d points below and %d above, want equally many, at least 2", n, len(upper))
	}
	s := Strip{Lower: make([]plane.Point, n), Upper: make([]plane.Point, n)}
	s.Upper[0] = plane.Point{Y: lower[0].Dist(upper[0])}
	for i := 1; i < n; i++ {
		var ok, fine bool
		s.Lower[i], ok = toRight(s.Upper[i-1], s.Lower[i-1], upper[i-1].Dist(lower[i]), lower[i-1].Dist(lower[i]))
		s.Upper[i], fine = toRight(s.Upper[i-1], s.Lower[i], upper[i-1].Dist(upper[i]), lower[i].Dist(upper[i]))
		if !ok || !fine {
			return Strip{}, fmt.Errorf("skirt: a strip has no width near (%.0f, %.0f, %.0f)", lower[i].X, lower[i].Y, lower[i].Z)
		}
	}
	for i := 1; i < n; i++ {
		s.Strain = math.Max(s.Strain, off(s.Lower[i-1].Dist(s.Upper[i]), lower[i-1].Dist(upper[i])))
		flat := s.Lower[i].Add(s.Upper[i]).Sub(s.Lower[i-1].Add(s.Upper[i-1])).Norm()
		s.Strain = math.Max(s.Strain, off(flat, lower[i].Add(upper[i]).Sub(lower[i-1].Add(upper[i-1])).Norm()))
	}
	return s.upright(), nil
}

func off(flat, real float64) float64 {
	if real < 1e-9 {
		return 0
	}
	return math.Abs(flat/real - 1)
}

// toRight is the third corner of a triangle, at distance a from the upper and b from the lower corner, to
// the right of the line from lower to upper.
func toRight(upper, lower plane.Point, a, b float64) (plane.Point, bool) {
	c := upper.Dist(lower)
	if c < 1e-9 {
		return plane.Point{}, false
	}
	up := upper.Sub(lower).Mul(1 / c)
	y := (b*b + c*c - a*a) / (2 * c)
	x := math.Sqrt(math.Max(0, (b-y)*(b+y)))
	return lower.Add(up.Mul(y)).Add(plane.Point{X: up.Y, Y: -up.X}.Mul(x)), true
}

// upright turns the strip so that its middle stands up, and its lower line's middle is the origin.
func (s Strip) upright() Strip {
	m := len(s.Lower) / 2
	up := s.Upper[m].Sub(s.Lower[m])
	up = up.Mul(1 / math.Max(up.Norm(), 1e-9))
	o := s.Lower[m]
	turn := func(p plane.Point) plane.Point {
		d := p.Sub(o)
		return plane.Point{X: d.Cross(up), Y: d.Dot(up)}
	}
	s.Lower, s.Upper = plane.Ring(s.Lower).Map(turn), plane.Ring(s.Upper).Map(turn)
	return s
}

// Outline is the strip's edge, counter-clockwise from the lower left corner, without corners
// that lie on the one before.
func (s Strip) Outline() plane.Ring {
	var out plane.Ring
	add := func(p plane.Point) {
		if len(out) == 0 || out[len(out)-1].Dist(p) > 1e-9 {
			out = append(out, p)
		}
	}
	for _, p := range s.Lower {
		add(p)
	}
	for i := len(s.Upper) - 1; i >= 0; i-- {
		add(s.Upper[i])
	}
	return out
}
