package control

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// SheetView shows one page of paper, whole or nearer by. The wheel and the keys + − 0 1 go nearer and
// farther, dragging and the arrow keys move the page, and the keys Page Up, Page Down, Home and End turn
// pages. What is on the page is asked for in parts, and shown when it comes.
type SheetView struct {
	widget.BaseWidget
	OnWanted func(Cutout)
	OnTapped func(x, y float64) // millimetres from the page's upper left corner
	OnTurned func(by int)       // so many pages on; far more than there are is the first or the last
	OnZoomed func()

	sheet   Sheet
	zoom    float64 // units for a millimetre; 0 is as large as fits
	x, y    float64 // of the page, in the middle of the view
	wanted  Cutout
	picture image.Image
	part    Cutout // that the picture shows
	focused bool
}

// Turn these many pages and come to the end.
const allPages = 1 << 20

// NewSheetView returns a view of no page.
func NewSheetView() *SheetView {
	v := &SheetView{OnWanted: func(Cutout) {}, OnTapped: func(float64, float64) {}, OnTurned: func(int) {}, OnZoomed: func() {}}
	v.ExtendBaseWidget(v)
	return v
}

// Draw shows another page, with a picture of the whole of it until a sharper one comes; nil is blank paper.
func (v *SheetView) Draw(s Sheet, rough image.Image) {
	if s.Width != v.sheet.Width || s.Height != v.sheet.Height {
		v.x, v.y = s.Width/2, s.Height/2
	}
	v.sheet, v.picture, v.part, v.wanted = s, rough, Cutout{Width: s.Width, Height: s.Height}, Cutout{}
	v.Refresh()
}

// Sheet is the page that is shown.
func (v *SheetView) Sheet() Sheet { return v.sheet }

// Picture is what is shown of it, nil for blank paper.
func (v *SheetView) Picture() image.Image { return v.picture }

// Again asks anew for what is seen.
func (v *SheetView) Again() {
	v.wanted = Cutout{}
	v.Refresh()
}

// Put takes the picture of a part, unless another is wanted by now.
func (v *SheetView) Put(c Cutout, picture image.Image) {
	if c != v.wanted {
		return
	}
	v.picture, v.part = picture, c
	v.Refresh()
}

// Fit shows the page whole.
func (v *SheetView) Fit() {
	v.zoom = 0
	v.Refresh()
	v.OnZoomed()
}

// TrueSize shows the page as large as it is printed, as far as the toolkit knows the screen.
func (v *SheetView) TrueSize() { v.zoomTo(trueSize(v.pixels()), v.middle()) }

// Nearer goes nearer by one step, or farther by as many as are below nothing.
func (v *SheetView) Nearer(steps int) {
	v.zoomTo(v.frame().scale*math.Pow(keyStep, float64(steps)), v.middle())
}

// Zoom is how large the page is seen, 1 for true size.
func (v *SheetView) Zoom() float64 { return v.frame().scale / trueSize(v.pixels()) }

func (v *SheetView) middle() fyne.Position {
	return fyne.NewPos(v.Size().Width/2, v.Size().Height/2)
}

// pixels is how many pixels of the screen a unit is wide.
func (v *SheetView) pixels() float32 {
	if c := fyne.CurrentApp().Driver().CanvasForObject(v); c != nil {
		return c.Scale()
	}
	return 1
}

func (v *SheetView) frame() sheetFrame {
	scale := v.zoom
	if scale == 0 {
		scale = fitted(v.sheet, v.Size())
	}
	return framed(v.sheet, v.Size(), scale, v.x, v.y)
}

// zoomTo changes the scale about a position, which stays where it is. Farther than whole one cannot go.
func (v *SheetView) zoomTo(scale float64, about fyne.Position) {
	x, y := v.frame().page(about)
	scale = math.Min(scale, mostZoom*trueSize(v.pixels()))
	v.zoom = scale
	if whole := fitted(v.sheet, v.Size()); scale <= whole && scale < trueSize(v.pixels()) {
		v.zoom, scale = 0, whole
	}
	v.x = x + float64(v.Size().Width/2-about.X)/scale
	v.y = y + float64(v.Size().Height/2-about.Y)/scale
	v.settle()
	v.OnZoomed()
}

// settle keeps the middle of the view where the page lets it be.
func (v *SheetView) settle() {
	v.x, v.y = v.frame().page(v.middle())
	v.Refresh()
}

func (v *SheetView) pan(dx, dy float32) {
	scale := v.frame().scale
	v.x, v.y = v.x-float64(dx)/scale, v.y-float64(dy)/scale
	v.settle()
}
