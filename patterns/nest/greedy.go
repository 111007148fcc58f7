package nest

import (
	"cmp"
	"math"
	"slices"

	"understructure/geometry/plane"
)

// lay gives an item a place in room r without overlap, as far to the left as it gets, if there is one. Items in other
// rooms do not stand in its way. The bottom-left rule of B. S. Baker, E. G. Coffman, R. L. Rivest, "Orthogonal
// packings in two dimensions", 1980, with outlines in place of boxes.
func (j *job) lay(it *item, r int) bool {
	best, found := math.Inf(1), false
	for _, o := range j.of[it.kind] {
		p := &j.poses[o]
		lo, hi, fits := j.rooms[r].span(p)
		if !fits {
			continue
		}
		j.stand(o, r)
		for _, y := range j.heights(lo, hi) {
			x, ok := j.leftmost(y, lo.X, hi.X)
			if ok && x+p.hi.X < best-hair {
				best, found = x+p.hi.X, true
				it.pose, it.room, it.at = o, r, plane.Point{X: x, Y: y}
			}
		}
	}
	return found
}

// stand lists what stands in the way of pose o in room r.
func (j *job) stand(o, r int) {
	j.near = j.near[:0]
	for _, items := range [][]item{j.laid, j.fixed} {
		for k := range items {
			if items[k].room == r {
				j.obstruct(o, &items[k], 0)
			}
		}
	}
}

// heights lists the heights worth a try: both edges, where a neighbour's no-fit polygon begins and ends, and some between.
func (c *crowd) heights(lo, hi plane.Point) []float64 {
	const between = 12
	ys := []float64{lo.Y, hi.Y}
	for k := range c.near {
		ys = append(ys, c.near[k].lo.Y, c.near[k].hi.Y)
	}
	for k := 1; k < between; k++ {
		ys = append(ys, lo.Y+(hi.Y-lo.Y)*float64(k)/between)
	}
	slices.Sort(ys)
	ys = slices.Compact(ys)
	return slices.DeleteFunc(ys, func(y float64) bool { return y < lo.Y || y > hi.Y })
}

// leftmost is the least x from lo to hi that no obstacle forbids at height y.
func (c *crowd) leftmost(y, lo, hi float64) (float64, bool) {
	type stretch struct{ from, to float64 }
	var barred []stretch
	for k := range c.near {
		q := &c.near[k]
		if y <= q.lo.Y || y >= q.hi.Y {
			continue
		}
		for _, p := range q.view.nofit.parts {
			if from, to := q.view.chord(p.sides, y-q.at.Y); from < to {
				barred = append(barred, stretch{from + q.at.X, to + q.at.X})
			}
		}
	}
	slices.SortFunc(barred, func(a, b stretch) int { return cmp.Compare(a.from, b.from) })
	x := lo
	for _, b := range barred {
		if b.from > x+hair/10 {
			break
		}
		x = max(x, b.to)
	}
	return x, x <= hi
}

// chord is the stretch of a level line that lies in a part; from > to where it misses it.
func (v *view) chord(part []side, y float64) (from, to float64) {
	from, to = math.Inf(-1), math.Inf(1)
	for _, s := range part {
		a, b := s.x*v.back.xx+s.y*v.back.yx, s.x*v.back.xy+s.y*v.back.yy // the normal as seen here
		room := s.c - b*y
		switch {
		case math.Abs(a) < 1e-12:
			if room <= 0 {
				return 1, 0
			}
		case a > 0:
			to = min(to, room/a)
		default:
			from = max(from, room/a)
		}
	}
	return from, to
}
