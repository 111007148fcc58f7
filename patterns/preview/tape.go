package preview

import (
	"image"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/tapes"
)

// Tape is a square picture of where a tape goes, so many pixels wide. Its ground is transparent.
func Tape(d tapes.Drawing, pixels int, ink tapes.Ink) image.Image {
	c := newCanvas(pixels, pixels, onScreen)
	c.gg.SetRGBA(0, 0, 0, 0)
	c.gg.Clear()
	side := float64(c.gg.Width()) / onScreen
	d.Draw(c, drawing.Box{Hi: plane.Point{X: side, Y: side}}, ink)
	return c.gg.Image()
}
