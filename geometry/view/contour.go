package view

import (
	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/space"
	"understructure/geometry/surface"
)

// AppendContour appends where a skin turns away from the viewer to left and right, which may be nil:
// for every row from the bottom up the farthest such place to the left and to the right, as seen.
// Normals are those of the skin, outward. Where a row turns away nowhere, as the top of a shoulder
// seen from above, its ends are the farthest places that it has.
func (c Camera) AppendContour(left, right []space.Point, skin surface.Surface, normals surface.Shell) (l, r []space.Point) {
	for i := range skin.Z {
		l, r, turns := c.turns(skin, normals, i)
		if !turns {
			l, r = c.ends(skin, i)
		}
		left, right = append(left, l), append(right, r)
	}
	return left, right
}

// turns looks for the places of one row where the skin turns away.
func (c Camera) turns(skin surface.Surface, normals surface.Shell, i int) (left, right space.Point, found bool) {
	before := c.toward.Dot(normals[i][section.Directions-1])
	for j := range section.Directions {
		facing := c.toward.Dot(normals[i][j])
		if facing > 0 != (before > 0) {
			k := (j + section.Directions - 1) % section.Directions
			p := c.See(skin.Point(i, k).Lerp(skin.Point(i, j), before/(before-facing)))
			if !found || p.X < left.X {
				left = p
			}
			if !found || p.X > right.X {
				right = p
			}
			found = true
		}
		before = facing
	}
	return left, right, found
}

// ends are the farthest places of one row.
func (c Camera) ends(skin surface.Surface, i int) (left, right space.Point) {
	left = c.See(skin.Point(i, 0))
	right = left
	for j := range section.Directions {
		p := c.See(skin.Point(i, j))
		if p.X < left.X {
			left = p
		}
		if p.X > right.X {
			right = p
		}
	}
	return left, right
}

// AppendRound appends how a level convex ring, such as a taut tape, is seen: the part before the
// figure and the part behind it, both from left to right, X across and Y up in the picture.
// It appends nothing for fewer than three corners.
func (c Camera) AppendRound(before, behind []plane.Point, tape plane.Ring, height float64) (near, far []plane.Point) {
	n := len(tape)
	if n < 3 {
		return before, behind
	}
	start := 0
	for i := range tape {
		if !c.before(tape, i+n-1) && c.before(tape, i) {
			start = i
		}
	}
	split := 0
	for split < n && c.before(tape, start+split) {
		split++
	}
	for k := 0; k <= split; k++ {
		before = append(before, c.flat(tape[(start+k)%n], height))
	}
	for k := n; k >= split; k-- {
		behind = append(behind, c.flat(tape[(start+k)%n], height))
	}
	return before, behind
}

// before reports whether the side of the ring that begins at a corner lies before the figure.
func (c Camera) before(tape plane.Ring, i int) bool {
	n := len(tape)
	side := tape[(i+1)%n].Sub(tape[i%n])
	return side.Y*c.toward.X-side.X*c.toward.Y > 0
}

// flat is where a place at a height is seen, without how near it is.
func (c Camera) flat(p plane.Point, height float64) plane.Point {
	seen := c.See(space.Point{X: p.X, Y: p.Y, Z: height})
	return plane.Point{X: seen.X, Y: seen.Z}
}
