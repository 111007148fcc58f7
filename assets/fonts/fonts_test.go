package fonts

import (
	"strings"
	"testing"
)

func TestLettersAndFractionsAreThere(t *testing.T) {
	for _, s := range []string{"ß œ Œ Ÿ ñ ¿ ¡ é à ç", "zażółć gęślą jaźń", "Příliš žluťoučký kůň", "Ελληνικά ώ", "Кириллица ё", "½ ¼ ¾ ⅓ ⅔ ⅛ ⅜ ⅝ ⅞", "× ± ° – — … − ≤ ≥ ² ³ €"} {
		if got := Readable(s); got != s {
			t.Errorf("Readable(%q) = %q, want it unchanged", s, got)
		}
	}
}

func TestReadable(t *testing.T) {
	for in, want := range map[string]string{
		"a\tb\r\nc":                    "a b c",
		"\x00\x1b[31mred":              "[31mred",
		"\u202eevil\u202c":             "evil",
		"漢字":                           "□□",
		"bad \xff byte":                "bad □ byte",
		"  ":                           "",
		"dress\u00ad\ufeff \U0001f457": "dress □",
	} {
		if got := Readable(in); got != want {
			t.Errorf("Readable(%q) = %q, want %q", in, got, want)
		}
	}
}

// A digit is 1139 of 2048 units wide, as in other fonts of the same measures (from memory), and
// all digits are of one width, so that columns of numbers stand under each other.
func TestWidth(t *testing.T) {
	for _, d := range "0123456789" {
		if got := Regular.Width(string(d), 2048); got < 1138.5 || got > 1139.5 {
			t.Errorf("width of %c = %.2f, want 1139", d, got)
		}
	}
}

func TestShorten(t *testing.T) {
	long := strings.Repeat("silk taffeta ", 40)
	for width := 0.0; width < 200; width += 7 {
		got := Regular.Shorten(long, 3, width)
		if w := Regular.Width(got, 3); w > width && got != "…" {
			t.Errorf("Shorten to %g: %q is %g wide", width, got, w)
		}
	}
	if got := Regular.Shorten("silk", 3, 100); got != "silk" {
		t.Errorf("a line that fits became %q", got)
	}
}

func TestWrapKeepsEveryWord(t *testing.T) {
	text := "Hot knives and hot wires release fumes: cut with ventilation, away from the garment."
	lines := Bold.Wrap(text, 3, 40)
	if got := strings.Join(lines, " "); got != text {
		t.Errorf("wrapped and joined: %q", got)
	}
	for _, l := range lines {
		if w := Bold.Width(l, 3); w > 40 {
			t.Errorf("line %q is %g wide, want at most 40", l, w)
		}
	}
}
