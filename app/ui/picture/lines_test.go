package picture

import (
	"image"
	"testing"

	"understructure/geometry/view"
)

// Of a figure in lines what lies behind stays to be seen, but for a contour on either side; from very near the lines
// stay as fine as from far.
func TestAFigureInLines(t *testing.T) {
	b := NewBody(torso())
	for _, scale := range []float64{0.5, 8} {
		img := image.NewRGBA(image.Rect(0, 0, 4000, 40))
		s := Scene{Camera: view.From(view.Front, 0), Frame: Frame{Scale: scale, X: 2000, Y: 20 + 1030*scale}, Palette: Light, Lines: true}
		new(Painter).Figure(img, b, s)
		runs, longest, run := 0, 0, 0
		for x := range 4000 {
			if img.RGBAAt(x, 20).A == 0 {
				run = 0
				continue
			}
			if run++; run == 1 {
				runs++
			}
			longest = max(longest, run)
		}
		if runs < 2 || runs > 6 || longest > 16 { // three outlines a side, side by side from afar
			t.Errorf("at %v pixels a millimetre there are %d lines, the widest of %d pixels", scale, runs, longest)
		}
		if scale > 1 && longest > 5 {
			t.Errorf("from near the widest line has %d pixels", longest)
		}
	}
}
