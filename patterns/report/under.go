package report

import (
	"fmt"

	"understructure/patterns/plan"
)

// skirt says how the skirt hangs, and how its distribution compares with those of its time.
func (s *setter) skirt(k *plan.Skirt) {
	if k == nil {
		return
	}
	s.heading("Skirt", 45)
	var rows [][]cell
	for _, f := range k.Falls {
		rows = append(rows, []cell{{text: f.Name}, {text: signed(f.Length)}, {text: signed(f.Reach)}, {text: signed(f.Above)}, {text: signed(f.Train)}})
	}
	s.table([]column{{"mm", 34, false}, {"waist to hem", 34, true}, {"hem from the axis", 34, true}, {"above the floor", 34, true}, {"train", 34, true}}, rows)
	text := fmt.Sprintf("What holds it measures %s mm round at the hem.", signed(k.Hem.Support))
	if k.Hem.Girth != nil && k.Hem.Gather != nil {
		text += fmt.Sprintf(" The hem measures %s mm: %.2f times as much, which falls in folds.", signed(*k.Hem.Girth), *k.Hem.Gather)
	}
	s.paragraph(text, false)
	if k.Dating != "" {
		s.paragraph(k.Dating, false)
	}
}

// cuts is the cutting table: what is too long or too plain for a template.
func (s *setter) cuts(all []plan.Cut) {
	if len(all) == 0 {
		return
	}
	s.heading("Cutting table, without templates", 30)
	var rows [][]cell
	for _, c := range all {
		rows = append(rows, []cell{{text: c.Part}, {text: c.Name}, {text: c.Material}, {text: positive(c.Length)}, {text: positive(c.Width)}, {text: fmt.Sprint(c.Count)}, {text: c.Note}})
	}
	s.table([]column{{"for", 14, false}, {"what", 38, false}, {"material", 26, false}, {"length", 15, true}, {"width", 13, true}, {"count", 11, true}, {"mm; note", 53, false}}, rows)
}

// positive writes a length that is known, and nothing where it is not.
func positive(mm float64) string {
	if mm <= 0 {
		return ""
	}
	return signed(mm)
}
