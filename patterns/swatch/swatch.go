// Package swatch says how the clearance of a mount is shown, band by band: in which colour, and
// with which hatching, so that it is told apart by eyes that see no red, no green, no blue or no
// colour, and on a grey print. Too little room is warm and its hatching rises to the right; too much is
// cool and its hatching falls; the more of either, the denser the lines. As wanted is quiet.
// It does not decide where a band ends, nor draw a figure.
package swatch

import (
	"image/color"
	"math"

	"understructure/geometry/fit"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
)

// Swatch is how one band of clearance looks.
type Swatch struct {
	Band fit.Band
	// The band lies between these clearances, in millimetres at the point; the outer bands are open, ±Inf.
	From, To float64
	Colour   color.NRGBA
	Hatch    Hatch
}

// Girth returns the limits of the band as millimetres of girth, were the room the same all round (Steiner).
func (s Swatch) Girth() (from, to float64) { return 2 * math.Pi * s.From, 2 * math.Pi * s.To }

// Hatch is parallel lines at half a right angle.
type Hatch struct {
	Slope  int     // 1 rises to the right, -1 falls, 0 is no hatching
	Gap    float64 // from the middle of a line to that of the next, in line widths
	Colour color.NRGBA
}

// Ground is the colours that a set of swatches is mixed from.
type Ground struct {
	Strain, Quiet, Slack color.NRGBA // where there is least room, as wanted, and most
	Dark, Light          color.NRGBA // what hatching is drawn with, whichever stands out more
}

// Paper is for white paper.
var Paper = Ground{
	Strain: color.NRGBA{0xb5, 0x3a, 0x0c, 0xff},
	Quiet:  color.NRGBA{0xf4, 0xee, 0xe3, 0xff},
	Slack:  color.NRGBA{0x5b, 0x8f, 0xd0, 0xff},
	Dark:   color.NRGBA{0x2c, 0x2a, 0x29, 0xff},
	Light:  color.NRGBA{0xff, 0xff, 0xff, 0xff},
}

// looks are, for each band, how much of strain and of slack is mixed into the quiet colour, and
// the hatching: chosen so that no two bands are as light as each other.
var looks = [fit.Bands]struct {
	strain, slack float64
	slope         int
	gap           float64
}{
	fit.Straining: {1, 0, 1, 3.5},
	fit.Touching:  {0.42, 0, 1, 8},
	fit.AsWanted:  {},
	fit.Slack:     {0, 0.42, -1, 9},
	fit.VerySlack: {0, 1, -1, 4.5},
}

// Set returns the swatches of all bands, from too little room to too much.
func (g Ground) Set() [fit.Bands]Swatch {
	var out [fit.Bands]Swatch
	for b, l := range looks {
		s := Swatch{Band: fit.Band(b), Colour: Mix(Mix(g.Quiet, g.Strain, l.strain), g.Slack, l.slack)}
		s.From, s.To = s.Band.Limits()
		if l.slope != 0 {
			s.Hatch = Hatch{Slope: l.slope, Gap: l.gap, Colour: g.line(s.Colour)}
		}
		out[b] = s
	}
	return out
}

// stand is how strongly hatching is drawn: so that it is read and yet leaves the colour its say.
const stand = 0.62

// line is the colour of hatching over another.
func (g Ground) line(over color.NRGBA) color.NRGBA {
	away := func(c color.NRGBA) float64 { return math.Abs(brightness(c) - brightness(over)) }
	if away(g.Dark) > away(g.Light) {
		return Mix(over, g.Dark, stand)
	}
	return Mix(over, g.Light, stand)
}

// brightness is the luma of Rec. 709, 0 to 255.
func brightness(c color.NRGBA) float64 {
	return 0.2126*float64(c.R) + 0.7152*float64(c.G) + 0.0722*float64(c.B)
}

// Mix is so much of the way from a to b, from 0 to 1.
func Mix(a, b color.NRGBA, t float64) color.NRGBA {
	m := func(x, y uint8) uint8 { return uint8(math.Round(float64(x) + t*(float64(y)-float64(x)))) }
	return color.NRGBA{m(a.R, b.R), m(a.G, b.G), m(a.B, b.B), m(a.A, b.A)}
}

// Lines returns the hatching of a box, each line from one edge of it to another, drawn with the pen width given, y up.
func (h Hatch) Lines(box drawing.Box, width float64) [][2]plane.Point {
	if h.Slope == 0 {
		return nil
	}
	var out [][2]plane.Point
	step := h.Gap * width * math.Sqrt2 // along an edge
	wide, high := box.Width(), box.Height()
	for at := step / 2; at < wide+high; at += step {
		// The line that leaves the lower edge, or the right one produced, at distance at from the corner.
		a := plane.Point{X: min(at, wide), Y: max(at-wide, 0)}
		b := plane.Point{X: max(at-high, 0), Y: min(at, high)}
		if h.Slope > 0 {
			a.X, b.X = wide-a.X, wide-b.X
		}
		out = append(out, [2]plane.Point{box.Lo.Add(a), box.Lo.Add(b)})
	}
	return out
}
