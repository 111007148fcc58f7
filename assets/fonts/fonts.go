// Package fonts holds the letters of everything printed: Liberation Sans, regular and bold
// (SIL Open Font License 1.1, OFL.txt), and says how wide a line of them is.
// It does not shape text: no ligatures, and letters that run from right to left stand as they come.
package fonts

import (
	"strings"
	"sync"
	"unicode"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Face is one weight of the font.
type Face struct {
	Name string // as the font file has it for PostScript
	TTF  []byte
	once sync.Once
	em   map[rune]float64 // advance of every letter, as a part of the letter size
}

// The two weights. Both hold the same letters.
var (
	Regular = &Face{Name: "LiberationSans", TTF: liberationsansregular.TTF}
	Bold    = &Face{Name: "LiberationSans-Bold", TTF: liberationsansbold.TTF}
)

// The reach of letters above and below the base line, as a part of the letter size: capitals
// (1409 of 2048 units in the font), capitals with accents, and tails (1854 and 434 units).
const (
	CapHeight = 0.688
	Ascent    = 0.905
	Descent   = 0.212
)

// Missing stands in print for a letter that the font lacks.
const Missing = '□'

// Of returns the bold face or the regular one.
func Of(bold bool) *Face {
	if bold {
		return Bold
	}
	return Regular
}

// advances reads the width of every letter of the basic plane, once.
func (f *Face) advances() map[rune]float64 {
	f.once.Do(func() {
		parsed, err := sfnt.Parse(f.TTF)
		if err != nil {
			panic("fonts: the embedded font cannot be read")
		}
		f.em = map[rune]float64{}
		var b sfnt.Buffer
		unit := fixed.I(int(parsed.UnitsPerEm()))
		for r := rune(0x20); r < 0x10000; r++ {
			glyph, err := parsed.GlyphIndex(&b, r)
			if err != nil || glyph == 0 {
				continue
			}
			if a, err := parsed.GlyphAdvance(&b, glyph, unit, font.HintingNone); err == nil {
				f.em[r] = float64(a) / float64(unit)
			}
		}
	})
	return f.em
}

// Has reports whether the font can show a letter.
func (f *Face) Has(r rune) bool {
	_, ok := f.advances()[r]
	return ok
}

// Width is the length of a readable line set at a letter size, in the unit of that size.
func (f *Face) Width(s string, size float64) float64 {
	em, w := f.advances(), 0.0
	for _, r := range s {
		w += em[r]
	}
	return w * size
}

// Readable makes one printable line of any text: every run of white space becomes one space,
// what cannot be seen is dropped, and a letter that the font lacks becomes Missing.
func Readable(s string) string {
	var b strings.Builder
	for _, r := range strings.Join(strings.Fields(s), " ") {
		switch {
		case unicode.IsControl(r), unicode.Is(unicode.Cf, r), unicode.Is(unicode.Variation_Selector, r):
		case r == unicode.ReplacementChar, !Regular.Has(r), !Bold.Has(r):
			b.WriteRune(Missing)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
