// Package preview makes pictures of pages, pieces, elevations and sections.
// It does not write files.
package preview

import (
	"image"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/elevation"
	"understructure/patterns/plan"
)

// onScreen is how many pixels stand for a millimetre of drawing in a picture that is not true to size:
// letters of 2.4 mm are then 10 pixels high.
const onScreen = 4.2

// Elevation is a picture of the mount from elevation.Front or elevation.Side, on white, with a key below.
func Elevation(p plan.Plan, side string, width, height int) image.Image {
	c, box := framed(p, width, height)
	elevation.Draw(c, p, side, box)
	return c.gg.Image()
}

// Section is a picture of the mount cut at a level, front at the top, on white, with a key below.
func Section(p plan.Plan, level string, width, height int) image.Image {
	c, box := framed(p, width, height)
	elevation.Section(c, p, level, box)
	return c.gg.Image()
}

func framed(p plan.Plan, width, height int) (*canvas, drawing.Box) {
	c := newCanvas(width, height, onScreen)
	elevation.Key(c, p, plane.Point{X: 4, Y: 3})
	return c, drawing.Box{
		Lo: plane.Point{X: 4, Y: 8},
		Hi: plane.Point{X: float64(c.gg.Width())/onScreen - 4, Y: float64(c.gg.Height())/onScreen - 4},
	}
}
