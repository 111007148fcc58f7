package report

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"understructure/patterns/plan"
)

// value is one number that the mount was computed from.
type value struct {
	named
	number, how, source string
}

// sorted are all numbers in the order in which one measures: those of the tape, and the others.
func sorted(p plan.Plan) (tape, other []value) {
	all := append(append(listed(p.Taken, "taken"), listed(p.Drawn, "drawn")...), listed(p.Stock, "stock")...)
	slices.SortFunc(all, func(a, b value) int {
		return cmp.Or(cmp.Compare(a.rank, b.rank), cmp.Compare(a.where, b.where), cmp.Compare(a.what, b.what), cmp.Compare(a.how, b.how))
	})
	for _, v := range all {
		if v.how == "taken" && (v.source == "" || v.source == "tape") {
			tape = append(tape, v)
		} else {
			other = append(other, v)
		}
	}
	return tape, other
}

func listed(values map[string]plan.Value, how string) []value {
	var all []value
	for key, v := range values {
		n := name(key)
		l := value{named: n, number: n.number(v.Value), how: how, source: v.Source}
		if v.Spread > 0 {
			l.number += " ± " + n.number(v.Spread)
		}
		if v.Text != "" {
			l.number = strings.NewReplacer("true", "yes", "false", "no").Replace(v.Text)
		}
		if l.source == how {
			l.source = ""
		}
		all = append(all, l)
	}
	return all
}

// values sets what was drawn from statistics or used by default, and then the sources, each with the number by
// which the values name it.
func (s *setter) values(p plan.Plan) {
	_, all := sorted(p)
	var sources []string
	var rows [][]cell
	for _, v := range merged(all) {
		from := v.how + ": " + v.source
		k := slices.Index(sources, from)
		if k < 0 {
			k, sources = len(sources), append(sources, from)
		}
		rows = append(rows, []cell{{text: strings.TrimSpace(v.where + " " + v.what)}, {text: v.number}, {text: fmt.Sprint(k + 1)}})
	}
	if len(rows) > 0 {
		s.section("Other measurements and settings, millimetres", 20)
		g := newGalley(3)
		g.table([]column{{"measure", 30, false}, {"value", 16.5, true}, {"source", 10, true}}, rows)
		s.flow(g.strips, 3)
	}
	g := newGalley(2)
	g.sources(sources)
	g.lengths(p.Lengths)
	s.flow(g.strips, 2)
}

func (g *galley) sources(all []string) {
	if len(all) == 0 {
		return
	}
	g.heading("Sources of these")
	for k, text := range all {
		g.note(fmt.Sprint(k+1), text)
	}
}

// merged puts settings that differ only in their level, such as ease, into one row.
func merged(all []value) []value {
	var out []value
	for _, v := range all {
		what, level, ok := strings.Cut(v.what, ", ")
		same := slices.IndexFunc(out, func(o value) bool {
			return ok && o.where == v.where && strings.HasPrefix(o.what, what+", ") && o.number == v.number && o.how == v.how && o.source == v.source
		})
		if same >= 0 {
			out[same].what += ", " + level
		} else {
			out = append(out, v)
		}
	}
	return out
}

func (g *galley) lengths(all []plan.Length) {
	if len(all) == 0 {
		return
	}
	g.heading("Lengths along the surface, millimetres")
	var rows [][]cell
	for _, l := range all {
		n := name(l.Key)
		rows = append(rows, []cell{{text: n.what}, {text: n.number(l.Taken)}, {text: n.number(l.Built)}})
	}
	g.table([]column{{"length", 50, false}, {"taken", 18, true}, {"as drawn", 18, true}}, rows)
}
