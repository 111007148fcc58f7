package ui

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2/lang"

	"understructure/app/ui/control"
	"understructure/patterns/plan"
)

// tell says in words how the skirt hangs, what holds it, and which years it is like.
func (p *skirtPlace) tell(pl plan.Plan, u string) {
	k := pl.Skirt
	text := lang.L("Support at the hem: {{.Girth}} {{.Unit}} round.", map[string]any{"Girth": length(&k.Hem.Support, u), "Unit": u})
	if k.Hem.Girth != nil && k.Hem.Gather != nil {
		text += " " + lang.L("The hem has {{.Girth}} {{.Unit}}, {{.Times}} times as much.", map[string]any{"Girth": length(k.Hem.Girth, u), "Unit": u, "Times": fmt.Sprintf("%.2f", *k.Hem.Gather)})
	}
	p.words.say(text)
	p.words.say(heldBy(k))
	p.words.notes(pl, "garment.skirt", "mount.skirt")
	p.compare(k)
	p.words.cautions(k.Cautions)
}

// heldBy names what holds a skirt, and what it weighs once that is known.
func heldBy(k *plan.Skirt) string {
	kinds := map[string]string{
		"tube": lang.L("tube petticoat"), "legs": lang.L("leg tubes"), "petticoat": lang.L("base petticoat"), "hoops": lang.L("hooped petticoat"),
		"net": lang.L("tiers of net"), "pad": lang.L("stuffed pad"), "frame": lang.L("bustle frame"), "train": lang.L("train support"),
	}
	var names []string
	for _, s := range k.Supports {
		names = append(names, kinds[s])
	}
	switch what := map[string]any{"What": strings.Join(names, ", "), "Weight": fmt.Sprintf("%.1f", k.MassKg)}; {
	case len(names) == 0:
		return lang.L("Nothing holds it.")
	case k.MassKg == 0:
		return lang.L("From the inside out: {{.What}}.", what)
	default:
		return lang.L("From the inside out: {{.What}}; {{.Weight}} kg.", what)
	}
}

// compare sets the skirt beside the years.
func (p *skirtPlace) compare(k *plan.Skirt) {
	p.words.head(lang.L("beside the years"))
	if rows := yearRows(k.Comparison); len(rows) > 0 {
		p.years.Draw([]string{lang.L("years"), lang.L("lengths"), lang.L("hem"), lang.L("both")}, rows)
		p.words.add(p.years)
		p.words.say(lang.L("0 is within what those years have, 1 a difference that one would see."))
	}
	for _, x := range k.Practices {
		p.words.say(fmt.Sprintf("%s %s: %s (%s)", x.Years, x.Finding, x.Says, x.Source))
	}
	p.words.say(k.Dating)
}

// mostYears is how many rows of the comparison are worth a look.
const mostYears = 6

// yearRows has a row for each span of years, the likest first.
func yearRows(all []plan.Likeness) []control.TableRow {
	column := map[string]int{"lengths": 0, "hem": 1, "both": 2}
	at := map[string]int{}
	var rows []control.TableRow
	for _, l := range all {
		i, known := at[l.Years]
		if !known {
			if len(rows) == mostYears {
				continue
			}
			i = len(rows)
			at[l.Years] = i
			rows = append(rows, control.TableRow{Name: l.Years, Numbers: []string{"–", "–", "–"}, Strong: i == 0})
		}
		rows[i].Numbers[column[l.By]] = fmt.Sprintf("%.1f", l.Off)
	}
	return rows
}
