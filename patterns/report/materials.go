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
// the names of its columns.
func Materials(w io.Writer, p plan.Plan) error {
	rows := [][]string{{"material", "quantity", "unit", "note"}}
	for _, m := range p.Materials {
		rows = append(rows, []string{inert(m.Name), strconv.FormatFloat(m.Quantity, 'f', -1, 64), inert(m.Unit), inert(m.Note)})
	}
	if err := csv.NewWriter(w).WriteAll(rows); err != nil {
		return fmt.Errorf("report: %w", err)
	}
	return nil
}

// inert puts an apostrophe before a text that a spreadsheet would take for a formula
// (OWASP, "CSV Injection").
func inert(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r\n", rune(s[0])) {
		return "'" + s
	}
	return s
}
