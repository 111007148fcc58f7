package ui

import (
	"errors"
	"slices"

	"fyne.io/fyne/v2/lang"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/trace"
)

// mostOutside is more than any dress, with what is worn over it, is thick on one side, mm (from memory).
const mostOutside = 200

func (p *photoPlace) setOutside(mm float64) error {
	if mm < 0 || mm > mostOutside {
		u := p.doc.Record().Unit
		return errors.New(lang.L("From 0 to {{.Most}} is possible.", map[string]any{"Most": document.Length.Format(mostOutside, u) + " " + u}))
	}
	p.outside = mm
	p.show()
	return nil
}

// across is what a photograph shows of the figure's levels.
func across(f record.Photograph) trace.What {
	if f.View == "side" {
		return trace.Depth
	}
	return trace.Breadth
}

// proposals compares the silhouette of a photograph with the figure.
func (p *photoPlace) proposals(f record.Photograph) ([]trace.Proposal, error) {
	placed, ok := document.Placed(f)
	pl, _ := p.doc.Plan()
	if !ok || len(f.Trace) < 2 || len(pl.Levels) == 0 {
		return nil, nil
	}
	r := p.doc.Record()
	now, err := p.window.options.Figure(r)
	if err != nil {
		return nil, err
	}
	var line []plane.Point
	for _, q := range f.Trace {
		line = append(line, placed.View(q))
	}
	figure := trace.Figure{Torso: now, Waist: pl.StandHeight, Hand: r.Mount.Shape, Taken: r.Garment.Bodice}
	return figure.Propose(line, across(f), p.outside), nil
}

// over says what hides the figure at a level on a photograph of a dress, "" where nothing does: such a change is not
// ticked unless a person does. Common practice, no published source.
func over(l measure.Level, r record.Record) string {
	switch l {
	case measure.NeckBase, measure.Shoulder, measure.AcrossChest, measure.Underarm:
		return lang.L("Sleeves and collar lie over it.")
	case measure.HighHip, measure.Hip:
		if len(r.Garment.Skirt) > 0 {
			return lang.L("The skirt lies over it.")
		}
	}
	return ""
}

// showTrace says what fitting the figure to the silhouette would change.
func (p *photoPlace) showTrace(f record.Photograph, all []trace.Proposal, err error) {
	text := ""
	switch {
	case err != nil:
		text = err.Error()
	case len(f.Trace) == 0:
		text = lang.L("Trace the outline of the dress, and fit the figure's breadths or depths to it.")
	case len(all) == 0:
		text = lang.L("The line must pass a level on both sides.")
	}
	p.showTraceState(f, text)
	visible(p.fit, len(all) > 0 && !p.stand.Tracing())
	r := p.doc.Record()
	var rows []control.Proposed
	for _, x := range all {
		rows = append(rows, p.proposed(x, r))
	}
	p.changes.Fill(rows)
	what := map[trace.What]string{trace.Breadth: lang.L("Breadths of the figure, {{.Unit}}", map[string]any{"Unit": r.Unit}), trace.Depth: lang.L("Depths of the figure, {{.Unit}}", map[string]any{"Unit": r.Unit})}
	set(p.head, what[across(f)])
	p.showApply(all)
}

// proposed is one line of the list.
func (p *photoPlace) proposed(x trace.Proposal, r record.Record) control.Proposed {
	row := control.Proposed{Key: string(x.Level), Name: control.Sentence(lang.L(string(x.Level))), Change: length(&x.From, r.Unit)}
	said := map[string]any{"Traced": length(&x.Traced, r.Unit), "More": more(x.Traced-x.From, r.Unit)}
	switch {
	case x.Taken:
		row.Fixed, row.Note = true, lang.L("Measured, stays. The silhouette has {{.Traced}}, {{.More}}.", said)
		return row
	case x.Held():
		row.Note = lang.L("As far as the tape allows; the silhouette has {{.Traced}}.", said)
	case !x.Changes():
		row.Note = lang.L("As the silhouette.")
	}
	if row.Fixed = !x.Changes(); !row.Fixed {
		row.Change += " → " + length(&x.To, r.Unit)
		row.Ticked = p.ticked(x, r)
		row.Note = join(row.Note, over(x.Level, r))
	}
	return row
}

// more writes a difference with its sign.
func more(mm float64, u string) string {
	if mm > 0 {
		return "+" + length(&mm, u)
	}
	return length(&mm, u)
}

// ticked reports whether a change is to be made: as a person said, or where nothing hides the figure.
func (p *photoPlace) ticked(x trace.Proposal, r record.Record) bool {
	if said, ok := p.ticks[string(x.Level)]; ok {
		return said
	}
	return over(x.Level, r) == ""
}

func (p *photoPlace) tick(level string, on bool) {
	p.ticks[level] = on
	p.show()
}

// wanted are the changes that are ticked.
func (p *photoPlace) wanted(all []trace.Proposal) []trace.Proposal {
	r := p.doc.Record()
	return slices.DeleteFunc(slices.Clone(all), func(x trace.Proposal) bool { return x.Taken || !x.Changes() || !p.ticked(x, r) })
}

func (p *photoPlace) showApply(all []trace.Proposal) {
	n := len(p.wanted(all))
	text := lang.L("Fit {{.Count}} levels", map[string]any{"Count": n})
	if n == 1 {
		text = lang.L("Fit 1 level")
	}
	if p.apply.Text != text {
		p.apply.SetText(text)
	}
	if p.apply.Enable(); n == 0 {
		p.apply.Disable()
	}
}

// take fits the figure to the silhouette at the levels that are ticked, as one step. Every girth stays.
func (p *photoPlace) take() {
	f, _ := p.inHand()
	all, err := p.proposals(f)
	if err != nil {
		p.tell(err)
		return
	}
	r := p.doc.Record()
	r.Mount.Shape = trace.Apply(r.Mount.Shape, p.wanted(all))
	for l, a := range r.Mount.Shape {
		if err := record.CheckAdjustment(l, a, r.Unit); err != nil {
			p.tell(err)
			return
		}
	}
	p.doc.Change("silhouette of the photograph", r)
}
