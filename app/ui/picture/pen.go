package picture

import (
	"image"
	"image/color"
	"math"

	"golang.org/x/image/vector"

	"understructure/geometry/plane"
)

// pen draws smooth lines: each pixel is covered by as much as the nearest part of the line covers
// it, so that joints do not show. The zero pen draws on nothing until it is put on an image.
type pen struct {
	img  *image.RGBA
	mask *image.Alpha
	wet  image.Rectangle // what of the mask is not empty
}

// on puts the pen on an image.
func (p *pen) on(img *image.RGBA) *pen {
	if p.mask == nil || p.mask.Rect != img.Rect {
		p.mask = image.NewAlpha(img.Rect)
	}
	p.img = img
	return p
}

// line draws an open line through the points, in pixels; a dash of 0 is a full line, otherwise
// dashes and gaps are that many widths long.
func (p *pen) line(pts []plane.Point, c color.NRGBA, width, dash float64) {
	walked := 0.0
	for i := 1; i < len(pts); i++ {
		a, b := pts[i-1], pts[i]
		if dash == 0 {
			p.cover(a, b, width/2)
			continue
		}
		d := a.Dist(b)
		for s := firstDash(walked, dash*width); s.from < d; s = s.next() {
			p.cover(a.Lerp(b, max(s.from, 0)/d), a.Lerp(b, min(s.to, d)/d), width/2)
		}
		walked += d
	}
	p.ink(c)
}

// closed draws a line round a ring.
func (p *pen) closed(r plane.Ring, c color.NRGBA, width, dash float64) {
	if len(r) > 0 {
		p.line(append(r[:len(r):len(r)], r[0]), c, width, dash)
	}
}

// stroke is where one dash lies on a line.
type stroke struct{ from, to float64 }

// firstDash is the first dash that reaches into what follows a part of a line; dashes are as long as the gaps.
func firstDash(walked, long float64) stroke {
	from := math.Floor(walked/(2*long))*2*long - walked
	s := stroke{from, from + long}
	if s.to <= 0 {
		return s.next()
	}
	return s
}

func (s stroke) next() stroke {
	long := s.to - s.from
	return stroke{s.from + 2*long, s.to + 2*long}
}

// cover covers the pixels within half a width of the straight line from a to b.
func (p *pen) cover(a, b plane.Point, half float64) {
	reach := half + 1
	if a.Y > b.Y {
		a, b = b, a
	}
	r := p.mask.Rect
	first, last := max(r.Min.Y, int(math.Floor(a.Y-reach))), min(r.Max.Y, int(math.Ceil(b.Y+reach)))
	along := b.Sub(a)
	square := max(along.Dot(along), 1e-12)
	for y := first; y < last; y++ {
		// Only the part of the line that is near this row can cover it.
		t0, t1 := 0.0, 1.0
		if along.Y > reach {
			t0 = min(1, max(0, (float64(y)-reach-a.Y)/along.Y))
			t1 = min(1, max(0, (float64(y)+1+reach-a.Y)/along.Y))
		}
		x0, x1 := a.X+t0*along.X, a.X+t1*along.X
		if x0 > x1 {
			x0, x1 = x1, x0
		}
		from, to := max(r.Min.X, int(math.Floor(x0-reach))), min(r.Max.X, int(math.Ceil(x1+reach)))
		if from >= to {
			continue
		}
		p.wet = p.wet.Union(image.Rect(from, y, to, y+1))
		row := p.mask.Pix[p.mask.PixOffset(from, y):][:to-from]
		for i := range row {
			q := plane.Point{X: float64(from+i) + 0.5, Y: float64(y) + 0.5}
			t := min(max(q.Sub(a).Dot(along)/square, 0), 1)
			d := q.Sub(a.Lerp(b, t))
			c := min(max(half+0.5-math.Sqrt(d.Dot(d)), 0), 1)
			row[i] = max(row[i], uint8(c*255))
		}
	}
}

// ink lays the colour wherever the mask is covered, and empties it.
func (p *pen) ink(c color.NRGBA) {
	for y := p.wet.Min.Y; y < p.wet.Max.Y; y++ {
		row := p.mask.Pix[p.mask.PixOffset(p.wet.Min.X, y):][:p.wet.Dx()]
		for i, cover := range row {
			if cover > 0 {
				blend(p.img, p.wet.Min.X+i, y, c, float64(cover)/255)
			}
		}
		clear(row)
	}
	p.wet = image.Rectangle{}
}

// mask is how much of each pixel lies inside a ring.
type mask struct {
	alpha *image.Alpha
	fills vector.Rasterizer
}

// fill fills a ring; fewer than three points enclose nothing.
func (m *mask) fill(size image.Rectangle, r plane.Ring) *image.Alpha {
	if m.alpha == nil || m.alpha.Rect != size {
		m.alpha = image.NewAlpha(size)
	}
	clear(m.alpha.Pix)
	if len(r) < 3 {
		return m.alpha
	}
	z := &m.fills
	z.Reset(size.Dx(), size.Dy())
	corner := plane.Point{X: float64(size.Min.X), Y: float64(size.Min.Y)}
	for i, q := range r {
		if q = q.Sub(corner); i == 0 {
			z.MoveTo(float32(q.X), float32(q.Y))
		} else {
			z.LineTo(float32(q.X), float32(q.Y))
		}
	}
	z.ClosePath()
	z.Draw(m.alpha, size, image.Opaque, image.Point{})
	return m.alpha
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
