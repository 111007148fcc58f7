package picture

import (
	"image/color"

	"understructure/geometry/fit"
)

// Mode is what the colours of the mount say.
type Mode int

// The modes.
const (
	// Plain is the mount as it is, tinted where the tape strains or is very slack.
	Plain Mode = iota
	// Clearance has the colour and the hatching of the clearance at each point.
	Clearance
	modes
)

// A code is the number, from 0 to mostCode, by which a point of the mount finds its colour: it runs
// evenly over the range of what the mode shows, finely enough for the edge of a band to be smooth.
const mostCode = 511

// scale is the range of a mode, in millimetres: of girth in Plain, at the point in Clearance.
type scale struct{ from, to float64 }

var scales = [modes]scale{Plain: {-30, 100}, Clearance: {-10, 25}}

// asWanted is where nothing is to be said, and what a mount without a garment counts as.
var asWanted = [modes]float64{Plain: 15, Clearance: 4}

func (s scale) code(mm float64) float32 {
	return float32(mostCode * max(0, min(1, (mm-s.from)/(s.to-s.from))))
}

func (s scale) mm(code int) float64 { return s.from + (s.to-s.from)*float64(code)/mostCode }

// coded is the code of every point of the mesh.
func (b *Body) coded(m Mode) []float32 {
	if b.layers != nil && m == Plain {
		return b.layers
	}
	rounds := b.Clearance()
	byHeight := map[float64]int{}
	for i := range rounds {
		byHeight[rounds[i].Height] = i
	}
	out := make([]float32, 0, len(b.mesh.points))
	for _, z := range b.mesh.heights {
		i, known := byHeight[z]
		for j := range columns {
			code := scales[m].code(asWanted[m])
			if known && m == Plain {
				code = scales[m].code(rounds[i].Tape)
			} else if known {
				code = b.felt()[i][j]
			}
			out = append(out, code)
		}
	}
	return out
}

// feltCodes is the code of the clearance at every height and direction at which there is a garment.
func feltCodes(rounds []fit.Round) [][columns]float32 {
	out := make([][columns]float32, len(rounds))
	for i := range rounds {
		for j := range columns {
			out[i][j] = scales[Clearance].code(rounds[i].Felt(j))
		}
	}
	return out
}

// ramp is what every code looks like.
type ramp [mostCode + 1]shade

// shade is a colour and the hatching over it.
type shade struct {
	tone
	ink      tone
	hatch    int   // number of the hatching, 0 for none
	strength int32 // of the hatching, 0 to 256
}

func toneOf(c color.NRGBA) tone { return tone{int32(c.R), int32(c.G), int32(c.B)} }

func plainRamp(p Palette) (out ramp) {
	for code := range out {
		out[code].tone = toneOf(p.Tint(scales[Plain].mm(code)))
	}
	return out
}

// soft is over how many millimetres one band passes into the next, so that their edge is smooth.
const soft = 0.2

func clearanceRamp(p Palette) (out ramp) {
	legend := p.Legend()
	for code := range out {
		mm := scales[Clearance].mm(code)
		here := legend[fit.BandOf(mm)]
		next, t := here, 0.0
		if mm-here.From < soft/2 {
			next, t = legend[here.Band-1], 0.5-(mm-here.From)/soft
		} else if here.To-mm < soft/2 {
			next, t = legend[here.Band+1], 0.5-(here.To-mm)/soft
		}
		out[code].tone = toneOf(mix(here.Colour, next.Colour, t))
		if here.Hatch.Slope != 0 {
			out[code].ink, out[code].hatch = toneOf(here.Hatch.Colour), int(here.Band)+1
			out[code].strength = 256
			if next.Hatch.Slope == 0 {
				out[code].strength = int32(256 * (1 - 2*t))
			}
		}
	}
	return out
}
