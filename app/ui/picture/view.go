package picture

import (
	"image"
	"sync"

	"understructure/geometry/plane"
	"understructure/geometry/view"
)

// View is one of the two elevations that a draughtsman draws.
type View int

// The two elevations. The side is the figure's left, which lies to the right of the front view.
const (
	Front View = iota
	Side
)

// Camera is from where the view is seen.
func (v View) Camera() view.Camera {
	if v == Side {
		return view.From(view.LeftSide, 0)
	}
	return view.From(view.Front, 0)
}

// Width returns the extent of the body in this view, left and right of the axis, in millimetres.
func (b *Body) Width(v View) (left, right float64) {
	if v == Side {
		return -b.High.Y, -b.Low.Y
	}
	return -b.High.X, -b.Low.X
}

// Reach is how far anything of the body lies from the axis, in millimetres: whichever way it is turned, it
// stays within that.
func (b *Body) Reach() float64 { return b.radius }

// Extent returns how far the mount reaches to the left and right of the axis in a view at a height, in
// millimetres; false where there is nothing.
func (b *Body) Extent(v View, z float64) (left, right float64, ok bool) {
	line, _ := b.TapeLine(v.Camera(), z)
	if len(line) == 0 {
		return 0, 0, false
	}
	return line[0].X, line[len(line)-1].X, true
}

// painters serve pictures that are drawn now and then.
var painters = sync.Pool{New: func() any { return new(Painter) }}

// Elevation draws the shaded mount, then the outlines of form and garment. Who draws many pictures
// keeps a Painter.
func (b *Body) Elevation(img *image.RGBA, v View, f Frame, p Palette) {
	painter := painters.Get().(*Painter)
	defer painters.Put(painter)
	painter.Figure(img, b, Scene{Camera: v.Camera(), Frame: f, Palette: p})
}

// Frame says where millimetres fall on an image.
type Frame struct {
	Scale float64 // pixels a millimetre
	X     float64 // pixel of the axis
	Y     float64 // pixel of height 0 (of the body's y axis in a section)
}

func (f Frame) at(across, up float64) plane.Point {
	return plane.Point{X: f.X + across*f.Scale, Y: f.Y - up*f.Scale}
}
