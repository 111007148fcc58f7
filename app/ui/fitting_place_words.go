package ui

import (
	"strings"

	"fyne.io/fyne/v2/lang"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
	"understructure/geometry/measure"
)

func newFittingForm(p *fittingPlace) *control.FittingForm {
	levels := []control.Option{{Key: "", Word: "–"}}
	for _, l := range measure.Levels {
		levels = append(levels, option(string(l)))
	}
	wheres := []control.Option{{Key: "", Word: lang.L("all round")}}
	for _, w := range record.Wheres {
		wheres = append(wheres, option(w))
	}
	var whats []control.Option
	for _, w := range record.Faults {
		whats = append(whats, option(w))
	}
	f := control.NewFittingForm(whats, levels, wheres)
	f.OnNoted = p.noted
	f.OnChosen = p.known
	f.OnLeft = func() { p.open(p.hand.at) }
	return f
}

func option(word string) control.Option { return control.Option{Key: word, Word: lang.L(word)} }

// known says whether a fault has a level, and how large the mount was there that was tried on.
func (p *fittingPlace) known(n control.Noted) (level bool, is string) {
	if !record.OfGirth(n.What) {
		return n.What == "" || n.What == record.Limp, ""
	}
	if n.Level == "" {
		return true, ""
	}
	if g := p.tried(p.inHand(), measure.Level(n.Level)); g != nil {
		u := p.doc.Record().Unit
		return true, lang.L("Tried on a mount of {{.Girth}} there.", map[string]any{"Girth": length(g, u) + " " + u})
	}
	return true, ""
}

// titled says which fitting is in hand.
func (p *fittingPlace) titled(r record.Record) string {
	if p.hand.at >= len(r.Fittings) {
		return lang.L("New fitting")
	}
	return lang.L("Fitting {{.Number}} of {{.Count}}", map[string]any{"Number": p.hand.at + 1, "Count": len(r.Fittings)})
}

// sentences says what was seen.
func sentences(seen []record.Seen, u string) []string {
	var out []string
	for _, s := range seen {
		text := lang.L(s.What)
		if s.Level != "" {
			text = lang.L(string(s.Level)) + " " + text
		}
		if s.By != nil {
			text += " " + lang.L("by {{.Length}}", map[string]any{"Length": document.Length.Format(*s.By, u) + " " + u})
		}
		if s.Where != "" {
			text += ", " + lang.L(s.Where)
		}
		out = append(out, control.Sentence(text))
	}
	return out
}

// logged is a line for each fitting.
func logged(fs []record.Fitting) []string {
	var out []string
	for _, f := range fs {
		parts := []string{f.On}
		if f.On == "" {
			parts[0] = lang.L("without a date")
		}
		if f.By != "" {
			parts = append(parts, f.By)
		}
		parts = append(parts, lang.L("{{.Count}} seen", map[string]any{"Count": len(f.Seen)}))
		out = append(out, strings.Join(parts, " · "))
	}
	return out
}
