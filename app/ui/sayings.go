package ui

import (
	"math"

	"fyne.io/fyne/v2/lang"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
	"understructure/geometry/unit"
	"understructure/patterns/plan"
)

// said is what a plan tells about single values of its record, by key path.
type said struct {
	drawn    map[string]float64
	words    map[string]string // where what is used is not one number
	warnings map[string]string

	remeasure map[string]plan.Remeasure
	anywhere  float64 // chance of strain
}

func sayings(d *document.Document) said {
	p, _ := d.Plan()
	s := said{drawn: map[string]float64{}, words: map[string]string{}, warnings: map[string]string{}, remeasure: marked(p.Doubt), anywhere: p.Doubt.ChanceAnywhere}
	for _, source := range []map[string]plan.Value{p.Drawn, p.Stock} {
		for path, v := range source {
			if v.Text != "" {
				s.words[path] = v.Text
				continue
			}
			s.drawn[path] = v.Value
		}
	}
	for _, w := range p.Warnings {
		if w.Key != "" {
			s.warnings[w.Key] = join(s.warnings[w.Key], w.Message)
		}
	}
	if len(p.Levels) > 0 {
		s.words["mount.paper"] = p.Paper.Name
		s.words["mount.ease"] = eases(p, d.Record().Unit)
	}
	return s
}

// eases is the range of what is left at the levels, "10–15".
func eases(p plan.Plan, u string) string {
	least, most := p.Levels[0].Ease, p.Levels[0].Ease
	for _, l := range p.Levels {
		least, most = min(least, l.Ease), max(most, l.Ease)
	}
	low, high := document.Length.Format(least, u), document.Length.Format(most, u)
	if low == high {
		return low
	}
	return low + "–" + high
}

func join(a, b string) string {
	if a == "" {
		return b
	}
	return a + "\n" + b
}

// fine is how finely a drawn length is shown, in millimetres: statistics know no better. Thicknesses stay as they are.
var fine = map[string]float64{"mm": 1, "cm": 1, "in": float64(unit.Eighth)}

// measures puts fields, their values and what is said of them together.
func (s said) measures(fields []document.Field, r record.Record) []control.Measure {
	var out []control.Measure
	wide := tooWide(r)
	for _, f := range fields {
		m := control.Measure{
			Key: f.Path, Label: lang.L(f.Label), Where: lang.L(f.Where), Group: lang.L(f.Group),
			Unit: f.Kind.Word(r.Unit), Value: f.Get(r), Hint: s.words[f.Path], Warning: s.warnings[f.Path],
		}
		if v, ok := s.drawn[f.Path]; ok {
			if f.Kind == document.Length && v > 10*fine[r.Unit] {
				v = math.Round(v/fine[r.Unit]) * fine[r.Unit]
			}
			m.Drawn = &v
		}
		s.again(&m)
		if f.Repeats() {
			m.Most = record.MostReadings
			s.readings(&m, f, r, wide)
		}
		out = append(out, m)
	}
	return out
}
