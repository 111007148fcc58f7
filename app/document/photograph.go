package document

import (
	"math"

	"understructure/app/record"
	"understructure/geometry/plane"
)

// Placing lays a photograph over a view of the figure. It turns and scales, so that the line
// from its low to its high point stands upright and has its true length; it neither stretches nor mirrors.
// In the picture pixels count to the right and down, in the view millimetres across to the right and up.
type Placing struct {
	low   plane.Point // pixels
	at    plane.Point // the same point in the view
	up    plane.Point // in the picture, y turned up: the direction from low to high, of length 1
	scale float64
}

// Placed returns how a photograph lies in its view; false as long as its two points coincide or
// their distance is not known.
func Placed(p record.Photograph) (Placing, bool) {
	d := upright(p.High.Sub(p.Low))
	pixels := d.Norm()
	scale := p.Length / pixels
	if !(pixels > 0 && scale > 0) || math.IsInf(pixels, 0) || math.IsInf(scale, 0) {
		return Placing{}, false
	}
	return Placing{low: p.Low, at: p.At, up: d.Mul(1 / pixels), scale: scale}, true
}

// Scale is the millimetres in a pixel.
func (p Placing) Scale() float64 { return p.scale }

// View returns where a pixel lies in the view.
func (p Placing) View(pixel plane.Point) plane.Point {
	v := upright(pixel.Sub(p.low)).Mul(p.scale)
	return p.at.Add(plane.Point{X: v.Cross(p.up), Y: v.Dot(p.up)})
}

// Pixel returns which pixel lies at a point of the view.
func (p Placing) Pixel(view plane.Point) plane.Point {
	w := view.Sub(p.at).Mul(1 / p.scale)
	right := plane.Point{X: p.up.Y, Y: -p.up.X}
	return p.low.Add(upright(right.Mul(w.X).Add(p.up.Mul(w.Y))))
}

// upright turns down into up, and back.
func upright(p plane.Point) plane.Point { return plane.Point{X: p.X, Y: -p.Y} }
