package picture

import "image"

// tone is a colour that is still to be lit.
type tone struct{ r, g, b int32 }

// hatched is the colour of a code at a pixel, hatching and all.
func (p *Painter) hatched(code, x, y int) tone {
	s := &p.ramp[code]
	if s.hatch == 0 {
		return s.tone
	}
	over := p.hatching[s.hatch-1].at(x, y) * s.strength
	return tone{
		s.r + (s.ink.r-s.r)*over>>16,
		s.g + (s.ink.g-s.g)*over>>16,
		s.b + (s.ink.b-s.b)*over>>16,
	}
}

// lay turns samples into colours. What lies in the shade is a little warmer.
func (p *Painter) lay(img *image.RGBA) {
	g := &p.grid
	for y := g.box.Min.Y; y < g.box.Max.Y; y++ {
		row := g.samples[y*g.w+g.box.Min.X : y*g.w+g.box.Max.X]
		pix := img.Pix[y*img.Stride+4*g.box.Min.X:][:4*len(row)]
		for i := range row {
			s := &row[i]
			if s.near == nothing {
				continue
			}
			c := p.hatched(int(s.code)&mostCode, g.box.Min.X+i, y)
			light := int32(s.light * 256)
			warm := (256 - light) >> 4
			q := pix[4*i : 4*i+4 : 4*i+4]
			q[0], q[1], q[2], q[3] = uint8(c.r*(light+warm)>>8), uint8(c.g*light>>8), uint8(c.b*(light-warm)>>8), 255
		}
	}
}
