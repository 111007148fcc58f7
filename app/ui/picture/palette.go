package picture

import (
	"image/color"
	"math"

	"understructure/geometry/fit"
	"understructure/patterns/swatch"
)

// Palette holds the colours of a picture. Strain, slack and the quiet middle differ in lightness as
// well as in hue, so that eyes that see no red, no green or no colour at all tell them apart.
type Palette struct {
	Ink    color.NRGBA // outlines of the garment, tapes
	Faint  color.NRGBA // rules, axes, words of lesser weight
	Form   color.NRGBA // form and foam, seen through the mount
	Wanted color.NRGBA // outline that the mount is meant to have
	Skin   color.NRGBA // the mount where it sits as wanted
	Strain color.NRGBA // the mount is larger than the garment
	Slack  color.NRGBA // the garment hangs loose
}

// Light is for a light ground, Dark for a dark one.
var (
	Light = Palette{
		Ink:    color.NRGBA{0x2c, 0x2a, 0x29, 0xff},
		Faint:  color.NRGBA{0x8b, 0x84, 0x7c, 0xff},
		Form:   color.NRGBA{0x6a, 0x62, 0x59, 0xff},
		Wanted: color.NRGBA{0x2a, 0x85, 0x72, 0xff},
		Skin:   color.NRGBA{0xe9, 0xdf, 0xcf, 0xff},
		Strain: color.NRGBA{0xb5, 0x3a, 0x0c, 0xff},
		Slack:  color.NRGBA{0x5b, 0x8f, 0xd0, 0xff},
	}
	Dark = Palette{
		Ink:    color.NRGBA{0xf0, 0xeb, 0xe2, 0xff},
		Faint:  color.NRGBA{0x8d, 0x88, 0x82, 0xff},
		Form:   color.NRGBA{0xd9, 0xcd, 0xb6, 0xff},
		Wanted: color.NRGBA{0x7c, 0xe0, 0xc8, 0xff},
		Skin:   color.NRGBA{0x90, 0x87, 0x79, 0xff},
		Strain: color.NRGBA{0xff, 0x9d, 0x66, 0xff},
		Slack:  color.NRGBA{0x22, 0x54, 0xb4, 0xff},
	}
)

// Legend says how each band of clearance is shown, from strain to slack: for whoever explains a picture in the
// Clearance mode.
func (p Palette) Legend() [fit.Bands]swatch.Swatch {
	return swatch.Ground{
		Strain: p.Strain, Quiet: p.Skin, Slack: p.Slack,
		Dark: color.NRGBA{0x1d, 0x1b, 0x1a, 0xff}, Light: color.NRGBA{0xff, 0xfd, 0xfa, 0xff},
	}.Set()
}

// The clearances, in millimetres of girth, between which a colour fades in. Strain shows fully at
// its first centimetre; slack shows from two centimetres more than a common ease, fully at six.
const (
	strainFull = -10.0
	slackFrom  = 35.0
	slackFull  = 75.0
)

// Tint is the colour of the mount where the tape has this clearance; NaN is no garment.
func (p Palette) Tint(clearance float64) color.NRGBA {
	switch {
	case math.IsNaN(clearance):
		return p.Skin
	case clearance < 0:
		return mix(p.Skin, p.Strain, 0.45+0.55*min(clearance/strainFull, 1))
	case clearance > slackFrom:
		return mix(p.Skin, p.Slack, min((clearance-slackFrom)/(slackFull-slackFrom), 1))
	}
	return p.Skin
}

var mix = swatch.Mix
