package report

import (
	"fmt"
	"slices"
	"strings"

	"understructure/patterns/plan"
)

// materials is the shopping list: net and with waste, what it weighs and costs where that is known. What is said and
// asked of the materials is said once, below the list, by letters.
func (g *galley) materials(p plan.Plan) {
	if len(p.Materials) == 0 {
		return
	}
	g.heading("Materials")
	var rows [][]cell
	var said legend
	money := currency(p.Materials)
	for _, m := range p.Materials {
		rows = append(rows, []cell{{text: m.Name}, {text: quantity(m.Quantity)}, {text: optional(m.WithWaste)}, {text: m.Unit}, {text: optional(weighed(m.MassKg))},
			{text: cost(m, money)}, {text: said.letters(of(m)...)}})
	}
	g.table(filled([]column{{"what", 36, false}, {"net", 12, true}, {"with waste", 12, true}, {"", 13, false}, {"kg", 12, true}, {"cost " + money, 13, true}, {"see", 13, false}}, rows))
	if text := said.text(); text != "" {
		g.note("", text)
	}
}

// of is what is said of a material. Where its layout is known, how it was laid is told elsewhere.
func of(m plan.Material) []string {
	var all []string
	if m.Note != "" && m.WithWaste == nil {
		all = strings.Split(m.Note, "; ")
	}
	if m.Asks != "" {
		all = append(all, strings.Split(m.Asks, "; ")...)
	}
	return all
}

// currency is that of all costs; "" where there is none, or more than one.
func currency(all []plan.Material) string {
	money := ""
	for _, m := range all {
		switch {
		case m.Cost == nil || m.Currency == money:
		case money == "":
			money = m.Currency
		default:
			return ""
		}
	}
	return money
}

// cost names its currency where the head of the column does not.
func cost(m plan.Material, money string) string {
	if m.Cost == nil {
		return dash
	}
	text := fmt.Sprintf("%.2f", *m.Cost)
	if m.Currency != money {
		text += " " + m.Currency
	}
	return text
}

func weighed(kg float64) *float64 {
	if kg <= 0 {
		return nil
	}
	return &kg
}

// optional is a number that may not be known.
func optional(v *float64) string {
	if v == nil {
		return dash
	}
	return quantity(*v)
}

// legend is what letters stand for, in the order in which they were first used.
type legend []string

// letters are those of some texts, each text with the letter that it has already.
func (l *legend) letters(texts ...string) string {
	var all []string
	for _, t := range texts {
		k := slices.Index(*l, t)
		if k < 0 {
			k, *l = len(*l), append(*l, t)
		}
		all = append(all, letter(k))
	}
	return strings.Join(all, " ")
}

// text is the whole legend.
func (l legend) text() string {
	var all []string
	for k, t := range l {
		all = append(all, letter(k)+": "+t)
	}
	return strings.Join(all, "; ")
}

// letter counts a, b, … z, aa, ab …
func letter(n int) string {
	if n < 26 {
		return string(rune('a' + n))
	}
	return letter(n/26-1) + letter(n%26)
}
