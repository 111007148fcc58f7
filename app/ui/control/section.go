package control

import (
	"fmt"
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/look"
	"understructure/app/ui/picture"
)

// Room round a section for words, and below it for the bar that shows the scale, in the toolkit's units.
const (
	sectionMargin = 26
	barRoom       = 22
)

// Section shows one level of a figure from above, its front below. Where it may be shaped, its outline has a handle
// on each of the four sides.
type Section struct {
	widget.BaseWidget
	OnPulled  func(Pull)
	OnSettled func() // it was let go
	OnGivenUp func() // it is to be as before

	body    *picture.Body
	height  float64
	mode    picture.Mode
	painter picture.Painter
	raster  *canvas.Raster
	layer   *fyne.Container
	hand    hand
}

// NewSection returns an empty one.
func NewSection() *Section {
	s := &Section{
		body: new(picture.Body), layer: container.NewWithoutLayout(),
		OnPulled: func(Pull) {}, OnSettled: func() {}, OnGivenUp: func() {},
	}
	s.raster = canvas.NewRaster(s.paint)
	s.ExtendBaseWidget(s)
	return s
}

// Draw shows the outlines at one height, in millimetres.
func (s *Section) Draw(body *picture.Body, height float64) {
	s.body, s.height = body, height
	s.Refresh()
}

// Paint chooses what the colours say.
func (s *Section) Paint(m picture.Mode) { s.mode = m; s.Refresh() }

// Height is that of the section shown.
func (s *Section) Height() float64 { return s.height }

// frame makes the section as large as its room.
func (s *Section) frame(size fyne.Size) picture.Frame {
	if s.hand.frame != nil { // it must not slip under the hand
		return *s.hand.frame
	}
	lo, hi, ok := s.body.Box(s.height)
	if !ok {
		return picture.Frame{Scale: 1}
	}
	wide, high := float64(size.Width-2*sectionMargin), float64(size.Height-2*sectionMargin-barRoom)
	scale := max(0.02, min(wide/(hi.X-lo.X), high/(hi.Y-lo.Y)))
	return picture.Frame{
		Scale: scale,
		X:     float64(size.Width)/2 + (hi.X+lo.X)/2*scale,
		Y:     float64(size.Height-barRoom)/2 - (hi.Y+lo.Y)/2*scale,
	}
}

func (s *Section) paint(w, h int) image.Image {
	img := s.painter.Sheet(w, h)
	if s.body.Empty() || s.Size().Width == 0 {
		return img
	}
	f, pixels := s.frame(s.Size()), float64(w)/float64(s.Size().Width)
	s.painter.Section(img, s.body, picture.Cut{
		Height: s.height, Frame: picture.Frame{Scale: f.Scale * pixels, X: f.X * pixels, Y: f.Y * pixels},
		Palette: look.Palette(), Mode: s.mode, Dragged: s.hand.dragged(),
	})
	return img
}

func (s *Section) mark() {
	s.layer.Objects = nil
	lo, hi, ok := s.body.Box(s.height)
	if size := s.Size(); ok && size.Width > 0 {
		f := s.frame(size)
		if shaped := s.hand.dragged(); shaped != nil {
			l, h := shaped.Bounds()
			lo.Y, hi.Y = min(lo.Y, l.Y), max(hi.Y, h.Y)
		}
		s.word(lang.L("back"), size.Width/2, float32(f.Y+lo.Y*f.Scale)-14)
		s.word(lang.L("front"), size.Width/2, float32(f.Y+hi.Y*f.Scale)+14)
		s.bar(size, f.Scale)
		s.markHandles(f)
	}
	canvas.Refresh(s.layer)
}

func (s *Section) word(text string, x, y float32) {
	t := words(text, look.ColorFaint, false)
	place(t, x, y, 0.5)
	s.layer.Add(t)
}

// bars are the lengths that the bar of the scale may have, in millimetres.
var bars = []float64{200, 100, 50, 20, 10}

// bar draws the longest bar that takes no more than a third of the width.
func (s *Section) bar(size fyne.Size, scale float64) {
	for _, mm := range bars {
		long := float32(mm * scale)
		if long > size.Width/3 {
			continue
		}
		x, y := float32(sectionMargin), size.Height-barRoom/2
		s.layer.Add(line(x, y, x+long, y, look.ColorFaint, 1.2))
		s.layer.Add(line(x, y-4, x, y+4, look.ColorFaint, 1.2))
		s.layer.Add(line(x+long, y-4, x+long, y+4, look.ColorFaint, 1.2))
		t := words(fmt.Sprintf("%.0f mm", mm), look.ColorFaint, false)
		place(t, x+long+8, y, 0)
		s.layer.Add(t)
		return
	}
}

// CreateRenderer is for the toolkit.
func (s *Section) CreateRenderer() fyne.WidgetRenderer {
	return marked{s.raster, s.layer, s.mark, always(220, 180)}
}
