package preview

import (
	"image"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/tapes"
)

// Tape is a square picture of where a tape goes, so many pixels wide, on a ground of one colour.
func Tape(d tapes.Drawing, pixels int, ink tapes.Ink, ground drawing.Colour) image.Image {
	c := newCanvas(pixels, pixels, onScreen)
	side := float64(c.gg.Width()) / onScreen
	all := drawing.Box{Hi: plane.Point{X: side, Y: side}}
	c.Fill(all.Corners(), ground)
	d.Draw(c, all, ink)
	return c.gg.Image()
}
