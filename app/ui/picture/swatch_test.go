package picture

import (
	"image"
	"testing"
)

// The legend shows what the map shows, pixel for pixel.
func TestSwatchesLookAsThePictureDoes(t *testing.T) {
	for _, look := range Light.Legend() {
		mm := (max(look.From, -6) + min(look.To, 24)) / 2
		area := image.Rect(20, 20, 120, 110)
		a, b := image.NewRGBA(image.Rect(0, 0, 140, 140)), image.NewRGBA(image.Rect(0, 0, 140, 140))
		body := cylinder(100, same(100+mm))
		new(Painter).Map(a, body.Unroll(area), MapScene{Palette: Light, Line: 1})
		new(Painter).Swatch(b, area, look, 1)
		n := 0
		for y := range 140 {
			for x := 48; x < 68; x++ { // between two balance lines of the map
				if !near(a.RGBAAt(x, y), look.Colour) != !near(b.RGBAAt(x, y), look.Colour) {
					n++
				}
			}
		}
		if n > 0 {
			t.Errorf("%v: %d pixels differ", look.Band, n)
		}
	}
	img := image.NewRGBA(image.Rect(0, 0, 10, 10))
	new(Painter).Swatch(img, image.Rect(20, 20, 30, 30), Light.Legend()[0], 1)
}
