package table

import "strings"

// begins lists what makes a spreadsheet take a text for a formula (OWASP, "CSV Injection"), and the apostrophe
// that prevents it, so that one that somebody wrote is not lost.
const begins = "=+-@\t\r\n'＝＋－＠"

// Guarded puts an apostrophe before a text that a spreadsheet would take for a formula.
func Guarded(text string) string {
	if risky(text) {
		return "'" + text
	}
	return text
}

// bare takes away the apostrophe that Guarded puts.
func bare(text string) string {
	if rest, ok := strings.CutPrefix(text, "'"); ok && risky(rest) {
		return rest
	}
	return text
}

func risky(text string) bool {
	for _, first := range text {
		return strings.ContainsRune(begins, first)
	}
	return false
}
