package preview

import (
	"context"
	"image"
	"image/color"
	"math"
	"testing"

	"understructure/patterns/elevation"
	"understructure/patterns/plan"
	"understructure/patterns/plantest"
	"understructure/patterns/sheet"
)

// inked are the pixels that are nearly of a colour.
func inked(m image.Image, c color.RGBA) int {
	n := 0
	near := func(a uint32, b uint8) bool { return math.Abs(float64(a>>8)-float64(b)) < 40 }
	for y := range m.Bounds().Dy() {
		for x := range m.Bounds().Dx() {
			if r, g, b, _ := m.At(x, y).RGBA(); near(r, c.R) && near(g, c.G) && near(b, c.B) {
				n++
			}
		}
	}
	return n
}

func TestPage(t *testing.T) {
	p := plantest.Plan()
	p.Paper, _ = sheet.Named("A3")
	pages, err := sheet.Lay(context.Background(), p, sheet.Options{})
	if err != nil {
		t.Fatal(err)
	}
	m := Page(pages[0], 4)
	if s := m.Bounds().Size(); s.X != 297*4 || s.Y != 420*4 {
		t.Errorf("A3 at 4 pixels a millimetre is %v", s)
	}
	// Its ticks reach to the left of the upright rule; the first and the last are 100 mm apart.
	first, last := -1, 0
	for y := range m.Bounds().Dy() {
		if r, _, _, _ := m.At(16*4, y).RGBA(); r < 0xc000 {
			if first < 0 {
				first = y
			}
			last = y
		}
	}
	if d := last - first; d < 100*4-1 || d > 100*4+2 {
		t.Errorf("the rule of 100 mm is %d pixels, want 400", d)
	}
}

func TestElevationShowsEveryBody(t *testing.T) {
	for _, m := range []image.Image{
		Elevation(plantest.Plan(), elevation.Front, 500, 700), Elevation(plantest.Plan(), elevation.Side, 500, 700), Section(plantest.Plan(), "waist", 500, 400),
	} {
		for name, c := range map[string]color.RGBA{"black": {}, "vermilion": {R: 0xd5, G: 0x5e}, "blue": {G: 0x72, B: 0xb2}, "grey": {R: 0x70, G: 0x70, B: 0x70}} {
			if n := inked(m, c); n < 30 {
				t.Errorf("%v: %d pixels of %s", m.Bounds(), n, name)
			}
		}
	}
}

func TestPicturesOfNothing(t *testing.T) {
	for _, m := range []image.Image{Elevation(plan.Plan{}, elevation.Front, 40, 30), Section(plan.Plan{}, "waist", 0, -5), Page(sheet.Page{}, 1)} {
		if m.Bounds().Empty() {
			t.Error("an empty picture")
		}
	}
}

func BenchmarkElevation(b *testing.B) {
	p := plantest.Plan()
	for b.Loop() {
		Elevation(p, elevation.Front, 600, 800)
	}
}
