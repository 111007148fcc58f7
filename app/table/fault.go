package table

import (
	"fmt"
	"strings"
)

// Fault is a value that a table must not have, and where it stands, as a spreadsheet counts.
type Fault struct {
	Row     int    // from 1; 0 for the table as a whole
	Column  int    // from 1; 0 for the row as a whole
	Heading string // of the column
	Message string // which value, and what is allowed
}

// Error reads as one line: "row 3, column AE (garment.bodice.waist_girth): 7 cm is not possible; allowed …".
func (f Fault) Error() string {
	var at []string
	if f.Row > 0 {
		at = append(at, fmt.Sprintf("row %d", f.Row))
	}
	if f.Column > 0 {
		where := "column " + letters(f.Column)
		if f.Heading != "" {
			where += " (" + f.Heading + ")"
		}
		at = append(at, where)
	}
	if len(at) == 0 {
		return f.Message
	}
	return strings.Join(at, ", ") + ": " + f.Message
}

// letters is a column's name in a spreadsheet: A to Z, AA to ZZ and so on.
func letters(n int) string {
	if n <= 0 {
		return ""
	}
	return letters((n-1)/26) + string(rune('A'+(n-1)%26))
}

// Faults are all faults of a table, in the order in which they stand.
type Faults []Fault

// Error has a line for each.
func (fs Faults) Error() string {
	var all []string
	for _, f := range fs {
		all = append(all, f.Error())
	}
	return strings.Join(all, "\n")
}

// short keeps a value that somebody wrote to a length that a line can hold.
func short(s string) string {
	const most = 60
	if r := []rune(s); len(r) > most {
		s = string(r[:most]) + "…"
	}
	return fmt.Sprintf("%q", s)
}
