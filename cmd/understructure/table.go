package main

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"understructure/geometry/unit"
	"understructure/patterns/plan"
)

// places is how many decimals a length has in each unit: about a tenth of what a tape shows.
var places = map[string]int{"mm": 0, "cm": 1, "in": 2}

// table prints the fit, one level a line, in the unit of the record.
func table(w io.Writer, p plan.Plan, word string) {
	length := func(mm *float64) string { return written(mm, word) }
	rows := [][]string{{"level", "height", "garment", "ease", "target", "form", "built", "clearance", "chance of strain", "ease for 1 %"}}
	drawn := false
	for _, l := range p.Levels {
		garment := length(l.GarmentGirth)
		if l.GarmentGirth != nil && !l.Taken {
			garment, drawn = "~"+garment, true
		}
		rows = append(rows, []string{l.Name, length(&l.Height), garment, length(&l.Ease), length(l.TargetGirth),
			length(l.FormGirth), length(l.BuiltGirth), length(l.Clearance), percent(l.StrainChance), length(l.EaseForOnePercent)})
	}
	fmt.Fprintf(w, "%s\nLengths in %s.", heading(p), word)
	if drawn {
		fmt.Fprint(w, " A girth marked ~ was not taken; it is drawn from statistics.")
	}
	fmt.Fprint(w, "\n\n")
	align(w, rows)
	inDoubt(w, p.Doubt, word)
	under(w, p.Skirt, word)
}

// written is a length in a unit.
func written(mm *float64, word string) string {
	if mm == nil {
		return "–"
	}
	size, _ := unit.Named(word)
	s := fmt.Sprintf("%.*f", places[word], *mm/float64(size))
	if strings.Trim(s, "-0.") == "" {
		s = strings.TrimPrefix(s, "-")
	}
	return s
}

// under prints how the skirt hangs, and how much of its hem what holds it takes up.
func under(w io.Writer, k *plan.Skirt, word string) {
	if k == nil {
		return
	}
	length := func(mm *float64) string { return written(mm, word) }
	rows := [][]string{{"skirt", "length", "reach", "above floor", "train"}}
	for _, f := range k.Falls {
		rows = append(rows, []string{f.Name, length(&f.Length), length(&f.Reach), length(&f.Above), length(&f.Train)})
	}
	fmt.Fprintln(w)
	align(w, rows)
	fmt.Fprintf(w, "Support round at the hem %s", length(&k.Hem.Support))
	if k.Hem.Girth != nil && k.Hem.Gather != nil {
		fmt.Fprintf(w, ", hem of the garment %s: %.2f times as much", length(k.Hem.Girth), *k.Hem.Gather)
	}
	fmt.Fprintln(w, ".")
	if least, ok := leastFullness(k.Girths); ok {
		fmt.Fprintf(w, "Least room between garment and support: %s, %s above the floor.\n", length(least.Fullness), length(&least.Height))
	}
}

// leastFullness is the depth at which a skirt has the least room over its support, and whether its girth is known anywhere.
func leastFullness(girths []plan.SkirtGirth) (least plan.SkirtGirth, ok bool) {
	for _, g := range girths {
		if g.Fullness != nil && (!ok || *g.Fullness < *least.Fullness) {
			least, ok = g, true
		}
	}
	return least, ok
}

// heading names the garment and the build.
func heading(p plan.Plan) string {
	var parts []string
	for _, part := range []string{p.Object.Number, p.Object.Title, p.Object.Notice, p.Build} {
		if part != "" {
			parts = append(parts, part)
		}
	}
	return strings.Join(parts, " · ")
}

// percent writes a chance in words that do not promise more than is known.
func percent(chance *float64) string {
	switch {
	case chance == nil:
		return "–"
	case *chance < 0.001:
		return "< 0.1 %"
	case *chance > 0.999:
		return "> 99.9 %"
	}
	return fmt.Sprintf("%.1f %%", 100**chance)
}

// align prints rows in columns: the first to the left, the others to the right.
func align(w io.Writer, rows [][]string) {
	widths := make([]int, len(rows[0]))
	for _, row := range rows {
		for i, cell := range row {
			widths[i] = max(widths[i], utf8.RuneCountInString(cell))
		}
	}
	for _, row := range rows {
		var line strings.Builder
		for i, cell := range row {
			pad := strings.Repeat(" ", widths[i]-utf8.RuneCountInString(cell))
			if i == 0 {
				line.WriteString(cell + pad)
			} else {
				line.WriteString("  " + pad + cell)
			}
		}
		fmt.Fprintln(w, strings.TrimRight(line.String(), " "))
	}
}
