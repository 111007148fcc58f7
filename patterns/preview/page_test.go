package preview

import (
	"context"
	"image"
	"image/color"
	"math"
	"math/rand/v2"
	"testing"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/piece"
	"understructure/patterns/plantest"
	"understructure/patterns/sheet"
)

// laid are the pages of the invented mount on a paper.
func laid(t testing.TB, paper string) []sheet.Page {
	t.Helper()
	p := plantest.Plan()
	p.Paper, _ = sheet.Named(paper)
	pages, err := sheet.Lay(context.Background(), p, sheet.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return pages
}

// What a part shows is the same pixels as in the whole page.
func TestAPartIsCutFromThePage(t *testing.T) {
	const px = 2.0
	for _, pg := range laid(t, "A4") {
		whole := Page(pg, px).(*image.RGBA)
		box := drawing.Box{Lo: plane.Point{X: 30, Y: 50}, Hi: plane.Point{X: 130, Y: 170}}
		part := Part(pg, box, px, "").(*image.RGBA)
		cut := whole.SubImage(image.Rect(60, int((pg.Height-170)*px), 260, int((pg.Height-50)*px))).(*image.RGBA)
		if part.Rect.Size() != cut.Rect.Size() {
			t.Fatalf("the part is %v, the same of the page %v", part.Rect.Size(), cut.Rect.Size())
		}
		off := 0
		for y := range part.Rect.Dy() {
			for x := range part.Rect.Dx() {
				a, b := int(part.Pix[y*part.Stride+4*x]), int(cut.Pix[y*cut.Stride+4*x])
				if max(a-b, b-a) > 12 {
					off++
				}
			}
		}
		// Letters come to stand on whole pixels, and a few of them fall to the other side of a half.
		if most := part.Rect.Dx() * part.Rect.Dy() / 500; off > most {
			t.Errorf("%s: %d pixels differ from the page, want at most %d", pg.Title.Page, off, most)
		}
	}
}

func TestOnlyThePickedPieceIsTinted(t *testing.T) {
	tinted := func(m image.Image) float64 {
		n := 0.0
		for y := range m.Bounds().Dy() {
			for x := range m.Bounds().Dx() {
				if m.At(x, y) == (color.RGBA{R: tint.R, G: tint.G, B: tint.B, A: 255}) {
					n++
				}
			}
		}
		return n
	}
	for _, pg := range laid(t, "A3") {
		whole := drawing.Box{Hi: plane.Point{X: pg.Width, Y: pg.Height}}
		for _, it := range pg.Items {
			want := math.Abs(seen(it, it.Piece.CutLine(), it.Clip).Area())
			for _, h := range it.Piece.Holes {
				want -= math.Abs(seen(it, h, it.Clip).Area())
			}
			if got := tinted(Part(pg, whole, 2, it.Piece.ID)) / 4; got < 0.6*want || got > want {
				t.Errorf("%s: %.0f mm² tinted, the piece covers %.0f", it.Piece.ID, got, want)
			}
		}
		if n := tinted(Part(pg, whole, 2, "no such piece")); n > 0 {
			t.Errorf("%.0f pixels tinted for no piece", n)
		}
	}
}

// Words are as long in a picture as they are on paper: pairs that other fonts pull together included.
func TestWordsAreAsLongAsOnPaper(t *testing.T) {
	for _, text := range []string{"page 11 of 111", "AVAVA Toto", "tile A2 of 2"} {
		const px = 20
		w := drawing.Word{Text: text, Size: 4, At: plane.Point{X: 2, Y: 2}}
		c := newCanvas(int(px*(w.Width()+6)), 8*px, px)
		c.Word(w)
		first, last := c.gg.Width(), 0
		for y := range c.gg.Height() {
			for x := range c.gg.Width() {
				if r, _, _, _ := c.gg.Image().At(x, y).RGBA(); r < 0x8000 {
					first, last = min(first, x), max(last, x)
				}
			}
		}
		// The letters at both ends have some white of their own, less than a tenth of a letter's size.
		if got := float64(last-first) / px; got > w.Width() || got < w.Width()-0.2*w.Size {
			t.Errorf("%q is %.2f mm long, want nearly %.2f", text, got, w.Width())
		}
	}
}

// Thumbnails keep the page's shape, never exceed their room, and show something.
func TestThumbnails(t *testing.T) {
	for _, paper := range []string{"A4", "A0", "roll-610"} {
		for _, pg := range laid(t, paper) {
			m := Thumbnail(pg, 90, 120)
			s := m.Bounds().Size()
			if s.X > 90 || s.Y > 120 || math.Abs(float64(s.X)/float64(s.Y)-pg.Width/pg.Height) > 0.03 {
				t.Errorf("%s: a page of %g × %g becomes %v", paper, pg.Width, pg.Height, s)
			}
			if s.X*s.Y-inked(m, color.RGBA{R: 255, G: 255, B: 255}) < 40 {
				t.Errorf("%s: the thumbnail is blank", paper)
			}
		}
	}
	if Thumbnail(sheet.Page{}, 10, 10).Bounds().Empty() {
		t.Error("a page without paper has no picture")
	}
}

func TestAtFindsThePieceUnderAPoint(t *testing.T) {
	square := plane.Ring{{X: 0, Y: 0}, {X: 50, Y: 0}, {X: 50, Y: 50}, {X: 0, Y: 50}}
	put := func(id string, x, y float64, turned bool) sheet.Item {
		return sheet.Item{
			Piece: piece.Piece{ID: id, Outline: square}, Turned: turned, Offset: plane.Point{X: x, Y: y},
			Clip: drawing.Box{Hi: plane.Point{X: 180, Y: 300}},
		}
	}
	pg := sheet.Page{Width: 200, Height: 300, Items: []sheet.Item{put("A", 10, 10, false), put("B", 120, 10, true), put("C", 150, 100, false)}}
	for _, c := range []struct {
		x, y float64
		want string
	}{{20, 20, "A"}, {61, 20, ""}, {100, 30, "B"}, {125, 30, ""}, {170, 120, "C"}, {190, 120, ""}} {
		if it, ok := At(pg, plane.Point{X: c.x, Y: c.y}); it.Piece.ID != c.want || ok != (c.want != "") {
			t.Errorf("at (%g, %g) lies %q, want %q", c.x, c.y, it.Piece.ID, c.want)
		}
	}
}

// The parts that the tiles of a piece show between their seams make up the whole piece.
func TestTilesCoverTheirPieceOnce(t *testing.T) {
	area := map[string]float64{}
	for _, pg := range laid(t, "A4") {
		share := Covered(pg)
		if (share <= 0) != (len(pg.Items) == 0) || share >= 1 {
			t.Errorf("%s covers %g of its paper", pg.Title.Piece, share)
		}
		for _, it := range pg.Items {
			alone := pg
			alone.Items = []sheet.Item{it}
			area[it.Piece.ID] += Covered(alone) * pg.Width * pg.Height
		}
	}
	panel := plantest.Panel()
	if got, want := area[panel.ID], panel.Area(); math.Abs(got-want) > 1e-6*want {
		t.Errorf("the tiles show %.3f mm² of a panel of %.3f mm²", got, want)
	}
	if Covered(sheet.Page{}) != 0 {
		t.Error("paper that is none is covered")
	}
}

// A convex polygon clipped to a box has the area that counting points gives.
func TestSeenHasTheAreaOfWhatIsInside(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 1))
	box := drawing.Box{Lo: plane.Point{X: 20, Y: 10}, Hi: plane.Point{X: 80, Y: 70}}
	for range 20 {
		var star plane.Ring
		for k := range 9 {
			s, c := math.Sincos(2 * math.Pi * float64(k) / 9)
			r := 15 + 45*rng.Float64()
			star = append(star, plane.Point{X: 50 + r*c, Y: 40 + r*s})
		}
		got := math.Abs(seen(sheet.Item{}, star, box).Area())
		inside := 0
		for x := 20.25; x < 80; x += 0.5 {
			for y := 10.25; y < 70; y += 0.5 {
				if star.Contains(plane.Point{X: x, Y: y}) {
					inside++
				}
			}
		}
		if want := float64(inside) / 4; math.Abs(got-want) > 0.01*want {
			t.Errorf("area %.1f, counted %.1f", got, want)
		}
	}
}

func BenchmarkPart(b *testing.B) {
	for _, paper := range []string{"A4", "A0", "roll-914"} {
		pg := laid(b, paper)[0]
		b.Run(paper, func(b *testing.B) {
			scale := math.Min(900/pg.Width, 600/pg.Height)
			for b.Loop() {
				Part(pg, drawing.Box{Hi: plane.Point{X: pg.Width, Y: pg.Height}}, scale, "")
			}
		})
		b.Run(paper+"/true size", func(b *testing.B) {
			for b.Loop() {
				Part(pg, drawing.Box{Lo: plane.Point{X: 20, Y: 30}, Hi: plane.Point{X: 200, Y: 180}}, 4, "")
			}
		})
	}
}

func BenchmarkThumbnail(b *testing.B) {
	pg := laid(b, "A4")[0]
	for b.Loop() {
		Thumbnail(pg, 92, 118)
	}
}
