package fitting

import (
	"math"
	"slices"

	"understructure/geometry/plane"
	"understructure/geometry/space"
	"understructure/patterns/piece"
)

// rigid is a turn and a move, which change no length.
type rigid struct {
	cos, sin float64
	move     plane.Point
}

// still leaves everything where it is.
var still = rigid{cos: 1}

func (t rigid) turned(p plane.Point) plane.Point {
	return plane.Point{X: t.cos*p.X - t.sin*p.Y, Y: t.sin*p.X + t.cos*p.Y}
}

func (t rigid) of(p plane.Point) plane.Point { return t.turned(p).Add(t.move) }

// rounds is how often an outline is laid anew on its nearest points; pieces of one zone settle in
// less. near is the distance, mm, beyond which a point soon counts for nothing, for there the piece is cut otherwise.
const rounds, near = 15, 1.0

// settled is a motion that changes nothing any more, mm: a fiftieth of what counts.
const settled = same / 50

// register lays piece a on piece b so that as much as possible of its edge falls on that of b. Slices
// have their place on the pole and are not moved.
func register(a, b piece.Piece) rigid {
	if isSlice(a) || slices.Equal(a.Outline, b.Outline) {
		return still
	}
	best, least := still, math.Inf(1)
	for _, from := range starts(a, b) {
		t := from
		for range rounds {
			before := t
			if t = settle(t, a.Outline, b.Outline); t.move.Dist(before.move)+math.Abs(t.sin-before.sin) < settled {
				break
			}
		}
		if off := amiss(t, a.Outline, b.Outline); off < least {
			best, least = t, off
		}
	}
	return best
}

// starts are moves to begin with: by where the pieces lie on the mount if that is known, else edge on edge.
func starts(a, b piece.Piece) []rigid {
	if known(a) && known(b) {
		return []rigid{{cos: 1, move: byPosition(a, b)}}
	}
	var out []rigid
	alo, ahi := a.Outline.Bounds()
	blo, bhi := b.Outline.Bounds()
	for _, x := range []float64{blo.X - alo.X, bhi.X - ahi.X, (blo.X + bhi.X - alo.X - ahi.X) / 2} {
		for _, y := range []float64{blo.Y - alo.Y, bhi.Y - ahi.Y, (blo.Y + bhi.Y - alo.Y - ahi.Y) / 2} {
			out = append(out, rigid{cos: 1, move: plane.Point{X: x, Y: y}})
		}
	}
	return out
}

// known reports whether it is known where a piece lies on the mount.
func known(p piece.Piece) bool { return len(p.Position) > 0 && len(p.Position) == len(p.Outline) }

// byPosition is the usual move from a corner of a to the corner of b that lies nearest on the mount.
func byPosition(a, b piece.Piece) plane.Point {
	var xs, ys []float64
	for i, p := range a.Position {
		near := 0
		for j, q := range b.Position {
			if p.Dist(q) < p.Dist(b.Position[near]) {
				near = j
			}
		}
		d := b.Outline[near].Sub(a.Outline[i])
		xs, ys = append(xs, d.X), append(ys, d.Y)
	}
	return plane.Point{X: median(xs), Y: median(ys)}
}

func median(xs []float64) float64 {
	slices.Sort(xs)
	return (xs[(len(xs)-1)/2] + xs[len(xs)/2]) / 2
}

// settle moves a so that its corners come nearest to the edge of b, across that edge; the nearest corners
// count most (least squares, linear in a small turn about the middle, weighted anew each time as S. Geman
// and D. E. McClure proposed, 1987).
func settle(t rigid, a, b plane.Ring) rigid {
	middle := t.of(a.Centroid())
	var rows [3]space.Point // normal equations in the turn and the two parts of the move
	var right space.Point
	for _, p := range a {
		at := t.of(p)
		q, n, d := nearest(at, b)
		u := 1 / (1 + d*d/(near*near))
		k := space.Point{X: at.Sub(middle).Cross(n), Y: n.X, Z: n.Y}
		w := k.Mul(u * u)
		right = right.Add(w.Mul(q.Sub(at).Dot(n)))
		rows[0], rows[1], rows[2] = rows[0].Add(w.Mul(k.X)), rows[1].Add(w.Mul(k.Y)), rows[2].Add(w.Mul(k.Z))
	}
	rows[0].X, rows[1].Y, rows[2].Z = rows[0].X+stiff, rows[1].Y+stiff, rows[2].Z+stiff
	det := rows[0].Dot(rows[1].Cross(rows[2]))
	sin, cos := math.Sincos(right.Dot(rows[1].Cross(rows[2])) / det)
	move := plane.Point{X: right.Dot(rows[2].Cross(rows[0])) / det, Y: right.Dot(rows[0].Cross(rows[1])) / det}
	turn := rigid{cos: cos, sin: sin}
	return rigid{
		cos: cos*t.cos - sin*t.sin, sin: sin*t.cos + cos*t.sin,
		move: turn.turned(t.move.Sub(middle)).Add(middle).Add(move),
	}
}

// stiff keeps what has no edge to hold it, such as a round piece that may turn, from moving at all.
const stiff = 1e-6

// amiss is how far a lies from the edge of b; a corner far off counts for one. It is what settle makes least.
func amiss(t rigid, a, b plane.Ring) float64 {
	sum := 0.0
	for _, p := range a {
		_, _, d := nearest(t.of(p), b)
		sum += d * d / (d*d + near*near)
	}
	return sum
}

// nearest is the point of an outline nearest to p, the unit normal of the edge there, and how far that is.
func nearest(p plane.Point, r plane.Ring) (at, normal plane.Point, far float64) {
	far = math.Inf(1)
	on := 0
	for i, a := range r {
		q := plane.Nearest(p, a, r[(i+1)%len(r)])
		if d := p.Dist(q); d < far {
			at, on, far = q, i, d
		}
	}
	return at, outward(r[on], r[(on+1)%len(r)]), far
}

// outward is the unit normal of an edge that runs counter-clockwise; none of an edge without length.
func outward(a, b plane.Point) plane.Point {
	d := b.Sub(a)
	if d.Norm() == 0 {
		return plane.Point{}
	}
	return plane.Point{X: d.Y, Y: -d.X}.Mul(1 / d.Norm())
}
