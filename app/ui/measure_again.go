package ui

import (
	"fmt"

	"fyne.io/fyne/v2/lang"

	"understructure/app/ui/control"
	"understructure/patterns/plan"
)

// A reading is marked only where the garment may strain at all, and where much of that comes from it; and no more than
// a few, for who measures everything again measures nothing with care. Our judgement.
const (
	leastChance = 0.001
	leastShare  = 0.02
	mostMarked  = 3
)

// marked are the readings that should be taken again, or for the first time, by key path.
func marked(d plan.Doubt) map[string]plan.Remeasure {
	out := map[string]plan.Remeasure{}
	for _, m := range d.Remeasure {
		if d.ChanceAnywhere >= leastChance && m.Share >= leastShare && len(out) < mostMarked {
			out[m.Key] = m
		}
	}
	return out
}

// again marks a measure that should be taken again.
func (s said) again(m *control.Measure) {
	a, ok := s.remeasure[m.Key]
	if !ok {
		return
	}
	with := map[string]any{"Share": fmt.Sprintf("%.0f %%", 100*a.Share), "Now": chance(&s.anywhere), "After": chance(&a.ChanceAfter)}
	if a.Taken {
		m.Again = lang.L("measure again")
		m.Why = lang.L("Measure again first: {{.Share}} of the doubt. Chance of strain {{.Now}}, then {{.After}}.", with)
		return
	}
	m.Again = lang.L("measure")
	m.Why = lang.L("Worth measuring: {{.Share}} of the doubt. Chance of strain {{.Now}}, then {{.After}}.", with)
}
