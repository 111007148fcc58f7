package picture

import (
	"image"
	"image/color"
	"math"

	"understructure/geometry/fit"
	"understructure/geometry/plane"
)

// Cut is how one height of a body is shown from above.
type Cut struct {
	Height  float64 // mm
	Frame   Frame
	Palette Palette
	Mode    Mode
	// Dragged is an outline that somebody is pulling at, drawn in the wanted colour; nil for none.
	Dragged plane.Ring
}

// Section draws the outlines at one height as seen from above by somebody who stands before the
// figure: its front is below, its right hand at the left. Plainly, the room between mount and
// garment has the colour of slack and what is too large that of strain; by Clearance both have the colours and
// hatching of the clearance, and what is as wanted is left empty.
func (p *Painter) Section(img *image.RGBA, b *Body, c Cut) {
	if b == nil || img.Rect.Empty() {
		return
	}
	f, z := c.Frame, c.Height
	built, garment := f.lay(b.Ring(Built, z)), f.lay(b.Ring(Garment, z))
	mount := p.masks[0].fill(img.Rect, built)
	cloth := mount // nothing to compare with
	if len(garment) > 0 {
		cloth = p.masks[1].fill(img.Rect, garment)
	}
	p.fillGap(img, mount, cloth, b, c)
	width := min(max(1.2, 1.4*f.Scale), 2.4)
	pen := p.pen.on(img)
	pen.closed(f.lay(b.Ring(Core, z)), c.Palette.Form, width, 3)
	pen.closed(f.lay(b.Ring(Form, z)), c.Palette.Form, width, 3)
	pen.closed(built, mix(c.Palette.Skin, c.Palette.Ink, 0.45), width, 0)
	if c.Dragged == nil {
		pen.closed(f.lay(b.Ring(Wanted, z)), c.Palette.Wanted, 0.7*width, 0)
	} else {
		pen.closed(f.lay(b.Ring(Wanted, z)), c.Palette.Wanted, 0.7*width, 3)
		pen.closed(f.lay(c.Dragged), c.Palette.Wanted, 1.5*width, 0)
	}
	pen.closed(garment, c.Palette.Ink, width, 0)
}

// Section draws the body at one height, plainly. Who draws many pictures keeps a Painter.
func (b *Body) Section(img *image.RGBA, z float64, f Frame, p Palette) {
	painter := painters.Get().(*Painter)
	defer painters.Put(painter)
	painter.Section(img, b, Cut{Height: z, Frame: f, Palette: p})
}

// lay turns a ring so that the front lies below.
func (f Frame) lay(r plane.Ring) plane.Ring {
	return r.Map(func(q plane.Point) plane.Point { return f.at(-q.X, -q.Y) })
}

// turn is the direction of a pixel of a section, as package section counts them.
func (f Frame) turn(x, y float64) float64 {
	t := math.Atan2(y-f.Y, f.X-x) * columns / (2 * math.Pi)
	return math.Mod(t+columns, columns)
}

// fillGap colours each pixel by what lies over it: mount and garment, one of them, or neither.
func (p *Painter) fillGap(img *image.RGBA, built, garment *image.Alpha, b *Body, c Cut) {
	gap := p.gap(img, b, c)
	w := img.Rect.Dx()
	for i, m := range built.Pix {
		g := garment.Pix[i]
		if m == 0 && g == 0 {
			continue
		}
		x, y := img.Rect.Min.X+i%w, img.Rect.Min.Y+i/w
		mount, cloth := float64(m)/255, float64(g)/255
		if room := cloth * (1 - mount); room > 0 {
			blend(img, x, y, gap(x, y, false), room)
		}
		if strain := mount * (1 - cloth); strain > 0 {
			blend(img, x, y, gap(x, y, true), strain)
		}
		if both := mount * cloth; both > 0 {
			blend(img, x, y, c.Palette.Skin, both)
		}
	}
}

// gap returns the colour of a pixel between mount and garment.
func (p *Painter) gap(img *image.RGBA, b *Body, c Cut) func(x, y int, strain bool) color.NRGBA {
	const through = 0x66
	room := c.Palette.Slack
	room.A = through
	i, t, ok := between(b.Clearance(), c.Height)
	if c.Mode == Plain || !ok {
		return func(_, _ int, strain bool) color.NRGBA {
			if strain {
				return c.Palette.Strain
			}
			return room
		}
	}
	p.colours(rampKey{c.Palette, Clearance, false, true})
	for band, look := range c.Palette.Legend() {
		p.hatching[band].make(look.Hatch, 1.2, img.Rect.Dx(), img.Rect.Dy(), 0, 0)
	}
	lower, upper := &b.felt()[i], &b.felt()[i+1]
	const strained = 0
	return func(x, y int, strain bool) color.NRGBA {
		j := int(c.Frame.turn(float64(x)+0.5, float64(y)+0.5)) & (columns - 1)
		code := int(lower[j] + float32(t)*(upper[j]-lower[j]))
		if strain {
			code = strained
		}
		if fit.BandOf(scales[Clearance].mm(code)) == fit.AsWanted {
			return color.NRGBA{}
		}
		h := p.hatched(code, x-img.Rect.Min.X, y-img.Rect.Min.Y)
		return color.NRGBA{uint8(h.r), uint8(h.g), uint8(h.b), 0xff}
	}
}
