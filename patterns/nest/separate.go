package nest

import "slices"

// separate moves items until none overlaps, by guided local search: pairs that will not part weigh more and more.
// (J. Egeblad, B. K. Nielsen, A. Odgaard, "Fast neighborhood search for two- and three-dimensional
// nesting problems", 2007; S. Umetani and others, "Solving the irregular strip packing problem via guided local
// search for overlap minimization", 2009. Tries all over the room, followed downhill, as J. Gardeyn, G. Vanden Berghe,
// T. Wauters, "An open-source heuristic to reboot 2D nesting research", arXiv:2509.13329, 2025.)
// It gives up after so many idle sweeps in a row, strikes times over, or when the stage ends; then the layout
// is the best it met. It reports whether it succeeded.
func (c *crowd) separate(patience, strikes int) bool {
	best := c.total()
	if best == 0 {
		return true
	}
	saved := slices.Clone(c.items)
	for struck := 0; struck < strikes; struck++ {
		start := best
		for idle := 0; idle < patience && !c.meter.over(); idle++ {
			c.sweep()
			t := c.total()
			if t == 0 {
				return true
			}
			if t < best {
				if t < gain*best {
					idle = 0
				}
				best = t
				copy(saved, c.items)
			}
			c.reload()
		}
		copy(c.items, saved)
		c.measureAll()
		if c.meter.over() {
			return false
		}
		if best < gain*start {
			struck = -1
		}
	}
	return false
}

// gain is the part of an overlap to which it must fall for the search to be getting on.
const gain = 0.98

// sweep offers every item that overlaps a better place, in an order drawn by chance.
func (c *crowd) sweep() {
	c.todo = c.todo[:0]
	for i := range c.moves {
		if c.weighed(i) > 0 {
			c.todo = append(c.todo, i)
		}
	}
	c.rnd.Shuffle(len(c.todo), func(a, b int) { c.todo[a], c.todo[b] = c.todo[b], c.todo[a] })
	for _, i := range c.todo {
		if c.weighed(i) > 0 {
			c.relocate(i)
		}
	}
}
