package record

import (
	"fmt"
	"strconv"
	"strings"

	"understructure/geometry/unit"
)

// Refusal says why a file is not a record: which value, where it stands, and what is allowed there.
type Refusal struct {
	Path    string // "garment.bodice.waist_girth"; "" for the file as a whole
	Value   string // as it was written, with its unit
	Allowed string // in words, such as "30–200 cm (300–2000 mm)"
	Message string // "is not possible"
}

// Error reads as one line: "garment.bodice.waist_girth: 70 mm is not possible; allowed 300–2000 mm (30–200 cm)".
func (r *Refusal) Error() string {
	var b strings.Builder
	if r.Path != "" {
		b.WriteString(r.Path + ": ")
	}
	b.WriteString(strings.TrimSpace(r.Value + " " + r.Message))
	if r.Allowed != "" {
		b.WriteString("; allowed " + r.Allowed)
	}
	return b.String()
}

// short keeps a value that someone wrote to a length that a line can hold.
func short(s string) string {
	const most = 60
	if r := []rune(s); len(r) > most {
		return string(r[:most]) + "…"
	}
	return s
}

// span writes a range of millimetres in a unit, and again in the unit beside it.
func span(least, most float64, word string) string {
	other := "mm"
	if word == "mm" {
		other = "cm"
	}
	return fmt.Sprintf("%s (%s)", spanIn(least, most, word), spanIn(least, most, other))
}

func spanIn(least, most float64, word string) string {
	return fmt.Sprintf("%s–%s %s", decimal(inUnit(least, word), 2), decimal(inUnit(most, word), 2), word)
}

// inUnit turns millimetres into the unit that a word names.
func inUnit(mm float64, word string) float64 {
	u, _ := unit.Named(word)
	return mm / float64(u)
}

// decimal writes a number plainly, with at most the given places and no trailing noughts.
func decimal(x float64, places int) string {
	s := strconv.FormatFloat(x, 'f', places, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}
