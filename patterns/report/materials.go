package report

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"understructure/patterns/plan"
)

// Materials writes the shopping list as comma-separated values (RFC 4180, with line feeds alone), headed by
// the names of its columns. What is not known is left empty.
func Materials(w io.Writer, p plan.Plan) error {
	rows := [][]string{{"material", "quantity", "unit", "with waste", "weight_kg", "cost", "currency", "note"}}
	for _, m := range p.Materials {
		rows = append(rows, []string{inert(m.Name), decimal(&m.Quantity), inert(m.Unit), decimal(m.WithWaste), known(m.MassKg),
			decimal(m.Cost), inert(m.Currency), inert(both(m.Note, m.Asks))})
	}
	if err := csv.NewWriter(w).WriteAll(rows); err != nil {
		return fmt.Errorf("report: %w", err)
	}
	return nil
}

// decimal is a number with all its digits; nothing where there is none.
func decimal(v *float64) string {
	if v == nil {
		return ""
	}
	return strconv.FormatFloat(*v, 'f', -1, 64)
}

func known(v float64) string {
	if v == 0 {
		return ""
	}
	return decimal(&v)
}

// both says two things, or the one that there is.
func both(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + "; asks: " + b
}

// inert puts an apostrophe before a text that a spreadsheet would take for a formula
// (OWASP, "CSV Injection").
func inert(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r\n", rune(s[0])) {
		return "'" + s
	}
	return s
}
