package dxf

import (
	"fmt"
	"strings"

	"understructure/assets/fonts"
)

// longest is how many characters a text may have in release 12.
const longest = 255

// escaped writes any text as one line of ASCII that says the same to a reader of DXF, cut short where it is too
// long. A letter beyond ASCII is written \U+ and its number, and so is a backslash, which might begin such a number. A
// caret would begin a control character; with a space behind it, it stands for itself. Two percent signs would begin
// a sign or an underline; they are set apart, since readers do not agree on how to write them.
func escaped(s string) string {
	var b strings.Builder
	text := strings.ReplaceAll(strings.TrimSpace(fonts.Readable(s)), "%%", "% %")
	for _, r := range strings.ReplaceAll(text, "%%", "% %") { // of three in a row two are left
		written := string(r)
		switch {
		case r == '^':
			written = "^ "
		case r > 0xffff:
			written = "?" // the number has four digits
		case r > 0x7e || r == '\\':
			written = fmt.Sprintf("\\U+%04X", r)
		}
		if b.Len()+len(written) > longest {
			break
		}
		b.WriteString(written)
	}
	return b.String()
}
