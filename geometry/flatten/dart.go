package flatten

import (
	"cmp"
	"math"
	"slices"

	"understructure/geometry/plane"
	"understructure/geometry/space"
)

// trial is the number of vertices with which the places for a dart are compared; feet is how many places along the
// outline are tried for each apex, and gain the share of the strain that a dart must take away.
const (
	trial = 200
	feet  = 12
	gain  = 0.1
)

// Dart is a cut from the outline inward whose two legs are sewn or butted together. Both are the same
// line on the surface.
type Dart struct {
	Left, Right []int   // the legs from the outline to just before the apex, indices into Points; Left lies to the left looking from the outline to the apex
	Apex        int     // where the legs meet, index into Points
	Length      float64 // of a leg on the flat piece: the mean of both, in millimetres
	Mismatch    float64 // by how much the legs differ in length, as a fraction of Length
}

// open cuts the dart that takes most strain out of the patch laid at x, and reports whether one does.
func (c cut) open(x []plane.Point) (cut, bool) {
	sh := newSheet(c.patch)
	sh.darts = c.darts
	th := thinned(sh, x, trial)
	few, stay := sh.coarse(th, x)
	tr := trialOf(few, stay, x)
	rim := rimOf(c.patch.Triangles, len(x))
	for _, p := range tr.ranked(c, x, stay) {
		if way, ok := path(c.patch.Triangles, x, rim, stay[p.foot], stay[p.apex]); ok {
			d := c
			d.patch.Points = slices.Clone(c.patch.Points)
			d.straighten(slices.Clone(x), way)
			return d.slit(way)
		}
	}
	return c, false
}

// place is where a dart may be cut, and the greatest strain that it leaves.
type place struct {
	foot, apex int
	strain     float64
}

// ranked returns the places for a dart that take enough strain away, best first.
func (tr trials) ranked(c cut, x []plane.Point, stay []int) []place {
	var list []place
	enough := (1 - gain) * tr.strain(tr.tris, tr.x)
	for _, apex := range tr.peaks(c.patch, x) {
		for _, foot := range tr.feet(c, stay) {
			if g := tr.try(foot, apex); g < enough {
				list = append(list, place{foot, apex, g})
			}
		}
	}
	slices.SortStableFunc(list, func(a, b place) int { return cmp.Compare(a.strain, b.strain) })
	return list
}

// rimOf marks the vertices on the boundary.
func rimOf(tris [][3]int, n int) []bool {
	rim := make([]bool, n)
	for _, e := range (Patch{Triangles: tris}).rim() {
		rim[e[0]] = true
	}
	return rim
}

// trials is a coarse sheet in which darts are tried.
type trials struct {
	sheet
	tris [][3]int
	x    []plane.Point
	rim  []bool
}

func trialOf(few sheet, stay []int, x []plane.Point) trials {
	tr := trials{sheet: few}
	for i := range few.elements {
		tr.tris = append(tr.tris, few.elements[i].v)
	}
	for _, v := range stay {
		tr.x = append(tr.x, x[v])
	}
	tr.rim = rimOf(tr.tris, len(tr.x))
	return tr
}

// peaks returns at most two inner vertices where the curvature, summed under a bell a quarter as
// wide as the patch, is positive and greatest. They lie apart from each other and from the darts there
// are, so that no narrow bridge is left between two points.
func (tr trials) peaks(p Patch, x []plane.Point) []int {
	k := p.curvature()
	r := math.Sqrt(p.Area()) / 4
	sum := make([]float64, len(tr.x))
	for i, q := range tr.x {
		for v := range x {
			if d := q.Dist(x[v]) / r; k[v] != 0 && d < 4 {
				sum[i] += k[v] * math.Exp(-d*d/2)
			}
		}
	}
	var found []int
	clear := func(q plane.Point) bool {
		return !slices.ContainsFunc(found, func(f int) bool { return tr.x[f].Dist(q) < 2*r }) &&
			!slices.ContainsFunc(tr.darts, func(d Dart) bool { return tr.x[d.Apex].Dist(q) < r/2 })
	}
	for range 2 {
		best := -1
		for i, q := range tr.x {
			if !tr.rim[i] && clear(q) && sum[i] > 0 && (best < 0 || sum[i] > sum[best]) {
				best = i
			}
		}
		if best >= 0 {
			found = append(found, best)
		}
	}
	return found
}

// feet returns places spread along the outline, none of them on a dart.
func (tr trials) feet(c cut, stay []int) []int {
	loop, err := Patch{Points: make([]space.Point, len(tr.x)), Triangles: tr.tris}.Boundary()
	if err != nil {
		return nil
	}
	var free []int
	for _, v := range loop {
		taken := slices.ContainsFunc(c.darts, func(d Dart) bool {
			return d.Apex == stay[v] || slices.Contains(d.Left, stay[v]) || slices.Contains(d.Right, stay[v])
		})
		if !taken {
			free = append(free, v)
		}
	}
	var some []int
	length := 0.0
	for i, v := range free {
		if length*feet >= tr.length(free)*float64(len(some)) {
			some = append(some, v)
		}
		length += tr.x[v].Dist(tr.x[free[(i+1)%len(free)]])
	}
	return some
}

// length is the length of a closed line through vertices.
func (tr trials) length(loop []int) float64 {
	r := make(plane.Ring, len(loop))
	for i, v := range loop {
		r[i] = tr.x[v]
	}
	return r.Perimeter()
}

// try returns the greatest strain left by a dart, infinite when it cannot be cut or the legs would cross.
func (tr trials) try(foot, apex int) float64 {
	way, ok := path(tr.tris, tr.x, tr.rim, foot, apex)
	if !ok {
		return math.Inf(1)
	}
	x := slices.Clone(tr.x)
	for _, v := range way[:len(way)-1] {
		x = append(x, tr.x[v])
	}
	return tr.strain(slit(tr.tris, len(tr.x), way), x, newDart(way, len(tr.x)))
}

// strain lays the coarse sheet with its vertices renamed and perhaps one more dart, and returns the greatest strain.
func (tr trials) strain(tris [][3]int, x []plane.Point, more ...Dart) float64 {
	sh := sheet{points: len(x), elements: slices.Clone(tr.elements), area: tr.area, darts: append(slices.Clone(tr.darts), more...)}
	at := make([]space.Point, len(x))
	for i, q := range x {
		at[i] = space.Point{X: q.X, Y: q.Y}
	}
	for i := range sh.elements {
		sh.elements[i].v = tris[i]
	}
	s := newSolver(sh, at)
	x = slices.Clone(sh.descend(s, supple{}, x, 2))
	sh.join(s, x)
	for _, k := range []float64{4, 10} {
		limit := sh.greatest(x)
		x = sh.descend(s, stiff{k / limit, limit}, x, 2)
	}
	f := Flat{Points: x, Triangles: tris, Surface: at}
	var err error
	if f.Boundary, err = (Patch{Points: at, Triangles: tris}).Boundary(); err != nil || f.overlap() != nil {
		return math.Inf(1)
	}
	return sh.greatest(x)
}
