package report

import (
	"fmt"
	"slices"

	"understructure/patterns/plan"
)

// fit sets the fit table; a level that strains is set in bold and says so.
func (g *galley) fit(levels []plan.Level) {
	if len(levels) == 0 {
		return
	}
	g.heading("Fit")
	columns := []column{
		{"level", 23, false}, {"height", 12, true}, {"garment inside", 17, true}, {"", 12, false}, {"ease", 10, true}, {"wanted", 14, true},
		{"form", 12, true}, {"built", 12, true}, {"clearance", 20, true}, {"give or take", 17, true}, {"chance of strain", 20, true}, {"ease for 1 %", 17, true},
	}
	var rows [][]cell
	for _, l := range levels {
		source, ease := "", dash
		if l.GarmentGirth != nil {
			source, ease = map[bool]string{true: "taken", false: "drawn"}[l.Taken], signed(l.Ease)
		}
		strains := l.Clearance != nil && *l.Clearance < 0
		clearance := millimetres(l.Clearance)
		if strains {
			clearance = "strain " + clearance
		}
		var row []cell
		for _, t := range []string{l.Name, signed(l.Height), millimetres(l.GarmentGirth), source, ease, millimetres(l.TargetGirth), millimetres(l.FormGirth),
			millimetres(l.BuiltGirth), clearance, millimetres(l.ClearanceSD), chance(l.StrainChance), millimetres(l.EaseForOnePercent)} {
			row = append(row, cell{t, strains})
		}
		rows = append(rows, row)
	}
	g.table(filled(columns, rows))
	g.strips[len(g.strips)-2].keep, g.strips[len(g.strips)-1].keep = true, true // what it means stays below it
	g.note("", "Girths are taut tapes, in millimetres. Taken: from the record. Drawn: from published statistics of figures. Clearance is the garment's girth inside less what is built; "+
		"negative clearance is strain. Give or take: one standard deviation of it. Ease for 1 %: with it, one such mount in a hundred would strain the garment there.")
}

// filled leaves out the columns in which no row says anything.
func filled(columns []column, rows [][]cell) (some []column, out [][]cell) {
	out = make([][]cell, len(rows))
	for i, c := range columns {
		if !slices.ContainsFunc(rows, func(r []cell) bool { return r[i].text != dash }) {
			continue
		}
		some = append(some, c)
		for k, r := range rows {
			out[k] = append(out[k], r[i])
		}
	}
	return some, out
}

// doubt says how far the fit can be relied on, and what to measure again first.
func (g *galley) doubt(p plan.Plan) {
	d := p.Doubt
	if d.ChanceAnywhere <= 0 && len(d.Remeasure) == 0 {
		return
	}
	g.heading("How sure the fit is")
	g.text("", fmt.Sprintf("The chance of strain at one level or more is %s. An ease of %s mm at every level would bring it down to 1 %%.", chance(&d.ChanceAnywhere), signed(d.EaseForAll)))
	if len(d.Remeasure) == 0 {
		return
	}
	g.text("", "To measure next, the most useful first, with the chance of strain once it is done:")
	for i, r := range d.Remeasure {
		n, how := name(r.Key), "again"
		if !r.Taken {
			how = "for the first time"
		}
		g.text(fmt.Sprint(i+1), fmt.Sprintf("%s, %s, %s: %s", n.where, n.what, how, chance(&r.ChanceAfter)))
	}
}

func (g *galley) warnings(all []plan.Warning) {
	if len(all) == 0 {
		return
	}
	g.heading("Please note")
	if len(all) > many {
		g.text("", fmt.Sprintf("There are %d remarks, so this record is longer than usual.", len(all)))
	}
	for _, w := range all {
		g.text(dash, w.Message)
	}
}

// many remarks are more than a record of four pages has room for.
const many = 40
