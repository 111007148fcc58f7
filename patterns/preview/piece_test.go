package preview

import (
	"image"
	"image/color"
	"math"
	"testing"

	"understructure/patterns/drawing"
	"understructure/patterns/piece"
	"understructure/patterns/plantest"
)

var ink = Ink{Cloth: drawing.Colour{R: 240, G: 200, B: 160}, Line: drawing.Colour{R: 30, G: 30, B: 120}, Faint: drawing.Colour{R: 120, G: 160, B: 120}}

func rgba(c drawing.Colour) color.RGBA { return color.RGBA{R: c.R, G: c.G, B: c.B} }

// A card shows the cloth in its true proportions, hole left open.
func TestACardShowsTheShape(t *testing.T) {
	for _, pc := range plantest.Pieces() {
		const most = 3
		m := Card(pc, 300, 220, most, ink)
		lo, hi := pc.CutLine().Bounds()
		scale := math.Min(most, math.Min((300-6)/(hi.X-lo.X), (220-6)/(hi.Y-lo.Y)))
		want := pc.Area() * scale * scale
		if got := float64(300*220 - clear(m)); math.Abs(got-want) > 0.08*want+400 {
			t.Errorf("%s: %.0f pixels drawn on, the piece covers %.0f", pc.ID, got, want)
		}
		if inked(m, rgba(ink.Line)) < 50 || inked(m, rgba(ink.Cloth)) < 200 {
			t.Errorf("%s: %d pixels of line, %d of cloth", pc.ID, inked(m, rgba(ink.Line)), inked(m, rgba(ink.Cloth)))
		}
	}
}

// A portrait has the same and, outside the cloth, the dimensions.
func TestAPortraitSaysHowLargeAPieceIs(t *testing.T) {
	pc := plantest.Panel()
	m, err := Portrait(pc, 600, 430, 12, "90.0 cm", "60.0 cm", ink)
	if err != nil {
		t.Fatal(err)
	}
	foot := m.(*image.RGBA).SubImage(image.Rect(0, 430-36, 600, 430))
	side := m.(*image.RGBA).SubImage(image.Rect(0, 0, 30, 430))
	for name, part := range map[string]image.Image{"across": foot, "up": side} {
		if drawn := part.Bounds().Dx()*part.Bounds().Dy() - clear(part); drawn < 100 {
			t.Errorf("%s: %d pixels of a dimension", name, drawn)
		}
	}
	if _, err := Portrait(piece.Piece{ID: "none"}, 100, 100, 12, "", "", ink); err == nil {
		t.Error("a piece without an outline has a picture")
	}
}

// clear counts the pixels that nothing is drawn on.
func clear(m image.Image) int {
	n := 0
	b := m.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			if _, _, _, a := m.At(x, y).RGBA(); a == 0 {
				n++
			}
		}
	}
	return n
}

func TestCardsOfNoRoom(t *testing.T) {
	for _, size := range [][2]int{{0, 0}, {-3, 5}, {1, 1}} {
		if Card(plantest.Panel(), size[0], size[1], 2, ink).Bounds().Empty() {
			t.Errorf("%v: no picture", size)
		}
	}
}

func BenchmarkCard(b *testing.B) {
	pc := plantest.Panel()
	for b.Loop() {
		Card(pc, 150, 110, 2, ink)
	}
}

func BenchmarkPortrait(b *testing.B) {
	pc := plantest.Panel()
	for b.Loop() {
		if _, err := Portrait(pc, 900, 560, 12, "90 cm", "60 cm", ink); err != nil {
			b.Fatal(err)
		}
	}
}
