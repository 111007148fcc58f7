package control

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// PieceView shows one piece as large as there is room. The arrow keys lead to the next, Escape leads back.
type PieceView struct {
	widget.BaseWidget
	Picture  func(width, height int, pixels float64) image.Image // pixels in a unit; nil while there is none
	OnTurned func(by int)
	OnClosed func()

	raster *canvas.Raster
}

// NewPieceView returns an empty one.
func NewPieceView() *PieceView {
	v := &PieceView{Picture: func(int, int, float64) image.Image { return nil }, OnTurned: func(int) {}, OnClosed: func() {}}
	v.raster = canvas.NewRaster(v.paint)
	v.ExtendBaseWidget(v)
	return v
}

func (v *PieceView) paint(width, height int) image.Image {
	if v.Size().Width > 0 {
		if img := v.Picture(width, height, float64(width)/float64(v.Size().Width)); img != nil {
			return img
		}
	}
	return image.NewRGBA(image.Rect(0, 0, width, height))
}

// TypedKey leads on or back.
func (v *PieceView) TypedKey(ev *fyne.KeyEvent) {
	switch ev.Name {
	case fyne.KeyLeft, fyne.KeyUp, fyne.KeyPageUp:
		v.OnTurned(-1)
	case fyne.KeyRight, fyne.KeyDown, fyne.KeyPageDown:
		v.OnTurned(1)
	case fyne.KeyEscape:
		v.OnClosed()
	}
}

// TypedRune does nothing.
func (v *PieceView) TypedRune(rune) {}

// FocusGained does nothing: the picture is all there is to act on.
func (v *PieceView) FocusGained() {}

// FocusLost does nothing.
func (v *PieceView) FocusLost() {}

// MinSize leaves room to see something.
func (v *PieceView) MinSize() fyne.Size { return fyne.NewSize(240, 200) }

// CreateRenderer is for the toolkit.
func (v *PieceView) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(v.raster) }
