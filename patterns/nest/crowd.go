package nest

import (
	"math/rand/v2"

	"understructure/geometry/plane"
)

// crowd is a layout that may still have overlaps: where every item lies, how deep each pair overlaps, and
// how much that weighs.
type crowd struct {
	*shapes
	rooms []room
	items []item    // those that move first, then the fixed ones
	moves int       // how many move
	depth []float64 // of every pair of items, as a matrix
	load  []float64 // weight of every pair, at least 1
	near  []near    // scratch of the search
	close []near
	todo  []int
	tried []int
	rnd   *rand.Rand
	meter *meter
}

// item is one copy of a piece where it lies, or something fixed: what an offcut lacks of its box.
type item struct {
	kind, copy int
	pose       int
	room       int
	at         plane.Point // where its origin lies
}

// room is an upright box in which items may lie. The rooms of a crowd lie apart from each other.
type room struct{ lo, hi plane.Point }

// span is the box in which the origin of a pose may lie, and whether there is one.
func (r room) span(p *pose) (lo, hi plane.Point, fits bool) {
	lo, hi = r.lo.Sub(p.lo), r.hi.Sub(p.hi)
	return lo, hi, lo.X <= hi.X && lo.Y <= hi.Y
}

// any is a place in a span drawn by chance.
func (c *crowd) any(lo, hi plane.Point) plane.Point {
	return plane.Point{X: lo.X + (hi.X-lo.X)*c.rnd.Float64(), Y: lo.Y + (hi.Y-lo.Y)*c.rnd.Float64()}
}

// clamp is the nearest place in a span.
func clamp(p, lo, hi plane.Point) plane.Point {
	return plane.Point{X: min(max(p.X, lo.X), hi.X), Y: min(max(p.Y, lo.Y), hi.Y)}
}

// box is the box round an item where it lies.
func (c *crowd) box(it *item) (lo, hi plane.Point) {
	p := &c.poses[it.pose]
	return it.at.Add(p.lo), it.at.Add(p.hi)
}

// pair is how deep two items overlap; the overlap of large pieces counts for more.
func (c *crowd) pair(i, j int) float64 {
	a, b := &c.items[i], &c.items[j]
	if a.room != b.room {
		return 0
	}
	p, q := &c.poses[a.pose], &c.poses[b.pose]
	c.meter.spent++
	v := c.view(a.pose, b.pose)
	return v.depth(b.at.Sub(a.at)) * p.size * q.size
}

// measure looks up anew how deep item i overlaps all others.
func (c *crowd) measure(i int) {
	n := len(c.items)
	for j := range n {
		if j != i {
			d := c.pair(i, j)
			c.depth[i*n+j], c.depth[j*n+i] = d, d
		}
	}
}

// measureAll looks up all overlaps anew. What is fixed does not overlap itself.
func (c *crowd) measureAll() {
	clear(c.depth)
	for i := range c.moves {
		c.measure(i)
	}
}

// total is the sum of all overlaps, unweighted; 0 where there is none at all.
func (c *crowd) total() float64 {
	n, t := len(c.items), 0.0
	for i := range c.moves {
		for _, d := range c.depth[i*n+i : (i+1)*n] {
			t += d
		}
	}
	return t
}

// weighed is the weighted overlap of an item.
func (c *crowd) weighed(i int) float64 {
	n, t := len(c.items), 0.0
	for k := i * n; k < (i+1)*n; k++ {
		if d := c.depth[k]; d > 0 {
			t += d * c.load[k]
		}
	}
	return t
}

// How weights change: that of the deepest overlap grows most, that of the others at least; weights of pairs that lie apart
// fade. Chosen by trial on the instances in testdata/nesting.
const (
	least, most = 1.2, 2.0
	fade        = 0.9
)

// reload raises the weights of the pairs that overlap.
func (c *crowd) reload() {
	deepest := 0.0
	for _, d := range c.depth {
		deepest = max(deepest, d)
	}
	for k, d := range c.depth {
		if d > 0 {
			c.load[k] *= least + (most-least)*d/deepest
		} else if c.load[k] > 1 {
			c.load[k] = max(1, c.load[k]*fade)
		}
	}
}

// unload forgets the weights.
func (c *crowd) unload() {
	for k := range c.load {
		c.load[k] = 1
	}
}
