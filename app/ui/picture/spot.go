package picture

import (
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/space"
	"understructure/geometry/view"
)

// Stand returns the frame in which the body stands in the middle of a room of so many pixels with
// some air on every side, at a scale at which it fits whichever way it is turned: that stays the same
// while one turns it.
func (b *Body) Stand(c view.Camera, wide, high, air float64) Frame {
	_, toward, up := c.Axes()
	tall := (b.High.Z-b.Low.Z)*up.Z + 2*b.radius*math.Abs(toward.Z)
	scale := max(0.001, min((wide-2*air)/max(2*b.radius, 1), (high-2*air)/max(tall, 1)))
	middle := c.See(space.Point{Z: (b.Low.Z + b.High.Z) / 2})
	return Frame{Scale: scale, X: wide / 2, Y: high/2 + middle.Z*scale}
}

// SpotOn returns where on an image a place on the mount is seen, given its height in millimetres and its
// direction as package section counts them, and whether it is on the side turned to the viewer. There is no such place
// where there is no mount: then at is the axis at that height.
func (b *Body) SpotOn(c view.Camera, f Frame, z, turn float64) (at plane.Point, seen bool) {
	p := space.Point{Z: z}
	for _, k := range b.skins[Built]() {
		if z < k.Bottom() || z > k.Top() {
			continue
		}
		r := k.Radius(turn, z)
		sin, cos := math.Sincos(turn * 2 * math.Pi / section.Directions)
		p.X, p.Y = r*cos, r*sin
		row, _ := k.Row(z)
		seen = c.Faces(k.normals()[row][int(math.Round(turn))&(section.Directions-1)])
	}
	q := c.See(p)
	return f.at(q.X, q.Z), seen
}

// Under returns which place on the mount the last Figure shows at a pixel: its height in
// millimetres and its direction as package section counts them; false where it shows none. The scene is that of the figure.
func (p *Painter) Under(s Scene, x, y float64) (z, turn float64, ok bool) {
	g := &p.grid
	col, row := int(math.Floor(x))-g.origin.X, int(math.Floor(y))-g.origin.Y
	if col < g.box.Min.X || col >= g.box.Max.X || row < g.box.Min.Y || row >= g.box.Max.Y {
		return 0, 0, false
	}
	near := g.samples[row*g.w+col].near
	if near == nothing {
		return 0, 0, false
	}
	right, toward, up := s.Camera.Axes()
	at := right.Mul((math.Floor(x) + 0.5 - s.Frame.X) / s.Frame.Scale).
		Add(up.Mul((s.Frame.Y - math.Floor(y) - 0.5) / s.Frame.Scale)).
		Add(toward.Mul(float64(near)))
	turn = math.Atan2(at.Y, at.X) * section.Directions / (2 * math.Pi)
	return at.Z, math.Mod(turn+section.Directions, section.Directions), true
}
