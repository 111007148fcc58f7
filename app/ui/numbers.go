package ui

import (
	"fmt"
	"strings"
)

// length writes millimetres in the unit u to a millimetre, the finest that a girth is worth; with
// a true minus for strain.
func length(mm *float64, u string) string {
	if mm == nil {
		return "–"
	}
	digits, scale := 1, 10.0
	switch u {
	case "mm":
		digits, scale = 0, 1
	case "in":
		digits, scale = 2, 25.4
	}
	s := fmt.Sprintf("%.*f", digits, *mm/scale)
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return strings.Replace(s, "-", "−", 1)
}

// whole writes millimetres without decimals.
func whole(mm *float64) string { return length(mm, "mm") }

// chance writes a probability without promising more than is known.
func chance(p *float64) string {
	switch {
	case p == nil:
		return "–"
	case *p < 0.001:
		return "under 0.1 %"
	case *p > 0.999:
		return "over 99.9 %"
	}
	return fmt.Sprintf("%.1f %%", 100**p)
}
