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

// SkirtPicture is a skirt over what holds it. Heights are millimetres above the floor.
type SkirtPicture struct {
	Whole  *picture.Body // the mount with its skirt
	Bare   *picture.Body // what holds the skirt, alone
	Hem    *picture.Body // at height 0 the hem from above as what is wanted, and what stands there as built
	Steels []float64     // heights
	Waist  float64       // height at which the stand holds the mount
	Stand  string        // the same in words
}

// SkirtStage shows a skirt over what holds it, from the front and from the left, standing on the floor, and
// its hem from above.
type SkirtStage struct {
	widget.BaseWidget
	shown   SkirtPicture
	painter [3]picture.Painter
	raster  *canvas.Raster
	layer   *fyne.Container
}

// NewSkirtStage returns an empty one.
func NewSkirtStage() *SkirtStage {
	none := new(picture.Body)
	s := &SkirtStage{shown: SkirtPicture{Whole: none, Bare: none, Hem: none}, layer: container.NewWithoutLayout()}
	s.raster = canvas.NewRaster(s.paint)
	s.ExtendBaseWidget(s)
	return s
}

// Draw shows another skirt.
func (s *SkirtStage) Draw(p SkirtPicture) {
	s.shown = p
	s.Refresh()
}

// Room round the pictures and between them, in the toolkit's units.
const skirtMargin, skirtGap, skirtFoot = 24, 36, 30

// skirtFrames are where front, left side and hem lie, at one scale.
type skirtFrames struct{ front, side, hem picture.Frame }

func (s *SkirtStage) frames(size fyne.Size) skirtFrames {
	b, lo, hi := s.shown.Whole, s.shown.Hem.Low, s.shown.Hem.High
	across, deep, tall := b.High.X-b.Low.X, b.High.Y-b.Low.Y, b.High.Z
	above := hi.X - lo.X
	wide := float64(size.Width - 2*skirtMargin - 2*skirtGap)
	scale := max(0.02, min(wide/(across+deep+above), float64(size.Height-2*skirtMargin-skirtFoot)/tall))
	x := skirtMargin + (wide-scale*(across+deep+above))/2
	y := float64(size.Height) - skirtMargin - skirtFoot - (float64(size.Height-2*skirtMargin-skirtFoot)-scale*tall)/2
	f := skirtFrames{front: picture.Frame{Scale: scale, X: x + b.High.X*scale, Y: y}}
	x += across*scale + skirtGap
	f.side = picture.Frame{Scale: scale, X: x + b.High.Y*scale, Y: y}
	x += deep*scale + skirtGap
	f.hem = picture.Frame{Scale: scale, X: x + hi.X*scale, Y: float64(size.Height)/2 - (hi.Y+lo.Y)/2*scale}
	return f
}

// grown is a frame at so many pixels a unit of the toolkit.
func grown(f picture.Frame, pixels float64) picture.Frame {
	return picture.Frame{Scale: f.Scale * pixels, X: f.X * pixels, Y: f.Y * pixels}
}

func (s *SkirtStage) paint(w, h int) image.Image {
	img := s.painter[0].Sheet(w, h)
	if s.shown.Whole.Empty() || s.Size().Width == 0 {
		return img
	}
	pixels := float64(w) / float64(s.Size().Width)
	f, p := s.frames(s.Size()), look.Palette()
	for i, each := range []struct {
		yaw   unit.Angle
		frame picture.Frame
	}{{view.Front, f.front}, {view.LeftSide, f.side}} {
		scene := picture.Scene{Camera: view.From(each.yaw, 0), Frame: grown(each.frame, pixels), Palette: p}
		for _, z := range s.shown.Steels {
			scene.Tapes = append(scene.Tapes, picture.Tape{Height: z, Colour: p.Form, Width: pixels})
		}
		s.painter[i].Figure(img, s.shown.Bare, scene)
		scene.Lines, scene.Tapes = true, nil
		s.painter[i].Figure(img, s.shown.Whole, scene)
	}
	s.painter[2].Section(img, s.shown.Hem, picture.Cut{Frame: grown(f.hem, pixels), Palette: p})
	return img
}

func (s *SkirtStage) mark() {
	s.layer.Objects = nil
	if size := s.Size(); !s.shown.Whole.Empty() && size.Width > 0 {
		f, b := s.frames(size), s.shown.Whole
		left, right := float32(f.front.X-b.High.X*f.front.Scale)-8, float32(f.side.X-b.Low.Y*f.side.Scale)+8
		floor, waist := float32(f.front.Y), float32(f.front.Y-s.shown.Waist*f.front.Scale)
		s.layer.Add(line(left, floor, right, floor, look.ColorFaint, 1))
		s.layer.Add(line(float32(f.front.X), waist, float32(f.side.X), waist, look.ColorFaint, 0.6))
		s.word(s.shown.Stand, float32(f.front.X+f.side.X)/2, waist-9, 0.5)
		s.word(lang.L("front"), float32(f.front.X), floor+16, 0.5)
		s.word(lang.L("left side"), float32(f.side.X), floor+16, 0.5)
		s.word(lang.L("hem, from above"), float32(f.hem.X), float32(f.hem.Y+s.shown.Hem.High.Y*f.hem.Scale)+20, 0.5)
	}
	canvas.Refresh(s.layer)
}

func (s *SkirtStage) word(text string, x, y, part float32) {
	t := words(text, look.ColorFaint, false)
	place(t, x, y, part)
	s.layer.Add(t)
}

// CreateRenderer is for the toolkit.
func (s *SkirtStage) CreateRenderer() fyne.WidgetRenderer {
	return marked{s.raster, s.layer, s.mark, always(420, 300)}
}
