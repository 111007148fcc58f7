package picture

import (
	"image"
	"image/color"

	"understructure/geometry/plane"
)

// Section draws the outlines at one height as seen from above by somebody who stands before the
// figure: its front is below, its right hand at the left. The room between mount and garment has the
// colour of the clearance; where the mount is larger than the garment the colour of strain.
func (b *Body) Section(img *image.RGBA, z float64, f Frame, p Palette) {
	if b == nil {
		return
	}
	built, garment := f.lay(b.Ring(Built, z)), f.lay(b.Ring(Garment, z))
	b.fillGap(img, filled(img.Rect, built), filled(img.Rect, garment), p)
	pen := pen{img: img, mask: newMask(img.Rect)}
	width := max(1.2, 1.6*f.Scale)
	pen.closed(f.lay(b.Ring(Core, z)), p.Faint, width, 3)
	pen.closed(f.lay(b.Ring(Form, z)), p.Faint, width, 3)
	pen.closed(built, mix(p.Skin, p.Ink, 0.45), width, 0)
	pen.closed(garment, p.Ink, width, 0)
}

// lay turns a ring so that the front lies below.
func (f Frame) lay(r plane.Ring) plane.Ring {
	return r.Map(func(q plane.Point) plane.Point { return f.at(-q.X, -q.Y) })
}

// fillGap colours each pixel by what lies over it: mount and garment, one of them, or neither.
func (b *Body) fillGap(img *image.RGBA, built, garment *image.Alpha, p Palette) {
	noGarment := true
	for _, g := range garment.Pix {
		noGarment = noGarment && g == 0
	}
	room := p.Slack
	room.A = 0x66
	for i := range built.Pix {
		m, g := float64(built.Pix[i])/255, float64(garment.Pix[i])/255
		if m == 0 && g == 0 {
			continue
		}
		if noGarment {
			g = m
		}
		x, y := img.Rect.Min.X+i%img.Rect.Dx(), img.Rect.Min.Y+i/img.Rect.Dx()
		layers := []struct {
			c     color.NRGBA
			cover float64
		}{{room, g * (1 - m)}, {p.Strain, m * (1 - g)}, {p.Skin, m * g}}
		for _, l := range layers {
			blend(img, x, y, l.c, l.cover)
		}
	}
}
