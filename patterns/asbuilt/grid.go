package asbuilt

import (
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/space"
)

// columns is how many places round the axis are looked at: every two degrees.
const columns = 180

// grid is the skin of a mount in the making: rows bottom to top, columns round the axis. A point
// moves out along its normal as sheets are laid over it.
type grid struct {
	points  [][columns]space.Point
	normals [][columns]space.Point
}

// newGrid looks at the outlines from their axis; nil where fewer than two can be.
func newGrid(b Bare) *grid {
	g := &grid{}
	for i, r := range b.Outlines {
		if len(r) < 3 {
			continue
		}
		g.points = append(g.points, row(spokes(r), b.Heights[i]))
	}
	if len(g.points) < 2 {
		return nil
	}
	g.normals = normals(g.points)
	return g
}

// spokes is the distance of an outline from the axis in every direction, the farthest where it
// is met more than once.
func spokes(r plane.Ring) (out [columns]float64) {
	for k, a := range r {
		b := r[(k+1)%len(r)]
		from := math.Atan2(a.Y, a.X) / step
		sweep := math.Remainder(math.Atan2(b.Y, b.X)-math.Atan2(a.Y, a.X), 2*math.Pi) / step
		lo, hi := min(from, from+sweep), max(from, from+sweep)
		for j := int(math.Ceil(lo - 1e-9)); float64(j) <= hi+1e-9; j++ {
			u := direction(j)
			if across := u.Cross(b.Sub(a)); across != 0 {
				c := (j%columns + columns) % columns
				out[c] = max(out[c], a.Cross(b.Sub(a))/across)
			}
		}
	}
	return out
}

// step is the angle between two columns.
const step = 2 * math.Pi / columns

func direction(j int) plane.Point {
	s, c := math.Sincos(float64(j) * step)
	return plane.Point{X: c, Y: s}
}

func row(radii [columns]float64, z float64) (out [columns]space.Point) {
	for j, r := range radii {
		d := direction(j).Mul(r)
		out[j] = space.Point{X: d.X, Y: d.Y, Z: z}
	}
	return out
}

// normals point out of the skin: across from the neighbours round it to those above and below.
func normals(points [][columns]space.Point) [][columns]space.Point {
	out := make([][columns]space.Point, len(points))
	for i := range points {
		below, above := points[max(i-1, 0)], points[min(i+1, len(points)-1)]
		for j := range columns {
			round := points[i][(j+1)%columns].Sub(points[i][(j+columns-1)%columns])
			out[i][j] = round.Cross(above[j].Sub(below[j])).Unit()
		}
	}
	return out
}

// smoothNormals takes the normals of the skin that a stepped stack stands for: in every column
// the line that best fits the points within one thickness above and below.
func (g *grid) smoothNormals(thickness float64) {
	for i := range g.points {
		for j := range columns {
			up := g.lean(i, j, thickness)
			round := g.points[i][(j+1)%columns].Sub(g.points[i][(j+columns-1)%columns])
			g.normals[i][j] = round.Cross(up).Unit()
		}
	}
}

// lean is the direction of the best line, by least squares, through the points of a column near one of them.
func (g *grid) lean(i, j int, near float64) space.Point {
	var n, sz, szz float64
	var sp, spz space.Point
	for k := range g.points {
		p := g.points[k][j]
		z := p.Z - g.points[i][j].Z
		if math.Abs(z) <= near {
			n, sz, szz = n+1, sz+z, szz+z*z
			sp, spz = sp.Add(p), spz.Add(p.Mul(z))
		}
	}
	return spz.Mul(n).Sub(sp.Mul(sz)).Mul(1 / max(n*szz-sz*sz, 1e-9))
}

// wrap lays a cover of even thickness over everything.
func (g *grid) wrap(thickness float64) { g.raise(func(int, int) float64 { return thickness }) }

// raise moves every point out along its normal.
func (g *grid) raise(by func(i, j int) float64) {
	for i := range g.points {
		for j := range columns {
			g.points[i][j] = g.points[i][j].Add(g.normals[i][j].Mul(by(i, j)))
		}
	}
}
