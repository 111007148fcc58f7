package preview

import (
	"image/color"
	"testing"

	"understructure/geometry/measure"
	"understructure/patterns/drawing"
	"understructure/patterns/tapes"
)

// A picture of a tape has a clear ground, and the cloth and the tape in the colours that were asked for.
func TestATapeIsSeenInItsColours(t *testing.T) {
	ink := tapes.Ink{Cloth: drawing.Colour{R: 40, G: 40, B: 40}, Line: drawing.Colour{R: 90, G: 90, B: 90}, Tape: drawing.Colour{G: 200, B: 150}}
	for _, pixels := range []int{1, 110, 220} {
		d, _ := tapes.Of(tapes.Bodice, measure.WaistGirth, measure.Woman)
		img := Tape(d, pixels, ink)
		if b := img.Bounds(); b.Dx() != pixels || b.Dy() != pixels {
			t.Fatalf("asked for %d pixels, got %v", pixels, b)
		}
		if pixels == 1 {
			continue
		}
		seen, clear := map[drawing.Colour]int{}, 0
		for y := range pixels {
			for x := range pixels {
				c := color.RGBAModel.Convert(img.At(x, y)).(color.RGBA)
				switch c.A {
				case 0:
					clear++
				case 255:
					seen[drawing.Colour{R: c.R, G: c.G, B: c.B}]++
				}
			}
		}
		if all := pixels * pixels; clear < all/3 || seen[ink.Cloth] < all/10 || seen[ink.Tape] < pixels/4 {
			t.Errorf("%d pixels: clear %d, cloth %d, tape %d", pixels, clear, seen[ink.Cloth], seen[ink.Tape])
		}
	}
}

func BenchmarkTape(b *testing.B) {
	d, _ := tapes.Of(tapes.Bodice, measure.WaistGirth, measure.Woman)
	for b.Loop() {
		Tape(d, 220, tapes.Print)
	}
}
