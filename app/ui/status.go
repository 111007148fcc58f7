package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/patterns/plan"
)

// status is the line at the foot: whether the mount fits, what else there is to know, and the way out.
type status struct {
	verdict *widget.Label
	busy    *widget.Activity
	notices *widget.Button
	export  *widget.Button
	box     fyne.CanvasObject
	onOpen  func()
}

func newStatus(export func()) *status {
	s := &status{verdict: widget.NewLabel(""), busy: widget.NewActivity()}
	s.verdict.Truncation = fyne.TextTruncateEllipsis
	s.notices = widget.NewButtonWithIcon("", theme.InfoIcon(), func() { s.onOpen() })
	s.notices.Importance = widget.LowImportance
	s.export = widget.NewButton(lang.L("Export templates…"), export)
	s.export.Importance = widget.HighImportance
	s.busy.Hide()
	s.notices.Hide()
	right := container.NewHBox(s.busy, s.notices, s.export)
	s.box = container.New(layout.NewCustomPaddedLayout(0, 4, 4, 8), container.NewBorder(nil, nil, nil, right, s.verdict))
	return s
}

// show tells what the plan of a record comes to, or why there is none.
func (s *status) show(p plan.Plan, err error, busy bool, r record.Record) {
	s.work(busy)
	if busy && err == nil && len(p.Levels) == 0 {
		return
	}
	text, importance := verdict(p, r.Unit)
	if err != nil {
		text, importance = err.Error(), widget.WarningImportance
		if lacks := lacks(r); lacks != "" {
			text = lacks
		}
	}
	if s.verdict.Importance != importance {
		s.verdict.Importance = importance
		s.verdict.Refresh()
	}
	set(s.verdict, text)
	s.count(len(p.Warnings))
}

// lacks says what must still be typed; "" when nothing is missing.
func lacks(r record.Record) string {
	var parts []string
	for _, place := range document.Missing(r) {
		var labels []string
		for _, f := range place.Fields {
			labels = append(labels, lang.L(f.Label))
		}
		parts = append(parts, lang.L("of the "+strings.ToLower(place.Name))+" "+strings.Join(labels, ", "))
	}
	if len(parts) == 0 {
		return ""
	}
	return lang.L("Still needed:") + " " + strings.Join(parts, "; ") + "."
}

func (s *status) work(busy bool) {
	if busy == s.busy.Visible() {
		return
	}
	if busy {
		s.busy.Show()
		s.busy.Start()
		return
	}
	s.busy.Stop()
	s.busy.Hide()
}

// verdict names the level where the garment sits tightest.
func verdict(p plan.Plan, u string) (string, widget.Importance) {
	var tight *plan.Level
	for i, l := range p.Levels {
		if l.Clearance != nil && (tight == nil || *l.Clearance < *tight.Clearance) {
			tight = &p.Levels[i]
		}
	}
	switch {
	case tight == nil:
		return "", widget.MediumImportance
	case *tight.Clearance < 0:
		over := -*tight.Clearance
		return lang.L("Would strain: at the {{.Level}} the mount is {{.Length}} larger than the garment.",
			map[string]any{"Level": lang.L(tight.Name), "Length": length(&over, u) + " " + u}), widget.WarningImportance
	}
	said := lang.L("No tape strains. Tightest at the {{.Level}}, with {{.Length}} to spare.",
		map[string]any{"Level": lang.L(tight.Name), "Length": length(tight.Clearance, u) + " " + u})
	if level, ok := outside(p); ok {
		said = lang.L("No tape strains, but the form stands out of the garment's outline at the {{.Level}}.", map[string]any{"Level": lang.L(level)})
	}
	if c := p.Doubt.ChanceAnywhere; c >= worthSaying {
		said += " " + lang.L("Chance of strain {{.Chance}}.", map[string]any{"Chance": chance(&c)})
	}
	return said, widget.MediumImportance
}

// worthSaying is the chance of strain that a mount is to be kept under.
const worthSaying = 0.01

// outside is the level at which a form stands farthest outside the garment as drawn, though its tape does not strain.
func outside(p plan.Plan) (level string, ok bool) {
	most := 0.0
	for _, w := range p.Warnings {
		if w.Code == "form-stands-out" && w.Amount > most {
			level, most = w.Level, w.Amount
		}
	}
	return level, most > 0
}

func (s *status) count(notices int) {
	text := lang.L("{{.Count}} notices", map[string]any{"Count": notices})
	if notices == 1 {
		text = lang.L("1 notice")
	}
	if s.notices.Text != text {
		s.notices.SetText(text)
	}
	if s.notices.Hide(); notices > 0 {
		s.notices.Show()
	}
}
