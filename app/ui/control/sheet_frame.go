package control

import (
	"math"

	"fyne.io/fyne/v2"
)

// Sheet is one page of paper: its sides in millimetres, and what it is called in a row of pages.
type Sheet struct {
	Name          string
	Width, Height float64
}

// Cutout is a part of a page in millimetres, from the page's upper left corner, and how many pixels of
// the screen stand for one.
type Cutout struct {
	Left, Top, Width, Height float64
	Scale                    float64
}

// sheetFrame says where a page lies in a view: how many of the toolkit's units a millimetre is long, and
// where its upper left corner is.
type sheetFrame struct {
	scale float64
	x, y  float64
}

// sheetEdge is the least that is left free round a page that is seen whole.
const sheetEdge = 14

// The nearest that one can go, as a multiple of true size, and the step of a key or of the wheel.
const (
	mostZoom  = 8
	keyStep   = 1.25
	wheelStep = 1.12
)

// trueSize is how many of the toolkit's units are a millimetre long on the screen, as far as the toolkit
// knows the screen: it counts 120 units to the inch, but never makes one smaller than a pixel, and screens
// on which that happens mostly have 96 pixels to the inch.
func trueSize(pixels float32) float64 {
	const inch = 25.4
	if pixels <= 1 {
		return 96 / inch
	}
	return 120 / inch
}

// fitted is the scale at which a page is seen whole.
func fitted(s Sheet, size fyne.Size) float64 {
	if s.Width <= 0 || s.Height <= 0 {
		return 1
	}
	wide, high := float64(size.Width)-2*sheetEdge, float64(size.Height)-2*sheetEdge
	return math.Max(0.01, math.Min(wide/s.Width, high/s.Height))
}

// framed puts the point (x, y) of a page in the middle of a view, but leaves no more room beside the
// page than its edge; along a side that is seen whole the page stands in the middle.
func framed(s Sheet, size fyne.Size, scale, x, y float64) sheetFrame {
	along := func(view float32, paper, middle float64) float64 {
		room, long := float64(view), paper*scale
		if long+2*sheetEdge <= room {
			return math.Round((room - long) / 2)
		}
		at := room/2 - middle*scale
		return math.Round(math.Min(sheetEdge, math.Max(at, room-long-sheetEdge)))
	}
	return sheetFrame{scale, along(size.Width, s.Width, x), along(size.Height, s.Height, y)}
}

// page is the place on the page that lies under a position in the view.
func (f sheetFrame) page(p fyne.Position) (x, y float64) {
	return (float64(p.X) - f.x) / f.scale, (float64(p.Y) - f.y) / f.scale
}

// seen is the part of a page that a view shows, in whole pixels.
func (f sheetFrame) seen(s Sheet, size fyne.Size, pixels float32) Cutout {
	along := func(from float64, view float32, paper float64) (start, length float64) {
		lo, hi := math.Max(from, 0), math.Min(from+paper*f.scale, float64(view))
		px := math.Max(1, math.Round((hi-lo)*float64(pixels)))
		return (lo - from) / f.scale, px / float64(pixels) / f.scale
	}
	c := Cutout{Scale: f.scale * float64(pixels)}
	c.Left, c.Width = along(f.x, size.Width, s.Width)
	c.Top, c.Height = along(f.y, size.Height, s.Height)
	return c
}

// place is where a cutout lies in the view.
func (f sheetFrame) place(c Cutout) (fyne.Position, fyne.Size) {
	return fyne.NewPos(float32(f.x+c.Left*f.scale), float32(f.y+c.Top*f.scale)),
		fyne.NewSize(float32(c.Width*f.scale), float32(c.Height*f.scale))
}
