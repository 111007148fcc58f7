package batch

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// longest is how long a name may be, in bytes: file systems allow 255 and people read 100.
const longest = 100

// Unnamed stands for a name of which nothing is left.
const Unnamed = "unnamed"

// SafeName makes of any text a name that every file system takes for a file or folder and no shell for
// anything else: letters and digits of every script, with dots, hyphens and underscores inside; what is not one
// of these becomes an underscore. What Windows keeps for its devices gets one in front (Microsoft, "Naming Files, Paths,
// and Namespaces").
func SafeName(text string) string {
	name := strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsMark(r) || unicode.IsDigit(r) || strings.ContainsRune(".-_", r) {
			return r
		}
		return '_'
	}, strings.TrimSpace(strings.ToValidUTF8(text, "_")))
	name = strings.Trim(name, ".-")
	if device, _, _ := strings.Cut(strings.ToLower(name), "."); slices.Contains(devices, device) {
		name = "_" + name
	}
	for len(name) > longest {
		_, size := utf8.DecodeLastRuneInString(name)
		name = name[:len(name)-size]
	}
	name = strings.TrimRight(name, ".-")
	if strings.Trim(name, "_") == "" {
		return Unnamed
	}
	return name
}

var devices = []string{
	"con", "prn", "aux", "nul", "com0", "com1", "com2", "com3", "com4", "com5", "com6", "com7", "com8", "com9",
	"lpt0", "lpt1", "lpt2", "lpt3", "lpt4", "lpt5", "lpt6", "lpt7", "lpt8", "lpt9",
}
