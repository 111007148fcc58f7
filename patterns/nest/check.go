package nest

import (
	"fmt"
	"math"

	"understructure/geometry/plane"
)

// Check tests a layout at the true outlines: every piece inside its stock, to a ten-thousandth of a millimetre, and no two nearer
// to each other than the gap, to a millionth. It names the first that are not.
func (l Layout) Check(pieces []Piece, stock []Stock, gap float64) error {
	whole := make([]body, len(pieces))
	for i, p := range pieces {
		b, err := newBody(append([]plane.Ring{p.Outline}, p.Beside...), 0)
		if err != nil {
			return fmt.Errorf("nest: piece %d %q: %w", i+1, p.ID, err)
		}
		whole[i] = b
	}
	byBin := make([][]int, len(l.Bins))
	lying := make([]body, len(l.Placements))
	for i, p := range l.Placements {
		lying[i] = whole[p.Piece].placed(p)
		name := func(k int) string {
			q := l.Placements[k]
			return fmt.Sprintf("piece %d %q, copy %d", q.Piece+1, pieces[q.Piece].ID, q.Copy+1)
		}
		if !lying[i].within(stock[l.Bins[p.Bin].Stock]) {
			return fmt.Errorf("nest: %s does not lie within its stock", name(i))
		}
		for _, k := range byBin[p.Bin] {
			if d := lying[i].clearance(lying[k], gap); d < gap-rounding {
				return fmt.Errorf("nest: %s and %s lie %.6g mm apart, want %g", name(i), name(k), d, gap)
			}
		}
		byBin[p.Bin] = append(byBin[p.Bin], i)
	}
	return nil
}

// rounding is how far a length may be off by the rounding of sums, mm: a part in 10¹¹ of the farthest place.
const rounding = 1e-6

// body is all that lies with a piece: its rings, the convex parts of those, and the box round them.
type body struct {
	rings, parts []plane.Ring
	lo, hi       plane.Point
}

// newBody divides rings, drawn simpler by slack.
func newBody(rings []plane.Ring, slack float64) (body, error) {
	var b body
	var all plane.Ring
	for _, r := range rings {
		r = simplified(clean(r), slack)
		parts := convexParts(r)
		area := 0.0
		for _, p := range parts {
			area += p.Area()
		}
		if math.Abs(area-r.Area()) > 1e-9*r.Area() {
			return body{}, fmt.Errorf("outline of %.6g mm² can't be divided into convex parts, which come to %.6g", r.Area(), area)
		}
		b.rings, b.parts, all = append(b.rings, r), append(b.parts, parts...), append(all, r...)
	}
	b.lo, b.hi = all.Bounds()
	return b, nil
}

// placed is the body where a placement puts it.
func (b body) placed(p Placement) body {
	at := body{rings: mapped(b.rings, p.Of, p.Over), parts: mapped(b.parts, p.Of, p.Over)}
	var all plane.Ring
	for _, r := range at.rings {
		all = append(all, r...)
	}
	at.lo, at.hi = all.Bounds()
	return at
}

// within reports whether the body lies in a stock; a strip has no right end.
func (b body) within(s Stock) bool {
	lo, hi := s.Outline.Bounds()
	const over = edge + rounding
	if b.lo.X < lo.X-over || b.lo.Y < lo.Y-over || b.hi.Y > hi.Y+over || !s.open && b.hi.X > hi.X+over {
		return false
	}
	for _, p := range lacking(s.Outline) {
		for _, q := range b.parts {
			if separation(p, q) < -over {
				return false
			}
		}
	}
	return true
}

// clearance is the distance between two bodies, negative where they overlap; of bodies farther
// apart than far, some length from far on.
func (b body) clearance(o body, far float64) float64 {
	if d := max(b.lo.X-o.hi.X, o.lo.X-b.hi.X, b.lo.Y-o.hi.Y, o.lo.Y-b.hi.Y); d >= far && d >= 0 {
		return d
	}
	for _, p := range b.parts {
		for _, q := range o.parts {
			if d := separation(p, q); d < -rounding {
				return d
			}
		}
	}
	least := math.Inf(1)
	for _, p := range b.rings {
		for _, q := range o.rings {
			least = min(least, between(p, q))
		}
	}
	return least
}

// separation is how far two convex rings lie apart along the normal of some side, the best of all; negative where none parts them.
func separation(p, q plane.Ring) float64 {
	best := math.Inf(-1)
	for range 2 {
		for i, a := range p {
			u := p[(i+1)%len(p)].Sub(a)
			l := u.Norm()
			if l == 0 {
				continue
			}
			out := plane.Point{X: u.Y / l, Y: -u.X / l}
			d := math.Inf(1)
			for _, t := range q {
				d = min(d, out.Dot(t.Sub(a)))
			}
			best = max(best, d)
		}
		p, q = q, p
	}
	return best
}

// between is the distance between two rings that do not cross.
func between(p, q plane.Ring) float64 {
	d := math.Inf(1)
	for _, t := range p {
		d = min(d, distance(q, t))
	}
	for _, t := range q {
		d = min(d, distance(p, t))
	}
	return d
}
