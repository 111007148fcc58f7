package folder

import (
	"bytes"
	"encoding/json"
	"io"
)

// broken is how deep in a plan every value has a line of its own; below it, such as
// inside an outline, everything stands on one line.
const broken = 3

// readable writes v as JSON that a person can look through and a line-based tool can compare.
func readable(w io.Writer, v any) error {
	var compact bytes.Buffer
	e := json.NewEncoder(&compact)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return err
	}
	_, err := w.Write(lines(compact.Bytes()))
	return err
}

// lines breaks compact JSON at the values that are not too deep.
func lines(compact []byte) []byte {
	var out bytes.Buffer
	depth, quoted := 0, false
	newline := func() {
		out.WriteByte('\n')
		for range depth {
			out.WriteByte(' ')
		}
	}
	for i, c := range compact {
		switch {
		case c == '"' && !escaped(compact[:i]):
			quoted = !quoted
		case quoted:
		case c == '{' || c == '[':
			depth++
			out.WriteByte(c)
			if depth <= broken && compact[i+1] != c+2 { // in ASCII a bracket's partner stands two places on
				newline()
			}
			continue
		case c == '}' || c == ']':
			depth--
			if depth < broken && compact[i-1] != c-2 {
				newline()
			}
		case c == ',' && depth <= broken:
			out.WriteByte(c)
			newline()
			continue
		}
		out.WriteByte(c)
	}
	return out.Bytes()
}

// escaped reports whether what follows the text stands behind an odd number of backslashes.
func escaped(text []byte) bool {
	n := len(text) - len(bytes.TrimRight(text, `\`))
	return n%2 == 1
}
