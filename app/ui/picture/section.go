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
	mount, cloth := filled(img.Rect, built), filled(img.Rect, garment)
	if len(garment) == 0 {
		cloth = mount // nothing to compare with
	}
	fillGap(img, mount, cloth, p)
	pen := newPen(img)
	width := min(max(1.2, 1.4*f.Scale), 2.4)
	pen.closed(f.lay(b.Ring(Core, z)), p.Form, width, 3)
	pen.closed(f.lay(b.Ring(Form, z)), p.Form, width, 3)
	pen.closed(built, mix(p.Skin, p.Ink, 0.45), width, 0)
	pen.closed(f.lay(b.Ring(Wanted, z)), p.Wanted, 0.7*width, 0)
	pen.closed(garment, p.Ink, width, 0)
}

// lay turns a ring so that the front lies below.
func (f Frame) lay(r plane.Ring) plane.Ring {
	return r.Map(func(q plane.Point) plane.Point { return f.at(-q.X, -q.Y) })
}

// fillGap colours each pixel by what lies over it: mount and garment, one of them, or neither.
func fillGap(img *image.RGBA, built, garment *image.Alpha, p Palette) {
	room := p.Slack
	room.A = 0x66
	w := img.Rect.Dx()
	for i, b := range built.Pix {
		g := garment.Pix[i]
		if b == 0 && g == 0 {
			continue
		}
		x, y := img.Rect.Min.X+i%w, img.Rect.Min.Y+i/w
		mount, cloth := float64(b)/255, float64(g)/255
		for _, l := range [3]struct {
			c     color.NRGBA
			cover float64
		}{{room, cloth * (1 - mount)}, {p.Strain, mount * (1 - cloth)}, {p.Skin, mount * cloth}} {
			if l.cover > 0 {
				blend(img, x, y, l.c, l.cover)
			}
		}
	}
}
