package nest

import (
	"math"
	"slices"

	"understructure/geometry/plane"
)

// simplified is a ring round r, counter-clockwise, with fewer corners: nowhere inside r and nowhere
// farther than slack outside it. Hollow corners are left out, and two neighbouring others drawn
// out to the point where their sides meet.
func simplified(r plane.Ring, slack float64) plane.Ring {
	out := slices.Clone(r)
	for _, part := range []float64{0.25, 0.5, 1} { // what costs least first
		for changed := true; changed && len(out) > 3; {
			changed = false
			for i := 0; i < len(out) && len(out) > 3; i++ {
				if next, ok := without(out, i, r, part*slack); ok {
					out, changed = next, true
				}
			}
		}
	}
	if _, meets := out.Crossing(); meets || slack == 0 {
		return r
	}
	return out
}

// without tries to save a corner at i.
func without(out plane.Ring, i int, r plane.Ring, slack float64) (plane.Ring, bool) {
	n := len(out)
	a, b, c, d := out[(i+n-1)%n], out[i], out[(i+1)%n], out[(i+2)%n]
	u, v, w := b.Sub(a), c.Sub(b), d.Sub(c)
	if u.Cross(v) <= 0 { // hollow: the side from a to c passes outside it
		for t := 0.125; t < 1; t += 0.125 {
			if distance(r, a.Lerp(c, t)) > slack {
				return nil, false
			}
		}
		return slices.Delete(slices.Clone(out), i, i+1), true
	}
	if v.Cross(w) <= 0 || u.Cross(w) <= 0 {
		return nil, false
	}
	x := b.Add(u.Mul(v.Cross(w) / u.Cross(w)))
	if distance(r, x) > slack {
		return nil, false
	}
	next := slices.Clone(out)
	next[i] = x
	return slices.Delete(next, (i+1)%n, (i+1)%n+1), true
}

// far is the distance of p from the segment ab.
func far(p, a, b plane.Point) float64 { return p.Dist(plane.Nearest(p, a, b)) }

// distance is the distance of p from a ring.
func distance(r plane.Ring, p plane.Point) float64 {
	d := math.Inf(1)
	for i, a := range r {
		d = math.Min(d, far(p, a, r[(i+1)%len(r)]))
	}
	return d
}

// clean turns a ring counter-clockwise and leaves out corners that lie on the one before.
func clean(r plane.Ring) plane.Ring {
	var out plane.Ring
	for i, p := range r {
		if p != r[(i+len(r)-1)%len(r)] {
			out = append(out, p)
		}
	}
	if out.Area() < 0 {
		return out.Reverse()
	}
	return out
}
