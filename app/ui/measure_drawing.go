package ui

import (
	"image"
	"image/color"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"understructure/app/document"
	"understructure/app/ui/look"
	"understructure/geometry/measure"
	"understructure/patterns/drawing"
	"understructure/patterns/preview"
	"understructure/patterns/tapes"
)

// tapeOf returns what draws where the tape of a key path goes, in the colours in force; no path is the
// part without a tape.
func tapeOf(d *document.Document, part tapes.Part) func(path string, width, height int) image.Image {
	return func(path string, width, height int) image.Image {
		wearer := d.Record().Object.Wearer
		drawn := tapes.Plain(part, wearer)
		if p, key, ok := partOf(path); ok {
			if with, ok := tapes.Of(p, key, wearer); ok {
				drawn = with
			}
		}
		ink := tapes.Ink{Cloth: shade(theme.ColorNameButton), Line: shade(look.ColorFaint), Tape: shade(theme.ColorNamePrimary)}
		return preview.Tape(drawn, min(width, height), ink)
	}
}

// partOf is the part and the measurement of a key path such as "garment.bodice.waist_girth".
func partOf(path string) (tapes.Part, measure.Key, bool) {
	names := strings.Split(path, ".")
	if len(names) != 3 {
		return "", "", false
	}
	part := tapes.Part(names[1])
	if names[0] == "form" {
		part = tapes.Form
	}
	return part, measure.Key(names[2]), true
}

// shade is a colour of the theme in force, without its transparency.
func shade(n fyne.ThemeColorName) drawing.Colour {
	c := color.NRGBAModel.Convert(theme.Color(n)).(color.NRGBA)
	return drawing.Colour{R: c.R, G: c.G, B: c.B}
}
