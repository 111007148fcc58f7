package preview

import (
	"image"
	"image/draw"
	"math"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/sheet"
)

// Page is a picture of a page at a number of pixels in a millimetre, as it is printed.
func Page(p sheet.Page, pxPerMM float64) image.Image {
	return Part(p, drawing.Box{Hi: plane.Point{X: p.Width, Y: p.Height}}, pxPerMM, "")
}

// Thumbnail is a picture of a whole page that is no larger than so many pixels, its lines as thin as can be.
func Thumbnail(p sheet.Page, width, height int) image.Image {
	scale := math.Min(float64(width)/p.Width, float64(height)/p.Height)
	if !(scale > 0) || math.IsInf(scale, 1) {
		scale = 1
	}
	c := newCanvas(pixels(p.Width*scale), pixels(p.Height*scale), scale)
	c.thinnest = 0.6
	p.Draw(c)
	return c.gg.Image()
}

// tint is laid under the piece that is picked: light, so that every line stays as clear as on white.
var tint = drawing.Colour{R: 0xcf, G: 0xe6, B: 0xdf}

// Part is a picture of what lies in a box on a page, at a number of pixels in a millimetre, as it is
// printed; only the piece of the picked ID, "" for none, is tinted. Its cost is that of the box, not of the page.
func Part(p sheet.Page, box drawing.Box, pxPerMM float64, picked string) image.Image {
	w, h := pixels(box.Width()*pxPerMM), pixels(box.Height()*pxPerMM)
	c := newCanvas(w+2*rim, h+2*rim, pxPerMM)
	c.look(box.Lo.Sub(plane.Point{X: rim / pxPerMM, Y: rim / pxPerMM}))
	for _, it := range p.Items {
		if picked != "" && it.Piece.ID == picked {
			c.tint(it)
		}
	}
	p.Draw(c)
	part := image.NewRGBA(image.Rect(0, 0, w, h))
	draw.Draw(part, part.Rect, c.gg.Image(), image.Pt(rim, rim), draw.Src)
	return part
}

// rim is drawn round a part and cut off, in pixels: what lies left of a picture darkens its first column.
const rim = 2

func (c *canvas) tint(it sheet.Item) {
	c.Fill(seen(it, it.Piece.CutLine(), it.Clip), tint)
	for _, h := range it.Piece.Holes {
		c.Fill(seen(it, h, it.Clip), drawing.White)
	}
}

// pixels keeps a picture between one pixel and what still fits into memory.
func pixels(x float64) int { return int(math.Round(math.Max(1, math.Min(x, 20000)))) }
