package report

import (
	"fmt"
	"slices"
	"strings"

	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// skirt says how the skirt hangs, and how its distribution compares with those of its time.
func (g *galley) skirt(k *plan.Skirt) {
	if k == nil {
		return
	}
	g.heading("Skirt, millimetres")
	var rows [][]cell
	for _, f := range k.Falls {
		rows = append(rows, []cell{{text: f.Name}, {text: signed(f.Length)}, {text: signed(f.Reach)}, {text: signed(f.Above)}, {text: signed(f.Train)}})
	}
	g.table([]column{{"", 12, false}, {"waist to hem", 19, true}, {"hem from the axis", 23, true}, {"above the floor", 21, true}, {"train", 11, true}}, rows)
	text := fmt.Sprintf("What holds it measures %s mm round at the hem.", signed(k.Hem.Support))
	if k.Hem.Girth != nil && k.Hem.Gather != nil {
		text += fmt.Sprintf(" The hem measures %s mm: %.2f times as much, which falls in folds.", signed(*k.Hem.Girth), *k.Hem.Gather)
	}
	g.text("", text)
	if k.Dating != "" {
		g.note("", k.Dating)
	}
}

// numbers lists the templates by the first part of their numbers, with how many there are where there are several.
func (g *galley) numbers(pieces []piece.Piece) {
	var heads []string
	count := map[string]int{}
	for _, q := range pieces {
		head, _, _ := strings.Cut(q.ID, "-")
		if count[head]++; count[head] == 1 {
			heads = append(heads, head)
		}
	}
	for i, h := range heads {
		if n := count[h]; n > 1 {
			heads[i] = fmt.Sprintf("%s (%d)", h, n)
		}
	}
	if len(heads) > 0 {
		g.gap(2.5)
		g.note("", "Templates by number: "+strings.Join(heads, ", ")+".")
	}
}

// cuts is the cutting table: what is too long or too plain for a template.
func (g *galley) cuts(all []plan.Cut) {
	if len(all) == 0 {
		return
	}
	g.heading("Cutting table, without templates, millimetres")
	var rows [][]cell
	part := ""
	for _, c := range together(all) {
		if c.Part != part {
			part = c.Part
			rows = append(rows, []cell{{text: "for the " + part, bold: true}, {}, {}, {}, {}, {}})
		}
		rows = append(rows, []cell{{text: c.Name}, {text: c.Material}, {text: positive(c.Length)}, {text: positive(c.Width)}, {text: fmt.Sprint(c.Count)}, {text: c.Note}})
	}
	g.table([]column{{"what", 40, false}, {"material", 24, false}, {"length", 9, true}, {"width", 9, true}, {"count", 9, true}, {"note", 86, false}}, rows)
}

// together puts cuts that differ in their names alone into one row, at the place of the first.
func together(all []plan.Cut) []plan.Cut {
	var out []plan.Cut
	for _, c := range all {
		same := slices.IndexFunc(out, func(o plan.Cut) bool {
			o.Name, o.Count = c.Name, c.Count
			return o == c
		})
		if same < 0 {
			out = append(out, c)
			continue
		}
		out[same].Name += ", " + c.Name
		out[same].Count += c.Count
	}
	return out
}

// positive writes a length that is known, and nothing where it is not.
func positive(mm float64) string {
	if mm <= 0 {
		return ""
	}
	return signed(mm)
}
