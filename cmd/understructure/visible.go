package main

import (
	"io"
	"strings"
	"unicode"
)

// visible is a terminal that what is printed cannot take over: whatever it would obey, or what turns the
// direction of reading, comes out as a question mark. Records and the names of files come from elsewhere.
type visible struct{ terminal io.Writer }

func (v visible) Write(b []byte) (int, error) {
	shown := strings.Map(func(r rune) rune {
		if r != '\n' && (unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r)) {
			return '?'
		}
		return r
	}, strings.ToValidUTF8(string(b), "?"))
	if _, err := io.WriteString(v.terminal, shown); err != nil {
		return 0, err
	}
	return len(b), nil
}
