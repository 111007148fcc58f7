package report

import (
	"cmp"
	"fmt"
	"slices"

	"understructure/patterns/plan"
)

// value is one number that the mount was computed from.
type value struct {
	named
	number, how, source string
}

// values sets every number that the mount was computed from: those of the tape two in a row, the others with
// their source.
func (s *setter) values(p plan.Plan) {
	all := append(append(listed(p.Taken, "taken"), listed(p.Drawn, "drawn")...), listed(p.Stock, "stock")...)
	slices.SortFunc(all, func(a, b value) int {
		return cmp.Or(cmp.Compare(a.rank, b.rank), cmp.Compare(a.where, b.where), cmp.Compare(a.what, b.what), cmp.Compare(a.how, b.how))
	})
	var tape, other []value
	for _, v := range all {
		if v.how == "taken" && (v.source == "" || v.source == "tape") {
			tape = append(tape, v)
		} else {
			other = append(other, v)
		}
	}
	s.taped(tape)
	s.sourced(other)
}

func listed(values map[string]plan.Value, how string) []value {
	var all []value
	for key, v := range values {
		n := name(key)
		l := value{named: n, number: n.number(v.Value), how: how, source: v.Source}
		if how == "stock" && v.Value == 0 {
			l.number = "" // a word and not a number
		}
		if l.source == how {
			l.source = ""
		}
		all = append(all, l)
	}
	return all
}

// taped sets what was measured, down the left half of the table and then down the right.
func (s *setter) taped(all []value) {
	if len(all) == 0 {
		return
	}
	half := (len(all) + 1) / 2
	rows := make([][]cell, half)
	for i := range rows {
		rows[i] = all[i].cells()
		rows[i] = append(rows[i], cell{})
		if i+half < len(all) {
			rows[i] = append(rows[i], all[i+half].cells()...)
		} else {
			rows[i] = append(rows[i], cell{}, cell{}, cell{})
		}
	}
	s.heading("Measurements taken by tape", 25)
	of, what, number := column{"of", 18, false}, column{"measure", 38, false}, column{"value", 25, true}
	s.table([]column{of, what, number, {"", 8, false}, of, what, number}, rows)
}

func (v value) cells() []cell {
	return []cell{{text: v.where}, {text: v.what}, {text: v.number}}
}

// sourced sets what was drawn from statistics or used by default, down the left half of the table and then
// down the right; the sources follow, each with the number by which the values name it.
func (s *setter) sourced(all []value) {
	if len(all) == 0 {
		return
	}
	var sources []string
	half := (len(all) + 1) / 2
	rows := make([][]cell, half)
	for i, v := range all {
		from := v.how + ": " + v.source
		k := slices.Index(sources, from)
		if k < 0 {
			k, sources = len(sources), append(sources, from)
		}
		if i >= half {
			rows[i-half] = append(rows[i-half], cell{})
		}
		rows[i%half] = append(rows[i%half], append(v.cells(), cell{text: fmt.Sprint(k + 1)})...)
	}
	if len(all)%2 == 1 {
		rows[half-1] = append(rows[half-1], make([]cell, 5)...)
	}
	s.heading("Other measurements and settings", 25)
	of, what, number, source := column{"of", 16, false}, column{"measure", 34, false}, column{"value", 20, true}, column{"source", 12, true}
	s.table([]column{of, what, number, source, {"", 6, false}, of, what, number, source}, rows)
	for k, text := range sources {
		s.paragraph(fmt.Sprintf("%d  %s", k+1, text), false)
	}
}
