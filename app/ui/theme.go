package ui

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"understructure/app/ui/control"
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

// look is the program's theme: the toolkit's with our colours and a little less air.
type look struct {
	fyne.Theme
	appearance Appearance
}

func newLook(a Appearance) fyne.Theme { return look{theme.DefaultTheme(), a} }

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
		control.ColorInk: p.Ink, control.ColorFaint: p.Faint, control.ColorSkin: p.Skin,
		control.ColorStrain: p.Strain, control.ColorSlack: p.Slack,
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
