package draft

import (
	"understructure/geometry/flatten"
	"understructure/geometry/padding"
	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/patterns/piece"
)

// marks draws everything a maker needs on a piece of wadding: level lines, balance lines,
// the edges to feather, darts, and which way is up.
func marks(f flatten.Flat, p padding.Patch, lines []Line) []piece.Mark {
	var out []piece.Mark
	for _, l := range lines {
		for _, path := range levelPaths(f, l.Height) {
			out = append(out, piece.Mark{Kind: piece.LevelLine, Label: l.Name, Points: path})
		}
	}
	for _, d := range f.Darts {
		out = append(out, piece.Mark{Kind: piece.Dart, Points: []plane.Point{f.Points[d.Left[0]], f.Points[d.Apex], f.Points[d.Right[0]]}})
	}
	out = append(out, borders(f, p)...)
	return append(out, up(f))
}

// up is an arrow in the middle of the piece, a fifth of its height.
func up(f flatten.Flat) piece.Mark {
	ring := f.Outline()
	lo, hi := ring.Bounds()
	c := middle(ring)
	h := (hi.Y - lo.Y) / 10
	return piece.Mark{Kind: piece.Up, Points: []plane.Point{{X: c.X, Y: c.Y - h}, {X: c.X, Y: c.Y + h}}}
}

// middle is the centroid where that lies on the piece, and the nearest scanned place that does elsewhere.
func middle(ring plane.Ring) plane.Point {
	c := ring.Centroid()
	if ring.Contains(c) {
		return c
	}
	best, far := ring[0], -1.0
	lo, hi := ring.Bounds()
	for a := 1; a < 24; a++ {
		for b := 1; b < 24; b++ {
			q := plane.Point{X: lo.X + (hi.X-lo.X)*float64(a)/24, Y: lo.Y + (hi.Y-lo.Y)*float64(b)/24}
			if !ring.Contains(q) {
				continue
			}
			if d := clear(ring, q); d > far {
				best, far = q, d
			}
		}
	}
	return best
}

// clear is the distance from q to the nearest corner of the ring.
func clear(ring plane.Ring, q plane.Point) float64 {
	d := ring[0].Dist(q)
	for _, p := range ring {
		d = min(d, p.Dist(q))
	}
	return d
}

// run is a stretch of the outline of one kind.
type run struct {
	border padding.Border
	points []plane.Point
}

// borders marks the balance lines and the feathered edges along the outline.
func borders(f flatten.Flat, p padding.Patch) []piece.Mark {
	var out []piece.Mark
	for _, r := range runs(f, p) {
		kind, ok := kindOf(r.border, p.Zone)
		if ok && len(r.points) > 1 {
			out = append(out, piece.Mark{Kind: kind, Points: r.points})
		}
	}
	return out
}

// kindOf says what a border of a zone is called.
func kindOf(b padding.Border, z padding.Zone) (piece.Kind, bool) {
	column := -1
	switch b {
	case padding.Step:
		return piece.Step, true
	case padding.Edge:
		return piece.Feather, true
	case padding.First:
		column = z.From
	case padding.Last:
		column = z.To
	}
	switch column {
	case section.Front:
		return piece.CentreFront, true
	case section.Back:
		return piece.CentreBack, true
	case section.Right, section.Left, section.Directions:
		return piece.Side, true
	}
	return "", false
}

// runs divides the outline, dart legs left out, into stretches that lie on one border.
func runs(f flatten.Flat, p padding.Patch) []run {
	leg := map[int]bool{}
	for _, d := range f.Darts {
		leg[d.Apex] = true
		for _, v := range append(append([]int{}, d.Left...), d.Right...) {
			leg[v] = true
		}
	}
	n := len(f.Boundary)
	of := func(i int) padding.Border {
		a, b := f.Boundary[i%n], f.Boundary[(i+1)%n]
		if leg[a] && leg[b] {
			return 0
		}
		return main(p.Borders[f.Source[a]] & p.Borders[f.Source[b]])
	}
	start := 0
	for i := range n { // begin where a stretch begins
		if of(i) != of(i+n-1) {
			start = i
			break
		}
	}
	var out []run
	for k := range n {
		i := start + k
		b := of(i)
		from, to := f.Points[f.Boundary[i%n]], f.Points[f.Boundary[(i+1)%n]]
		if last := len(out) - 1; last >= 0 && out[last].border == b {
			out[last].points = append(out[last].points, to)
			continue
		}
		out = append(out, run{b, []plane.Point{from, to}})
	}
	return out
}

// main picks one border where an edge lies on several: a zone's own before the sheet's end.
func main(b padding.Border) padding.Border {
	for _, one := range []padding.Border{padding.First, padding.Last, padding.Bottom, padding.Top, padding.Step, padding.Edge} {
		if b&one != 0 {
			return one
		}
	}
	return 0
}

// levelPaths returns where the plane at a height crosses the patch, on the flat piece.
func levelPaths(f flatten.Flat, z float64) [][]plane.Point {
	type link struct{ a, b [2]int }
	at := map[[2]int]plane.Point{}
	next := map[[2]int][][2]int{}
	var order [][2]int
	for _, t := range f.Triangles {
		var cut [][2]int
		for k, v := range t {
			w := t[(k+1)%3]
			zv, zw := f.Surface[v].Z, f.Surface[w].Z
			if (zv < z) == (zw < z) {
				continue
			}
			e := [2]int{min(v, w), max(v, w)}
			if _, ok := at[e]; !ok {
				at[e] = f.Points[v].Lerp(f.Points[w], (z-zv)/(zw-zv))
				order = append(order, e)
			}
			cut = append(cut, e)
		}
		if len(cut) == 2 {
			l := link{cut[0], cut[1]}
			next[l.a] = append(next[l.a], l.b)
			next[l.b] = append(next[l.b], l.a)
		}
	}
	return chains(order, next, at)
}

// chains joins crossings into paths, each from one end to the other.
func chains(order [][2]int, next map[[2]int][][2]int, at map[[2]int]plane.Point) [][]plane.Point {
	seen := map[[2]int]bool{}
	var out [][]plane.Point
	for _, e := range order {
		if seen[e] || len(next[e]) != 1 {
			continue
		}
		var path []plane.Point
		for ok := true; ok; {
			seen[e] = true
			path = append(path, at[e])
			ok = false
			for _, n := range next[e] {
				if !seen[n] {
					e, ok = n, true
					break
				}
			}
		}
		out = append(out, path)
	}
	return out
}
