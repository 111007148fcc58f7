// Package solid makes the mount one closed body, and what holds the skirt another, for those who mill or print them:
// outlines joined from height to height, flat at the bottom and at the top, as STL or OBJ. Neither format has a unit; one in
// the file is one millimetre. As everywhere x runs to the figure's right, y to its front and z up from the floor.
// It does not hollow a body out, it has nothing of the sleeves, and it does not know machines.
package solid

import (
	"fmt"
	"slices"

	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/space"
)

// Body is a closed skin of triangles, counter-clockwise seen from outside. The zero Body is empty.
type Body struct {
	Name      string
	Points    []space.Point
	Triangles [][3]int // indices of points
}

// leastRise is how far two outlines must lie apart, mm: less is not a step that anyone can mill, and its
// triangles would be slivers.
const leastRise = 0.01

// Of joins outlines, from the bottom up, to a body; heights without an outline are left out, and what lies
// above and below them are bodies of their own, in one value. Every outline must be seen whole from the upright axis.
func Of(heights []float64, outlines []plane.Ring) (Body, error) {
	var b Body
	var rows []row
	for i, z := range heights {
		if i >= len(outlines) || len(outlines[i]) == 0 {
			b.add(rows)
			rows = nil
			continue
		}
		r, err := rowOf(z, outlines[i])
		if err != nil {
			return Body{}, err
		}
		if n := len(rows); n == 0 || z-rows[n-1].height >= leastRise {
			rows = append(rows, r)
		}
	}
	b.add(rows)
	return b, nil
}

// row is an outline at its height.
type row struct {
	height  float64
	outline section.Section
}

func rowOf(z float64, outline plane.Ring) (row, error) {
	r := row{height: z}
	if outline.Area() > 0 { // false also where a corner is at no place
		r.outline = section.Of(outline)
	}
	if slices.Min(r.outline[:]) <= 0 {
		return row{}, fmt.Errorf("solid: the outline %.1f mm above the floor does not go round the mount's axis", z)
	}
	return r, nil
}

// around is how many points a row has.
const around = section.Directions

// add closes a stack of rows and adds it to the body. One row alone is no body.
func (b *Body) add(rows []row) {
	if len(rows) < 2 {
		return
	}
	first := len(b.Points)
	for _, r := range rows {
		for _, p := range r.outline.Ring() {
			b.Points = append(b.Points, space.Point{X: p.X, Y: p.Y, Z: r.height})
		}
	}
	bottom := len(b.Points)
	top := bottom + 1
	b.Points = append(b.Points, space.Point{Z: rows[0].height}, space.Point{Z: rows[len(rows)-1].height})
	last := first + (len(rows)-1)*around
	for j := range around {
		k := (j + 1) % around
		b.triangle(bottom, first+k, first+j)
		for low := first; low < last; low += around {
			up := low + around
			b.triangle(low+j, low+k, up+k)
			b.triangle(low+j, up+k, up+j)
		}
		b.triangle(top, last+j, last+k)
	}
}

func (b *Body) triangle(p, q, r int) { b.Triangles = append(b.Triangles, [3]int{p, q, r}) }
