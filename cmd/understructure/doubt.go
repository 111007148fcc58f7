package main

import (
	"fmt"
	"io"
	"strings"

	"understructure/patterns/plan"
)

// worthSaying is the least chance of strain anywhere for which it is said what to do about it.
const worthSaying = 0.001

// inDoubt prints the chance of strain over all levels, and what to measure to make it smaller.
func inDoubt(w io.Writer, d plan.Doubt, word string) {
	if d.ChanceAnywhere < worthSaying {
		return
	}
	fmt.Fprintf(w, "\nChance of strain at one level or more %s; with an ease of %s %s everywhere it is 1 %%.\n",
		percent(&d.ChanceAnywhere), written(&d.EaseForAll, word), word)
	for _, each := range []struct {
		words string
		taken bool
	}{{"Measure again first", true}, {"Not measured yet", false}} {
		if keys := keysOf(d.Remeasure, each.taken); keys != "" {
			fmt.Fprintf(w, "%s: %s.\n", each.words, keys)
		}
	}
}

// keysOf lists what to measure, of what was taken or of what was not, with how much of the doubt comes from it.
func keysOf(all []plan.Remeasure, taken bool) string {
	var parts []string
	for _, m := range all {
		if m.Taken != taken {
			continue
		}
		key := strings.TrimPrefix(strings.Replace(m.Key, ".bodice.", " ", 1), "garment ")
		share := fmt.Sprintf("%.0f %%", 100*m.Share)
		if len(parts) == 0 {
			share += " of the doubt"
		}
		parts = append(parts, key+" ("+share+")")
	}
	return strings.Join(parts, ", ")
}
