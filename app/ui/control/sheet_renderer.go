package control

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
)

// sheetRenderer draws the paper, white in every light, its picture, and a frame that says whether keys go there.
type sheetRenderer struct {
	*SheetView
	frameLine, paper *canvas.Rectangle
	image            *canvas.Image
}

// CreateRenderer is for the toolkit.
func (v *SheetView) CreateRenderer() fyne.WidgetRenderer {
	r := &sheetRenderer{SheetView: v, frameLine: canvas.NewRectangle(color.Transparent), paper: canvas.NewRectangle(color.White), image: canvas.NewImageFromImage(nil)}
	r.image.FillMode = canvas.ImageFillStretch
	return r
}

// IsClip tells the toolkit to draw nothing of a page beyond the view.
func (r *sheetRenderer) IsClip() {}

func (r *sheetRenderer) Destroy()           {}
func (r *sheetRenderer) MinSize() fyne.Size { return fyne.NewSize(240, 240) }

func (r *sheetRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.paper, r.image, r.frameLine}
}

// Layout puts everything in its place and asks for what is seen and not yet there.
func (r *sheetRenderer) Layout(size fyne.Size) {
	shown := r.sheet.Width > 0 && size.Width > 0
	for _, o := range r.Objects() {
		if o.Hide(); shown {
			o.Show()
		}
	}
	if !shown {
		return
	}
	f := r.frame()
	at, whole := f.place(Cutout{Width: r.sheet.Width, Height: r.sheet.Height})
	r.paper.Move(at)
	r.paper.Resize(whole)
	r.frameLine.Move(at.SubtractXY(1, 1))
	r.frameLine.Resize(whole.AddWidthHeight(2, 2))
	at, part := f.place(r.part)
	r.image.Move(at)
	r.image.Resize(part)
	if seen := f.seen(r.sheet, size, r.pixels()); seen != r.wanted {
		r.wanted = seen
		r.OnWanted(seen)
	}
}

func (r *sheetRenderer) Refresh() {
	r.frameLine.StrokeWidth = 1
	r.frameLine.StrokeColor = theme.Color(theme.ColorNameInputBorder)
	if r.focused {
		r.frameLine.StrokeColor = theme.Color(theme.ColorNamePrimary)
	}
	r.image.Image = r.picture
	r.Layout(r.Size())
	if r.image.Image == nil {
		r.image.Hide()
	}
	for _, o := range r.Objects() {
		o.Refresh()
	}
}
