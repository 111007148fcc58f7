package sheet

import (
	"fmt"
	"math"

	"understructure/patterns/plan"
)

// The least page holds both 100 mm rules and the title block. The greatest is 14,400 points, beyond which
// readers need not show a page (Adobe, PDF Reference 1.7, annex C.2, "Architectural limits", 2006).
const (
	LeastWidth  = 148
	LeastHeight = 160
	Most        = 5080
)

// Papers lists the sheets with a name. A roll has its width and the longest page that is
// printed on it; each page ends where its pieces do.
//
// A sizes: ISO 216:2007. Letter and Tabloid: ANSI/ASME Y14.1, 8.5 × 11 and 11 × 17 inches.
// Rolls are sold as 24, 36 and 42 inches wide; the widths here are those of the trade, in whole millimetres.
var Papers = []plan.Paper{
	{Name: "A4", Width: 210, Height: 297},
	{Name: "A3", Width: 297, Height: 420},
	{Name: "A2", Width: 420, Height: 594},
	{Name: "A1", Width: 594, Height: 841},
	{Name: "A0", Width: 841, Height: 1189},
	{Name: "Letter", Width: 215.9, Height: 279.4},
	{Name: "Tabloid", Width: 279.4, Height: 431.8},
	{Name: "roll-610", Width: 610, Height: Most, Roll: true},
	{Name: "roll-914", Width: 914, Height: Most, Roll: true},
	{Name: "roll-1067", Width: 1067, Height: Most, Roll: true},
}

// Named returns the paper of a name, and whether there is one.
func Named(name string) (plan.Paper, bool) {
	for _, p := range Papers {
		if p.Name == name {
			return p, true
		}
	}
	return plan.Paper{}, false
}

// Check refuses a paper that is too small for the rules, too large for a reader, or of a printer that was not measured
// at 100 %.
func Check(p plan.Paper) error {
	for _, s := range []struct {
		name         string
		value, least float64
	}{{"width", p.Width, LeastWidth}, {"height", p.Height, LeastHeight}} {
		if math.IsNaN(s.value) || s.value < s.least || s.value > Most {
			return fmt.Errorf("sheet: paper %s %g mm, want %g to %d mm", s.name, s.value, s.least, Most)
		}
	}
	for _, scale := range []float64{p.ScaleX, p.ScaleY} {
		if scale != 0 && !(scale >= Rule/MostRule && scale <= Rule/LeastRule) {
			return fmt.Errorf("sheet: pages drawn ×%g for their printer, want ×%.4f to ×%.4f", scale, Rule/MostRule, Rule/LeastRule)
		}
	}
	return nil
}
