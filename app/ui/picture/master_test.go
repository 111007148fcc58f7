package picture

import (
	"flag"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"understructure/geometry/unit"
	"understructure/geometry/view"
)

var update = flag.Bool("update", false, "draw the masters in testdata anew")

// Pictures may differ from their masters by a rounding, on machines that round otherwise.
const (
	mostOff  = 3     // of 255, unseen
	mostSeen = 0.002 // part of the pixels that may be off by more
)

// master compares a picture with the one in testdata. If they differ the new one is kept in testdata/failed.
func master(t *testing.T, name string, img *image.RGBA) {
	t.Helper()
	path := filepath.Join("testdata", name+".png")
	if *update {
		save(t, path, img)
		return
	}
	f, err := os.Open(path)
	if err != nil {
		t.Fatalf("%v: draw it with -update, and look at it", err)
	}
	defer f.Close()
	want, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	if off := apart(img, want); off > mostSeen {
		failed := filepath.Join("testdata", "failed", name+".png")
		save(t, failed, img)
		t.Errorf("%.2f %% of %s look different; what was drawn is in %s", 100*off, name, failed)
	}
}

// apart is the part of the pixels that look different; 1 if the sizes are.
func apart(a, b image.Image) float64 {
	if a.Bounds() != b.Bounds() {
		return 1
	}
	n := 0
	for y := a.Bounds().Min.Y; y < a.Bounds().Max.Y; y++ {
		for x := a.Bounds().Min.X; x < a.Bounds().Max.X; x++ {
			p, q := color.RGBAModel.Convert(a.At(x, y)).(color.RGBA), color.RGBAModel.Convert(b.At(x, y)).(color.RGBA)
			for _, d := range []int{int(p.R) - int(q.R), int(p.G) - int(q.G), int(p.B) - int(q.B), int(p.A) - int(q.A)} {
				if d < -mostOff || d > mostOff {
					n++
					break
				}
			}
		}
	}
	return float64(n) / float64(a.Bounds().Dx()*a.Bounds().Dy())
}

func save(t *testing.T, path string, img image.Image) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, img); err != nil {
		t.Fatal(err)
	}
}

// sheet is an image with the ground of a palette.
func sheet(w, h int, ground color.NRGBA) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	draw.Draw(img, img.Rect, image.NewUniform(ground), image.Point{}, draw.Src)
	return img
}

// part is a window of an image.
func part(img *image.RGBA, x, w int) *image.RGBA {
	return img.SubImage(image.Rect(x, 0, x+w, img.Rect.Max.Y)).(*image.RGBA)
}

// turned draws a body from four sides beside each other.
func turned(b *Body, p Palette, m Mode, pitch unit.Angle, tapes []Tape) *image.RGBA {
	const w, h = 200, 300
	img := sheet(4*w, h, grounds[p])
	painter := new(Painter)
	for i, yaw := range []unit.Angle{view.Front, view.LeftSide, view.Back, view.ThreeQuarter} {
		c := view.From(yaw, pitch)
		f := b.Stand(c, w, h, 8)
		f.X += float64(i * w)
		painter.Figure(part(img, i*w, w), b, Scene{Camera: c, Frame: f, Palette: p, Mode: m, Tapes: tapes})
	}
	return img
}

func TestMasters(t *testing.T) {
	b := NewBody(torso())
	levels := []float64{1030, 1170, 1300}
	tapes := []Tape{{1030, Light.Wanted, 2}, {1170, Light.Faint, 1}, {1300, Light.Faint, 1}}
	master(t, "plain", turned(b, Light, Plain, 0, nil))
	master(t, "plain-dark-from-above", turned(b, Dark, Plain, 14*unit.Degree, tapes))
	master(t, "clearance", turned(b, Light, Clearance, 0, tapes))
	master(t, "clearance-dark", turned(b, Dark, Clearance, 0, nil))

	maps := sheet(520, 300, grounds[Light])
	new(Painter).Map(maps, b.Unroll(image.Rect(10, 10, 510, 290)), MapScene{Palette: Light, Levels: levels, Line: 1})
	master(t, "map", maps)

	sections := sheet(780, 260, grounds[Light])
	for i, c := range []Cut{
		{Height: 1030, Palette: Light}, {Height: 1030, Palette: Light, Mode: Clearance},
		{Height: 1190, Palette: Light, Mode: Clearance, Dragged: b.Ring(Garment, 1030)},
	} {
		c.Frame = Frame{Scale: 0.62, X: float64(130 + 260*i), Y: 120}
		new(Painter).Section(part(sections, 260*i, 260), b, c)
	}
	master(t, "section", sections)

	stages := sheet(960, 260, grounds[Light])
	for i := range 6 {
		s := NewStage(grown(), i)
		c := view.From(view.ThreeQuarter, 8*unit.Degree)
		f := s.Stand(c, 160, 260, 8)
		f.X += float64(160 * i)
		new(Painter).Figure(part(stages, 160*i, 160), s, Scene{Camera: c, Frame: f, Palette: Light})
	}
	master(t, "stages", stages)
}

// A master that cannot fail is none.
func TestMastersCanFail(t *testing.T) {
	a := turned(NewBody(torso()), Light, Plain, 0, nil)
	b := turned(NewBody(torso()), Light, Clearance, 0, nil)
	if off := apart(a, b); off < 0.05 {
		t.Errorf("two modes differ in %.2f %% of the pixels", 100*off)
	}
	if apart(a, a) != 0 || apart(a, part(a, 0, 10)) != 1 {
		t.Error("a picture differs from itself, or is the same as a part of it")
	}
}
