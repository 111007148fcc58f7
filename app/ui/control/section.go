package control

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/look"
	"understructure/app/ui/picture"
)

// sectionMargin leaves room for the words round a section.
const sectionMargin = 24

// Section shows one level of a figure from above, its front below.
type Section struct {
	widget.BaseWidget
	body   *picture.Body
	height float64
	raster *canvas.Raster
	layer  *fyne.Container
}

// NewSection returns an empty one.
func NewSection() *Section {
	s := &Section{body: new(picture.Body), layer: container.NewWithoutLayout()}
	s.raster = canvas.NewRaster(s.paint)
	s.ExtendBaseWidget(s)
	return s
}

// Draw shows the outlines at one height, in millimetres.
func (s *Section) Draw(body *picture.Body, height float64) {
	s.body, s.height = body, height
	s.Refresh()
}

// Height is that of the section shown.
func (s *Section) Height() float64 { return s.height }

// frame keeps one scale for all heights, so that levels can be compared.
func (s *Section) frame(size fyne.Size) picture.Frame {
	b := s.body
	scale := max(0.02, min(float64(size.Width-2*sectionMargin)/(b.High.X-b.Low.X), float64(size.Height-2*sectionMargin)/(b.High.Y-b.Low.Y)))
	return picture.Frame{
		Scale: scale,
		X:     float64(size.Width)/2 + (b.High.X+b.Low.X)/2*scale,
		Y:     float64(size.Height)/2 - (b.High.Y+b.Low.Y)/2*scale,
	}
}

func (s *Section) paint(w, h int) image.Image {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	if s.body.Empty() || s.Size().Width == 0 {
		return img
	}
	f, pixels := s.frame(s.Size()), float64(w)/float64(s.Size().Width)
	s.body.Section(img, s.height, picture.Frame{Scale: f.Scale * pixels, X: f.X * pixels, Y: f.Y * pixels}, look.Palette())
	return img
}

func (s *Section) mark() {
	s.layer.Objects = nil
	ring := s.body.Ring(picture.Built, s.height)
	if size := s.Size(); len(ring) > 0 && size.Width > 0 {
		f := s.frame(size)
		lo, hi := ring.Bounds()
		x := float32(f.X - (lo.X+hi.X)/2*f.Scale)
		s.word("back", x, float32(f.Y+lo.Y*f.Scale)-12)
		s.word("front", x, float32(f.Y+hi.Y*f.Scale)+12)
	}
	canvas.Refresh(s.layer)
}

func (s *Section) word(text string, x, y float32) {
	t := words(text, look.ColorFaint, false)
	place(t, x, y, 0.5)
	s.layer.Add(t)
}

type sectionRenderer struct{ *Section }

// CreateRenderer is for the toolkit.
func (s *Section) CreateRenderer() fyne.WidgetRenderer { return sectionRenderer{s} }

func (r sectionRenderer) Destroy()           {}
func (r sectionRenderer) MinSize() fyne.Size { return fyne.NewSize(220, 180) }

func (r sectionRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.raster, r.layer}
}

func (r sectionRenderer) Layout(size fyne.Size) {
	r.raster.Resize(size)
	r.layer.Resize(size)
	r.mark()
}

func (r sectionRenderer) Refresh() {
	r.raster.Refresh()
	r.mark()
}

// NewLegend returns the key to the lines and colours of the pictures; what the figure does not have is left out.
func NewLegend(withForm, withCore bool) fyne.CanvasObject {
	keys := []fyne.CanvasObject{
		key("garment, inside", look.ColorInk, false), key("mount as built", look.ColorSkin, true),
		key("strain", look.ColorStrain, true), key("slack", look.ColorSlack, true),
	}
	if withForm {
		keys = append(keys, key("form", look.ColorFaint, false))
	}
	if withCore {
		keys = append(keys, key("foam", look.ColorFaint, false))
	}
	return container.NewVBox(container.NewGridWithColumns(2, keys...), words("~  not taken, drawn from statistics", look.ColorInk, false))
}

func key(name string, colour fyne.ThemeColorName, area bool) fyne.CanvasObject {
	swatch := canvas.NewRectangle(theme.Color(colour))
	height := float32(2)
	if area {
		height = 10
		swatch.CornerRadius = 2
	}
	swatch.SetMinSize(fyne.NewSize(16, height))
	return container.NewHBox(container.NewCenter(swatch), words(name, look.ColorInk, false))
}
