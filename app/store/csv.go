package store

import (
	"io"
	"strconv"

	"understructure/app/table"
)

// Table writes every pair as a row for a spreadsheet, with what was chosen. Garments and forms are named by index.
func (m Match) Table(w io.Writer, garments, forms []string, c table.Comma) error {
	rows := [][]string{{"garment", "form", "serves", "chosen", "best", "wadding_litres", "too_big_mm", "at_level", "form_ends_short_mm", "error"}}
	number := func(v float64) string { return c.Number(strconv.FormatFloat(v, 'f', 2, 64)) }
	for i, pairs := range m.Pairs {
		for j, p := range pairs {
			row := []string{table.Guarded(garments[i]), table.Guarded(forms[j]), yes(p.Serves), yes(m.Chosen[i] == j), yes(m.Best[i] == j), "", "", "", "", ""}
			switch {
			case p.Err != nil:
				row[9] = table.Guarded(p.Err.Error())
			case p.Serves:
				row[5], row[8] = number(p.Litres), number(p.Short)
			default:
				row[6], row[7], row[8] = number(p.Squeeze), p.Level, number(p.Short)
			}
			rows = append(rows, row)
		}
	}
	return table.Cells(w, rows, c)
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}
