package control

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/look"
	"understructure/app/ui/picture"
	"understructure/geometry/view"
)

// SleeveRow is a place of a sleeve to be named: millimetres below the bottom of the armhole, and what is said of it.
type SleeveRow struct {
	At      float64
	Name    string
	Numbers []string
	Strong  bool // something is to be seen here
}

// SleeveFrill is a strip of net round the arm: where, and from which radius to which it stands, millimetres.
type SleeveFrill struct{ At, From, To float64 }

// SleevePicture is a sleeve over what fills it.
type SleevePicture struct {
	Body    *picture.Body // heights are the places, turned round
	Bare    *picture.Body // what fills the sleeve, alone
	Heads   []string      // over the numbers of the rows
	Rows    []SleeveRow
	Frills  []SleeveFrill
	Caption string
}

// SleeveStage shows a sleeve drawn straight over what fills it, the shoulder above, and beside it a table of girths.
type SleeveStage struct {
	widget.BaseWidget
	shown   SleevePicture
	painter picture.Painter
	raster  *canvas.Raster
	layer   *fyne.Container
}

// NewSleeveStage returns an empty one.
func NewSleeveStage() *SleeveStage {
	s := &SleeveStage{shown: SleevePicture{Body: new(picture.Body), Bare: new(picture.Body)}, layer: container.NewWithoutLayout()}
	s.raster = canvas.NewRaster(s.paint)
	s.ExtendBaseWidget(s)
	return s
}

// Draw shows another sleeve.
func (s *SleeveStage) Draw(p SleevePicture) {
	s.shown = p
	s.Refresh()
}

// Row returns the row of a name, and whether there is one.
func (s *SleeveStage) Row(name string) (SleeveRow, bool) {
	for _, r := range s.shown.Rows {
		if r.Name == name {
			return r, true
		}
	}
	return SleeveRow{}, false
}

// Measures within a sleeve's stage, in the toolkit's units.
const (
	sleeveMargin = 30
	sleeveName   = 120
	sleeveColumn = 92
	sleeveLead   = 36
)

// arrange is where the sleeve lies, and where its table begins.
func (s *SleeveStage) arrange(size fyne.Size) (f picture.Frame, table float32) {
	lo, hi := s.shown.Body.Low, s.shown.Body.High
	side := float64(s.tableWidth() + sleeveLead)
	wide, tall := math.Max(hi.X-lo.X, 1), math.Max(hi.Z-lo.Z, 1)
	room := float64(size.Width) - side - 2*sleeveMargin
	scale := max(0.02, min(room/wide, float64(size.Height-2*sleeveMargin)/tall))
	left := (float64(size.Width) - side - wide*scale) / 2
	f = picture.Frame{Scale: scale, X: left + hi.X*scale, Y: float64(size.Height)/2 + (hi.Z+lo.Z)/2*scale}
	return f, float32(left+wide*scale) + sleeveLead
}

func (s *SleeveStage) tableWidth() float32 {
	return sleeveName + sleeveColumn*float32(len(s.shown.Heads))
}

func (s *SleeveStage) paint(w, h int) image.Image {
	img := s.painter.Sheet(w, h)
	if s.shown.Body.Empty() || s.Size().Width == 0 {
		return img
	}
	pixels := float64(w) / float64(s.Size().Width)
	f, _ := s.arrange(s.Size())
	scene := picture.Scene{Camera: view.From(view.Front, 0), Frame: grown(f, pixels), Palette: look.Palette()}
	s.painter.Figure(img, s.shown.Bare, scene)
	scene.Lines = true
	s.painter.Figure(img, s.shown.Body, scene)
	return img
}

// CreateRenderer is for the toolkit.
func (s *SleeveStage) CreateRenderer() fyne.WidgetRenderer {
	return marked{s.raster, s.layer, s.mark, func() fyne.Size { return fyne.NewSize(s.tableWidth()+sleeveLead+200, 300) }}
}
