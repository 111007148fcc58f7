package picture

import (
	"image"
	"image/color"
	"math"

	"golang.org/x/image/vector"

	"understructure/geometry/plane"
)

// pen draws smooth lines: each pixel is covered by as much as the nearest part of the line covers
// it, so that joints do not show.
type pen struct {
	img  *image.RGBA
	mask *image.Alpha
	wet  image.Rectangle // what of the mask is not empty
}

func newPen(img *image.RGBA) *pen { return &pen{img: img, mask: image.NewAlpha(img.Rect)} }

// line draws an open line through the points, in pixels; a dash of 0 is a full line, otherwise
// dashes and gaps are that many widths long.
func (p *pen) line(pts []plane.Point, c color.NRGBA, width, dash float64) {
	walked := 0.0
	for i := 1; i < len(pts); i++ {
		a, b := pts[i-1], pts[i]
		for _, s := range dashes(a, b, walked, dash*width) {
			p.cover(s[0], s[1], width/2)
		}
		walked += a.Dist(b)
	}
	p.ink(c)
}

// closed draws a line round a ring.
func (p *pen) closed(r plane.Ring, c color.NRGBA, width, dash float64) {
	if len(r) > 0 {
		p.line(append(r[:len(r):len(r)], r[0]), c, width, dash)
	}
}

// dashes cuts a to b, which begins after so much of the line, into the parts that are drawn.
func dashes(a, b plane.Point, walked, length float64) [][2]plane.Point {
	d := a.Dist(b)
	if length == 0 || d == 0 {
		return [][2]plane.Point{{a, b}}
	}
	var out [][2]plane.Point
	for n := math.Floor(walked / (2 * length)); n*2*length < walked+d; n++ {
		from, to := max(n*2*length-walked, 0), min(n*2*length+length-walked, d)
		if from < to {
			out = append(out, [2]plane.Point{a.Lerp(b, from/d), a.Lerp(b, to/d)})
		}
	}
	return out
}

func (p *pen) cover(a, b plane.Point, half float64) {
	reach := half + 1
	box := image.Rect(
		int(math.Floor(min(a.X, b.X)-reach)), int(math.Floor(min(a.Y, b.Y)-reach)),
		int(math.Ceil(max(a.X, b.X)+reach)), int(math.Ceil(max(a.Y, b.Y)+reach)),
	).Intersect(p.mask.Rect)
	p.wet = p.wet.Union(box)
	along := b.Sub(a)
	square := max(along.Dot(along), 1e-12)
	for y := box.Min.Y; y < box.Max.Y; y++ {
		for x := box.Min.X; x < box.Max.X; x++ {
			q := plane.Point{X: float64(x) + 0.5, Y: float64(y) + 0.5}
			t := min(max(q.Sub(a).Dot(along)/square, 0), 1)
			c := min(max(half+0.5-q.Dist(a.Lerp(b, t)), 0), 1)
			if i := p.mask.PixOffset(x, y); uint8(c*255) > p.mask.Pix[i] {
				p.mask.Pix[i] = uint8(c * 255)
			}
		}
	}
}

// ink lays the colour wherever the mask is covered, and empties it.
func (p *pen) ink(c color.NRGBA) {
	for y := p.wet.Min.Y; y < p.wet.Max.Y; y++ {
		row := p.mask.Pix[p.mask.PixOffset(p.wet.Min.X, y):p.mask.PixOffset(p.wet.Max.X, y)]
		for i, cover := range row {
			if cover > 0 {
				blend(p.img, p.wet.Min.X+i, y, c, float64(cover)/255)
			}
		}
		clear(row)
	}
	p.wet = image.Rectangle{}
}

// filled returns how much of each pixel lies inside the ring.
func filled(size image.Rectangle, r plane.Ring) *image.Alpha {
	mask := image.NewAlpha(size)
	if len(r) < 3 {
		return mask
	}
	z := vector.NewRasterizer(size.Dx(), size.Dy())
	z.MoveTo(float32(r[0].X), float32(r[0].Y))
	for _, q := range r[1:] {
		z.LineTo(float32(q.X), float32(q.Y))
	}
	z.ClosePath()
	z.Draw(mask, size, image.Opaque, image.Point{})
	return mask
}

// blend lays a colour over a pixel, as much as cover says.
func blend(img *image.RGBA, x, y int, c color.NRGBA, cover float64) {
	i := img.PixOffset(x, y)
	pix := img.Pix[i : i+4 : i+4]
	a := cover * float64(c.A) / 255
	if a >= 1 {
		pix[0], pix[1], pix[2], pix[3] = c.R, c.G, c.B, 255
		return
	}
	pix[0], pix[1] = over(pix[0], c.R, a), over(pix[1], c.G, a)
	pix[2], pix[3] = over(pix[2], c.B, a), over(pix[3], 255, a)
}

func over(below, above uint8, a float64) uint8 {
	return uint8(float64(below) + (float64(above)-float64(below))*a + 0.5)
}
