// Package flatten lays a patch of a surface in the plane, as a template to cut, with the
// least greatest strain, and says what strain is left.
//
// What survives: a cone, a cylinder and every other developable patch keep all lengths,
// angles and areas. Where the surface is round or saddled nothing can (Gauss, Disquisitiones
// generales circa superficies curvas, 1827); there the greatest stretch or squeeze is made as
// small as can be, in the sense of Milnor ("A problem in cartography", Amer. Math. Monthly 76,
// 1969), and darts are opened where the curvature is positive. The flat piece never overlaps itself.
//
// It does not choose patches, add allowances, or know cloth: a strain is a change of length, not a force.
package flatten

import (
	"fmt"

	"understructure/geometry/plane"
	"understructure/geometry/space"
)

// DefaultGreatest is the strain allowed before a dart is opened when Options say nothing.
// Common practice, no published source: needle-punched wadding and jersey take up 3 % in the hand.
const DefaultGreatest = 0.03

// Flat is a patch laid in the plane, right side up and not mirrored: what pointed up (z) on
// the surface points up (y) on average, seen from outside, and the lower left corner of its bounds is (0, 0).
type Flat struct {
	Points    []plane.Point // one per vertex of the patch; a vertex on a dart's leg appears twice
	Source    []int         // the patch vertex that each point came from
	Surface   []space.Point // where each point lies on the surface; differs from the patch's own point only beside a dart, whose line is straightened
	Triangles [][3]int      // in the order of the patch, counter-clockwise, indices into Points
	Boundary  []int         // the outline, counter-clockwise, indices into Points
	Darts     []Dart
	Strain    Strain
}

// Strain is how much lengths change from the surface to the flat piece, as fractions of
// the length on the surface. The strain of a triangle is the larger of |σ₁−1| and |σ₂−1|, with σ the
// greatest and least stretch over all directions in it. A sliver (see Lay) counts by its
// longest side alone, and a triangle of under a thousandth of the mean area not at all.
type Strain struct {
	Greatest float64 // over all triangles
	P95      float64 // 95 % of the area is strained no more than this
	Mean     float64 // weighted by area
}

// Options say when to open darts. The zero Options opens none.
type Options struct {
	Greatest float64 // strain above which a dart is opened; 0 means DefaultGreatest
	MaxDarts int     // how many may be opened; 0 means none

	// Rough leaves the strain where the first steps put it instead of making the greatest as small
	// as can be: in a fifth of the time, for comparing one way of dividing a surface with another.
	Rough bool

	// Keep lists runs of vertices along edges of the patch, at least two each and no two
	// sharing an edge, that are to be as long on the flat piece as on the surface: two pieces sewn together
	// along such a run fit exactly. A patch with Keep gets no darts.
	Keep [][]int
}

// Lay lays p in the plane.
//
// Slivers, which clipping leaves along the edge of a patch, stand so far out of the surface's
// tangent plane that their breadth means nothing; they are kept from turning over but are
// not asked to keep their breadth.
//
// Darts are opened one after another, each where it takes most strain away, as long as the strain is greater than
// allowed, the options permit and a dart takes at least a tenth of it away; or where the piece would overlap itself without.
//
// The error says which triangle or vertex is at fault, or where the piece would overlap itself.
func Lay(p Patch, o Options) (Flat, error) {
	if o.Greatest == 0 {
		o.Greatest = DefaultGreatest
	}
	c, err := whole(p)
	if err != nil {
		return Flat{}, err
	}
	for _, run := range o.Keep {
		c.kept = append(c.kept, tie{more: run, by: p.length(run)})
		o.MaxDarts = 0 // a slit would give the vertices of a run other names
	}
	c.rough = o.Rough
	f, x, err := c.lay()
	for len(c.darts) < o.MaxDarts && x != nil && (err != nil || f.Strain.Greatest > o.Greatest) {
		d, ok := c.open(x)
		if !ok {
			break
		}
		g, y, wrong := d.lay()
		if wrong != nil || err == nil && g.Strain.Greatest >= f.Strain.Greatest {
			break
		}
		c, f, x, err = d, g, y, nil
	}
	return f, err
}

// lay spreads the patch with the darts it has, turns it upright, measures it and refuses it if it overlaps itself;
// even then it returns the laid places, nil only if there are none.
func (c cut) lay() (Flat, []plane.Point, error) {
	sh := newSheet(c.patch)
	sh.darts, sh.kept = c.darts, c.kept
	x, err := sh.spread(c.patch, c.rough)
	if err != nil {
		return Flat{}, nil, err
	}
	c.measure(x)
	f := Flat{
		Points: upright(sh, c.patch, x), Source: c.source, Surface: c.patch.Points,
		Triangles: c.patch.Triangles, Boundary: c.rim, Darts: c.darts, Strain: sh.strain(x),
	}
	if err := f.overlap(); err != nil {
		return Flat{}, x, err
	}
	return f, x, nil
}

// overlap reports where the piece lies over itself.
func (f Flat) overlap() error {
	for i, t := range f.Triangles {
		a, b, c := f.Points[t[0]], f.Points[t[1]], f.Points[t[2]]
		if b.Sub(a).Cross(c.Sub(a)) <= 0 {
			s := f.Surface[t[0]]
			return fmt.Errorf("flatten: triangle %d near (%.0f, %.0f, %.0f) would turn over; the patch must be divided there", i, s.X, s.Y, s.Z)
		}
	}
	if q, crossed := f.Outline().Crossing(); crossed {
		s := f.nearest(q)
		return fmt.Errorf("flatten: the flat piece would overlap itself near (%.0f, %.0f, %.0f); the patch must be divided there", s.X, s.Y, s.Z)
	}
	return nil
}

// nearest returns the place on the surface of the outline point nearest to q.
func (f Flat) nearest(q plane.Point) space.Point {
	best := f.Boundary[0]
	for _, i := range f.Boundary {
		if f.Points[i].Dist(q) < f.Points[best].Dist(q) {
			best = i
		}
	}
	return f.Surface[best]
}

// Outline is the cut line, counter-clockwise, dart openings included.
func (f Flat) Outline() plane.Ring {
	r := make(plane.Ring, len(f.Boundary))
	for i, v := range f.Boundary {
		r[i] = f.Points[v]
	}
	return r
}

// Area is the area of the flat piece in square millimetres.
func (f Flat) Area() float64 { return f.Outline().Area() }

// At returns where a point of the surface lies on the flat piece: bary are its barycentric
// coordinates in triangle tri, summing to one.
func (f Flat) At(tri int, bary [3]float64) plane.Point {
	t := f.Triangles[tri]
	return f.Points[t[0]].Mul(bary[0]).Add(f.Points[t[1]].Mul(bary[1])).Add(f.Points[t[2]].Mul(bary[2]))
}
