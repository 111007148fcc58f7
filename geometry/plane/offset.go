package plane

import "math"

// Offset returns the outline at distance d > 0 outside a simple, counter-clockwise ring, as
// a seam allowance lies outside a seam: its sides are parallel to the ring's, drawn out to a
// point at corners that turn by no more than 120°, which lies 2d from them at most, and cut square beyond; where the
// allowances of two sides run into each other in a hollow, only their outside is left.
func (r Ring) Offset(d float64) Ring {
	raw := r.parallels(d)
	for range attempts {
		if out, ok := raw.outside(); ok && out.Area() > r.Area() {
			return out
		}
		// Two sides run through one point or along each other: a hair's breadth to the side they do not.
		d *= 1 + 1e-6
		raw = r.parallels(d)
	}
	return r.Hull().parallels(d)
}

// attempts is how often Offset tries another distance, a thousandth of a per cent in all,
// before it takes the hull's, which never meets itself.
const attempts = 10

// sharpest is the turn of the outline up to which an allowance is drawn out to a point; beyond,
// the point would reach farther than 2d. Workshop habit is to trim such points, no published figure.
const sharpest = 2 * math.Pi / 3

// parallels joins the lines at distance d outside every side. The result meets itself in hollows.
func (r Ring) parallels(d float64) Ring {
	r = r.distinct()
	n := len(r)
	var out Ring
	for i, p := range r {
		u, v := p.Sub(r[(i+n-1)%n]), r[(i+1)%n].Sub(p)
		u, v = u.Mul(1/u.Norm()), v.Mul(1/v.Norm())
		a, b := Point{u.Y, -u.X}.Mul(d), Point{v.Y, -v.X}.Mul(d) // to the right: outside
		switch turn := math.Atan2(u.Cross(v), u.Dot(v)); {
		case turn < 0: // a hollow: both lines end there and cross farther in
			out = append(out, p.Add(a), p.Add(b))
		case turn <= sharpest:
			out = append(out, p.Add(a).Add(u.Mul(d*math.Tan(turn/2))))
		default:
			reach := d * math.Tan(turn/4)
			out = append(out, p.Add(a).Add(u.Mul(reach)), p.Add(b).Sub(v.Mul(reach)))
		}
	}
	return out
}

// distinct leaves out corners that lie on the one before.
func (r Ring) distinct() Ring {
	var out Ring
	for i, p := range r {
		if p != r[(i+len(r)-1)%len(r)] {
			out = append(out, p)
		}
	}
	return out
}

// outside walks round a ring that meets itself, from its leftmost corner, and takes the other
// way at every crossing: what it walks round is the ring's outer edge. It fails where the walk does not end.
func (r Ring) outside() (Ring, bool) {
	r = r.distinct()
	n, start := len(r), 0
	for i, p := range r {
		if p.X < r[start].X || p.X == r[start].X && p.Y < r[start].Y {
			start = i
		}
	}
	out := Ring{r[start]}
	side, from := start, 0.0 // the side walked on, and how far along it
	for range 4 * n {
		if at, other, on, ok := r.crossed(side, from); ok {
			out = append(out, r[side].Lerp(r[(side+1)%n], at))
			side, from = other, on
			continue
		}
		side, from = (side+1)%n, 0
		if side == start {
			out = out.distinct()
			_, meets := out.Crossing()
			return out, !meets
		}
		out = append(out, r[side])
	}
	return nil, false
}

// crossed finds the first side that crosses a side farther along than from, both as
// fractions of the side: at on the side itself, on on the other.
func (r Ring) crossed(side int, from float64) (at float64, other int, on float64, ok bool) {
	n := len(r)
	a, u := r[side], r[(side+1)%n].Sub(r[side])
	at = math.Inf(1)
	for k := range r {
		if d := (k - side + n) % n; d <= 1 || d == n-1 {
			continue
		}
		w, v := r[k].Sub(a), r[(k+1)%n].Sub(r[k])
		den := u.Cross(v)
		if den == 0 {
			continue
		}
		s, t := w.Cross(v)/den, w.Cross(u)/den
		if s > from+1e-9 && s < at && s <= 1 && t >= 0 && t <= 1 {
			at, other, on, ok = s, k, t, true
		}
	}
	return at, other, on, ok
}
