package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// marked renders a picture with lines and words laid over it, which mark makes anew whenever the room or what
// is shown changes.
type marked struct {
	raster *canvas.Raster
	layer  fyne.CanvasObject
	mark   func()
	least  func() fyne.Size
}

func (r marked) Destroy()                     {}
func (r marked) MinSize() fyne.Size           { return r.least() }
func (r marked) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.raster, r.layer} }

func (r marked) Layout(size fyne.Size) {
	r.raster.Resize(size)
	r.layer.Resize(size)
	r.mark()
}

func (r marked) Refresh() {
	r.raster.Refresh()
	r.mark()
}

// always is a least size that never changes.
func always(width, height float32) func() fyne.Size {
	return func() fyne.Size { return fyne.NewSize(width, height) }
}
