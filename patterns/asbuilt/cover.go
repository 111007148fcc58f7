package asbuilt

import (
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/space"
	"understructure/patterns/piece"
)

// FeatherHalf is half the width over which a feathered edge is thinned, mm: the sheet ends this
// far outside the line that is cut and has its whole thickness as far inside, as the instructions say.
const FeatherHalf = 10.0

// cover lays the sheets of one layer over the skin.
func (g *grid) cover(sheets []piece.Piece) {
	thickness := sheets[0].Thickness
	middle := g.lifted(thickness / 2)
	inside := make([][columns]bool, len(g.points))
	far := make([][columns]float64, len(g.points)) // from the nearest feathered edge
	for i := range far {
		for j := range far[i] {
			far[i][j] = FeatherHalf
		}
	}
	for _, s := range sheets {
		if len(s.Position) != len(s.Outline) {
			continue // Check objects to it
		}
		at := middle.place(s.Position)
		fill(at, inside)
		for _, e := range feathered(s) {
			middle.near(s.Position[e[0]], s.Position[e[1]], at[e[0]], at[e[1]], far)
		}
	}
	g.raise(func(i, j int) float64 {
		share := 0.5 - far[i][j]/(2*FeatherHalf)
		if inside[i][j] {
			share = 1 - share
		}
		return thickness * share
	})
}

// lifted is the skin moved out by a thickness.
func (g *grid) lifted(by float64) *grid {
	out := &grid{points: append([][columns]space.Point{}, g.points...), normals: g.normals}
	out.raise(func(int, int) float64 { return by })
	return out
}

// place finds where points lie on the grid: X in columns, Y in rows. Neighbours are never more
// than half way round apart, so that a piece may pass the first column.
func (g *grid) place(points []space.Point) plane.Ring {
	out := make(plane.Ring, len(points))
	for k, p := range points {
		out[k] = g.nearest(p)
		if k > 0 {
			out[k].X = out[k-1].X + math.Remainder(out[k].X-out[k-1].X, columns)
		}
	}
	return out
}

// nearest goes up the column through a point, in its direction from the axis, to where it comes nearest.
func (g *grid) nearest(p space.Point) plane.Point {
	turn := math.Atan2(p.Y, p.X) / step
	best, least := plane.Point{}, math.Inf(1)
	var below space.Point
	var c0 float64
	for i := range g.points {
		c1, here := g.across(i, turn)
		if i > 0 {
			t := along(p, below, here)
			if d := p.Dist(below.Lerp(here, t)); d < least {
				best, least = plane.Point{X: c0 + t*(c1-c0), Y: float64(i-1) + t}, d
			}
		}
		below, c0 = here, c1
	}
	return best
}

// across is the column, and the point, of a row in a direction from the axis.
func (g *grid) across(i int, turn float64) (column float64, p space.Point) {
	angle := func(j int) float64 {
		q := g.points[i][(j%columns+columns)%columns]
		return turn + math.Remainder(math.Atan2(q.Y, q.X)/step-turn, columns)
	}
	j := int(math.Floor(turn))
	for range columns {
		lo, hi := angle(j), angle(j+1)
		switch {
		case lo > turn:
			j--
		case hi < turn:
			j++
		default:
			t := 0.0
			if hi > lo {
				t = (turn - lo) / (hi - lo)
			}
			k := (j%columns + columns) % columns
			return float64(j) + t, g.points[i][k].Lerp(g.points[i][(k+1)%columns], t)
		}
	}
	k := (j%columns + columns) % columns
	return float64(j), g.points[i][k]
}

// along is the fraction of the way from a to b at which a straight line is nearest to p.
func along(p, a, b space.Point) float64 {
	d := b.Sub(a)
	if d.Dot(d) == 0 {
		return 0
	}
	return min(max(p.Sub(a).Dot(d)/d.Dot(d), 0), 1)
}

// fill marks the points of the grid that lie inside an outline on it, row by row.
func fill(r plane.Ring, inside [][columns]bool) {
	for i := range inside {
		y := float64(i)
		flips := map[int]int{}
		lo, hi := math.MaxInt, math.MinInt
		for k, a := range r {
			b := r[(k+1)%len(r)]
			b.X = a.X + math.Remainder(b.X-a.X, columns)
			if (a.Y <= y) == (b.Y <= y) {
				continue
			}
			j := int(math.Ceil(a.X + (y-a.Y)/(b.Y-a.Y)*(b.X-a.X)))
			flips[j]++
			lo, hi = min(lo, j), max(hi, j)
		}
		in := 0
		for j := lo; j < hi; j++ {
			if in += flips[j]; in%2 == 1 {
				inside[i][(j%columns+columns)%columns] = true
			}
		}
	}
}

// feathered lists the edges of the outline that are to be thinned, by the numbers of their ends.
func feathered(p piece.Piece) [][2]int {
	number := map[plane.Point]int{}
	for k, c := range p.Outline {
		number[c] = k
	}
	var out [][2]int
	for _, m := range p.Marks {
		if m.Kind != piece.Feather {
			continue
		}
		for k := 1; k < len(m.Points); k++ {
			a, ok := number[m.Points[k-1]]
			b, also := number[m.Points[k]]
			if ok && also {
				out = append(out, [2]int{a, b})
			}
		}
	}
	return out
}

// near shortens the distances from a feathered edge, between two places on the grid, of the points about it.
func (g *grid) near(a, b space.Point, from, to plane.Point, far [][columns]float64) {
	to.X = from.X + math.Remainder(to.X-from.X, columns)
	for i := range far {
		if y := float64(i); y < min(from.Y, to.Y)-1 && g.below(i, a, b) || y > max(from.Y, to.Y)+1 && g.above(i, a, b) {
			continue
		}
		for j := int(min(from.X, to.X)) - reach; j <= int(max(from.X, to.X))+reach; j++ {
			k := (j%columns + columns) % columns
			p := g.points[i][k]
			far[i][k] = min(far[i][k], p.Dist(a.Lerp(b, along(p, a, b))))
		}
	}
}

// reach is how many columns beside an edge can lie within a feather's half: on a neck 40 mm
// from the axis two columns are 1.4 mm apart.
const reach = 8

// below and above report whether a whole row lies farther than a feather's half under or over an edge.
func (g *grid) below(i int, a, b space.Point) bool { return g.points[i][0].Z < min(a.Z, b.Z)-reachOver }
func (g *grid) above(i int, a, b space.Point) bool { return g.points[i][0].Z > max(a.Z, b.Z)+reachOver }

// reachOver allows for a row that was moved up or down by the sheets below, mm.
const reachOver = 60.0
