package control

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/look"
	"understructure/app/ui/picture"
	"understructure/geometry/unit"
	"understructure/geometry/view"
)

// SkirtStage shows a skirt over what holds it, from the front and from the left, standing on the floor, and
// its hem from above.
type SkirtStage struct {
	widget.BaseWidget
	body    *picture.Body // with the garment's outline
	bare    *picture.Body // what holds it, alone
	painter [3]picture.Painter
	raster  *canvas.Raster
	layer   *fyne.Container
}

// NewSkirtStage returns an empty one.
func NewSkirtStage() *SkirtStage {
	s := &SkirtStage{body: new(picture.Body), bare: new(picture.Body), layer: container.NewWithoutLayout()}
	s.raster = canvas.NewRaster(s.paint)
	s.ExtendBaseWidget(s)
	return s
}

// Draw shows another skirt: what holds it, and with it the outline of the garment.
func (s *SkirtStage) Draw(bare, body *picture.Body) {
	s.bare, s.body = bare, body
	s.Refresh()
}

// Room round the pictures and between them, in the toolkit's units.
const skirtMargin, skirtGap, skirtFoot = 24, 36, 30

// frames are those of the front, the left side and the hem, at one scale.
func (s *SkirtStage) frames(size fyne.Size) [3]picture.Frame {
	b := s.body
	across, deep, tall := b.High.X-b.Low.X, b.High.Y-b.Low.Y, b.High.Z-min(b.Low.Z, 0)
	wide := float64(size.Width - 2*skirtMargin - 2*skirtGap)
	scale := max(0.02, min(wide/(2*across+deep), float64(size.Height-2*skirtMargin-skirtFoot)/tall))
	x := skirtMargin + (wide-scale*(2*across+deep))/2
	y := float64(size.Height - skirtMargin - skirtFoot)
	front := picture.Frame{Scale: scale, X: x + b.High.X*scale, Y: y}
	x += across*scale + skirtGap
	side := picture.Frame{Scale: scale, X: x + b.High.Y*scale, Y: y}
	x += deep*scale + skirtGap
	return [3]picture.Frame{front, side, {Scale: scale, X: x + b.High.X*scale, Y: float64(size.Height)/2 - (b.High.Y+b.Low.Y)/2*scale}}
}

func (s *SkirtStage) paint(w, h int) image.Image {
	img := s.painter[0].Sheet(w, h)
	if s.body.Empty() || s.Size().Width == 0 {
		return img
	}
	pixels := float64(w) / float64(s.Size().Width)
	f := s.frames(s.Size())
	for i := range f {
		f[i] = picture.Frame{Scale: f[i].Scale * pixels, X: f[i].X * pixels, Y: f[i].Y * pixels}
	}
	p := look.Palette()
	for i, yaw := range []unit.Angle{view.Front, view.LeftSide} {
		scene := picture.Scene{Camera: view.From(yaw, 0), Frame: f[i], Palette: p}
		s.painter[i].Figure(img, s.bare, scene)
		scene.Lines = true
		s.painter[i].Figure(img, s.body, scene)
	}
	s.painter[2].Section(img, s.bare, picture.Cut{Height: s.body.Low.Z, Frame: f[2], Palette: p})
	return img
}

func (s *SkirtStage) mark() {
	s.layer.Objects = nil
	if size := s.Size(); !s.body.Empty() && size.Width > 0 {
		f := s.frames(size)
		floor := float32(f[0].Y)
		right := float32(f[1].X - s.body.Low.Y*f[1].Scale)
		s.layer.Add(line(float32(f[0].X-s.body.High.X*f[0].Scale)-8, floor, right+8, floor, look.ColorFaint, 1))
		for i, name := range []string{lang.L("front"), lang.L("left side"), lang.L("hem, from above")} {
			t := words(name, look.ColorFaint, false)
			y := floor + 16
			if i == 2 {
				y = float32(f[2].Y+s.body.High.Y*f[2].Scale) + 20
			}
			place(t, float32(f[i].X), y, 0.5)
			s.layer.Add(t)
		}
	}
	canvas.Refresh(s.layer)
}

type skirtStageRenderer struct{ *SkirtStage }

// CreateRenderer is for the toolkit.
func (s *SkirtStage) CreateRenderer() fyne.WidgetRenderer { return skirtStageRenderer{s} }

func (r skirtStageRenderer) Destroy()           {}
func (r skirtStageRenderer) MinSize() fyne.Size { return fyne.NewSize(420, 300) }
func (r skirtStageRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.raster, r.layer}
}

func (r skirtStageRenderer) Layout(size fyne.Size) {
	r.raster.Resize(size)
	r.layer.Resize(size)
	r.mark()
}

func (r skirtStageRenderer) Refresh() {
	r.raster.Refresh()
	r.mark()
}
