package record

import (
	"encoding/hex"
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"
)

func (d *decoder) text(into *string, longest int) func(string, node) {
	return func(path string, n node) {
		s, ok := n.(string)
		if !ok || utf8.RuneCountInString(s) > longest || strings.ContainsFunc(s, unicode.IsControl) {
			d.refuse(path, written(n), "is not possible", oneLine(longest))
			return
		}
		*into = s
	}
}

func oneLine(longest int) string {
	return fmt.Sprintf("text of at most %d characters on one line", longest)
}

// lines is text that may be broken into lines.
func (d *decoder) lines(into *string, longest int) func(string, node) {
	return func(path string, n node) {
		s, ok := n.(string)
		control := func(r rune) bool { return r != '\n' && unicode.IsControl(r) }
		if !ok || utf8.RuneCountInString(s) > longest || strings.ContainsFunc(s, control) {
			d.refuse(path, written(n), "is not possible", fmt.Sprintf("text of at most %d characters", longest))
			return
		}
		*into = s
	}
}

func (d *decoder) word(into *string, words []string) func(string, node) {
	return func(path string, n node) {
		s, ok := n.(string)
		if !ok || !slices.Contains(words, s) {
			d.refuse(path, written(n), "is not possible", strings.Join(words, ", "))
			return
		}
		*into = s
	}
}

func (d *decoder) date(into *string) func(string, node) {
	return func(path string, n node) {
		s, ok := n.(string)
		if _, err := time.Parse(time.DateOnly, s); !ok || err != nil {
			d.refuse(path, written(n), "is not possible", "a date as yyyy-mm-dd")
			return
		}
		*into = s
	}
}

// digest is the SHA-256 of a file.
func (d *decoder) digest(into *string) func(string, node) {
	return func(path string, n node) {
		s, ok := n.(string)
		if b, err := hex.DecodeString(s); !ok || err != nil || len(b) != 32 {
			d.refuse(path, written(n), "is not possible", "64 hexadecimal digits")
			return
		}
		*into = strings.ToLower(s)
	}
}

// blank takes empty text for a value that is absent.
func blank(read func(string, node)) func(string, node) {
	return func(path string, n node) {
		if n != "" {
			read(path, n)
		}
	}
}

// must refuses an object in which the word of a key is not given.
func (d *decoder) must(path, key, word string, words []string) {
	if word == "" {
		d.refuse(join(path, key), "", "must be given", strings.Join(words, ", "))
	}
}
