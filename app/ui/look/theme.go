// Package look is the program's appearance: its colours, light and dark, and its sizes.
// It does not lay anything out.
package look

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"understructure/app/ui/picture"
)

// Appearance is light, dark, or as the desktop wants it.
type Appearance string

// The appearances.
const (
	AsDesktop Appearance = "as the desktop"
	Light     Appearance = "light"
	Dark      Appearance = "dark"
)

// The colours of the pictures, beside those of the toolkit.
const (
	ColorInk    fyne.ThemeColorName = "understructure.ink"
	ColorFaint  fyne.ThemeColorName = "understructure.faint"
	ColorForm   fyne.ThemeColorName = "understructure.form"
	ColorWanted fyne.ThemeColorName = "understructure.wanted"
	ColorSkin   fyne.ThemeColorName = "understructure.skin"
	ColorStrain fyne.ThemeColorName = "understructure.strain"
	ColorSlack  fyne.ThemeColorName = "understructure.slack"
)

// look is the program's theme: the toolkit's with our colours and a little less air.
type look struct {
	fyne.Theme
	appearance Appearance
}

// New returns the theme.
func New(a Appearance) fyne.Theme { return look{theme.DefaultTheme(), a} }

// Palette reads the picture's colours from the theme in force.
func Palette() picture.Palette {
	c := func(n fyne.ThemeColorName) color.NRGBA {
		return color.NRGBAModel.Convert(theme.Color(n)).(color.NRGBA)
	}
	return picture.Palette{Ink: c(ColorInk), Faint: c(ColorFaint), Form: c(ColorForm), Wanted: c(ColorWanted), Skin: c(ColorSkin), Strain: c(ColorStrain), Slack: c(ColorSlack)}
}

// shades are the colours of one variant.
type shades struct {
	colours map[fyne.ThemeColorName]color.Color
	picture picture.Palette
}

func rgb(hex uint32) color.NRGBA { return rgba(hex<<8 | 0xff) }

func rgba(hex uint32) color.NRGBA {
	return color.NRGBA{uint8(hex >> 24), uint8(hex >> 16), uint8(hex >> 8), uint8(hex)}
}

// The grounds are those of unbleached cloth and of a store room with the light off; the one
// accent, a bottle green, keeps clear of the colours of strain and slack.
var (
	lightShades = shades{picture: picture.Light, colours: map[fyne.ThemeColorName]color.Color{
		theme.ColorNameBackground:          rgb(0xfaf8f4),
		theme.ColorNameForeground:          rgb(0x2c2a29),
		theme.ColorNamePlaceHolder:         rgb(0x756f68),
		theme.ColorNameDisabled:            rgb(0xa39c93),
		theme.ColorNameInputBackground:     rgb(0xffffff),
		theme.ColorNameInputBorder:         rgb(0xcfc8be),
		theme.ColorNameSeparator:           rgb(0xe4ded4),
		theme.ColorNameButton:              rgb(0xece7de),
		theme.ColorNameHeaderBackground:    rgb(0xf3efe8),
		theme.ColorNameMenuBackground:      rgb(0xfffdfa),
		theme.ColorNameOverlayBackground:   rgb(0xfffdfa),
		theme.ColorNameShadow:              rgba(0x2c2a2926),
		theme.ColorNameHover:               rgba(0x2c2a2912),
		theme.ColorNamePrimary:             rgb(0x1f6357),
		theme.ColorNameForegroundOnPrimary: rgb(0xffffff),
		theme.ColorNameFocus:               rgba(0x1f635733),
		theme.ColorNameSelection:           rgba(0x1f63572b),
		theme.ColorNameWarning:             rgb(0x9c3309),
		theme.ColorNameError:               rgb(0x9c3309),
	}}
	darkShades = shades{picture: picture.Dark, colours: map[fyne.ThemeColorName]color.Color{
		theme.ColorNameBackground:          rgb(0x1d1e20),
		theme.ColorNameForeground:          rgb(0xe9e5dd),
		theme.ColorNamePlaceHolder:         rgb(0x948f88),
		theme.ColorNameDisabled:            rgb(0x6d6a66),
		theme.ColorNameInputBackground:     rgb(0x26282b),
		theme.ColorNameInputBorder:         rgb(0x44464a),
		theme.ColorNameSeparator:           rgb(0x35373a),
		theme.ColorNameButton:              rgb(0x313337),
		theme.ColorNameHeaderBackground:    rgb(0x242629),
		theme.ColorNameMenuBackground:      rgb(0x292b2e),
		theme.ColorNameOverlayBackground:   rgb(0x292b2e),
		theme.ColorNameShadow:              rgba(0x00000040),
		theme.ColorNameHover:               rgba(0xffffff14),
		theme.ColorNamePrimary:             rgb(0x7cc4b4),
		theme.ColorNameForegroundOnPrimary: rgb(0x10201d),
		theme.ColorNameFocus:               rgba(0x7cc4b440),
		theme.ColorNameSelection:           rgba(0x7cc4b433),
		theme.ColorNameWarning:             rgb(0xff9a63),
		theme.ColorNameError:               rgb(0xff9a63),
	}}
)

// Color looks in our colours first.
func (l look) Color(n fyne.ThemeColorName, v fyne.ThemeVariant) color.Color {
	switch l.appearance {
	case Light:
		v = theme.VariantLight
	case Dark:
		v = theme.VariantDark
	}
	s := lightShades
	if v == theme.VariantDark {
		s = darkShades
	}
	if c, ok := s.colours[n]; ok {
		return c
	}
	if c, ok := pictureColour(s.picture, n); ok {
		return c
	}
	return l.Theme.Color(n, v)
}

func pictureColour(p picture.Palette, n fyne.ThemeColorName) (color.Color, bool) {
	c, ok := map[fyne.ThemeColorName]color.NRGBA{
		ColorInk: p.Ink, ColorFaint: p.Faint, ColorForm: p.Form, ColorWanted: p.Wanted, ColorSkin: p.Skin,
		ColorStrain: p.Strain, ColorSlack: p.Slack,
	}[n]
	return c, ok
}

// Size is the toolkit's with smaller entries and text, so that a sheet of measurements fits a small screen.
func (l look) Size(n fyne.ThemeSizeName) float32 {
	switch n {
	case theme.SizeNameText:
		return 13
	case theme.SizeNameCaptionText:
		return 12
	case theme.SizeNameSubHeadingText:
		return 16
	case theme.SizeNameInnerPadding:
		return 6
	case theme.SizeNameInputRadius:
		return 4
	}
	return l.Theme.Size(n)
}
