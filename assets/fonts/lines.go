package fonts

import (
	"sort"
	"strings"
)

const ellipsis = "…"

// Shorten returns the line, or as much of it as fits into a width with an ellipsis after it.
func (f *Face) Shorten(s string, size, width float64) string {
	if f.Width(s, size) <= width {
		return s
	}
	letters := []rune(s)
	fits := func(n int) bool { return f.Width(string(letters[:n])+ellipsis, size) <= width }
	n := sort.Search(len(letters), func(n int) bool { return !fits(n + 1) })
	return strings.TrimRight(string(letters[:n]), " ,;–·") + ellipsis
}

// Wrap breaks a text at its spaces into lines no wider than a width; a single word that is wider
// is shortened. The empty text has no lines.
func (f *Face) Wrap(s string, size, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		longer := strings.TrimSpace(line + " " + word)
		if line != "" && f.Width(longer, size) > width {
			lines = append(lines, line)
			longer = word
		}
		line = f.Shorten(longer, size, width)
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}
