package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Proposed is a change of one value that a person may take over.
type Proposed struct {
	Key    string
	Name   string
	Change string // from what to what
	Note   string // what is to be said of it, "" for nothing
	Ticked bool   // it is to be taken over
	Fixed  bool   // it cannot be
}

// ProposalList lists changes, each with a box to tick.
type ProposalList struct {
	widget.BaseWidget
	OnTicked func(key string, on bool) // by a person

	rows []*proposalRow
	box  *fyne.Container
}

// proposalRow is one change.
type proposalRow struct {
	key          string
	tick         *widget.Check
	change, note *widget.Label
}

// NewProposalList returns an empty list.
func NewProposalList() *ProposalList {
	l := &ProposalList{OnTicked: func(string, bool) {}, box: container.New(layout.NewCustomPaddedVBoxLayout(0))}
	l.ExtendBaseWidget(l)
	return l
}

// Fill shows these changes. Rows stay as long as the keys are the same.
func (l *ProposalList) Fill(all []Proposed) {
	if !l.same(all) {
		l.rows, l.box.Objects = nil, nil
		for _, p := range all {
			l.add(p.Key)
		}
	}
	for i, p := range all {
		l.rows[i].show(p)
	}
	l.box.Refresh()
	l.Refresh()
}

func (l *ProposalList) same(all []Proposed) bool {
	if len(all) != len(l.rows) {
		return false
	}
	for i, p := range all {
		if p.Key != l.rows[i].key {
			return false
		}
	}
	return true
}

func (l *ProposalList) add(key string) {
	r := &proposalRow{key: key, change: caption(), note: caption()}
	r.change.Wrapping, r.change.Alignment = fyne.TextWrapOff, fyne.TextAlignTrailing
	r.change.Show()
	r.note.Importance = widget.LowImportance
	r.tick = widget.NewCheck("", func(on bool) { l.OnTicked(key, on) })
	l.rows = append(l.rows, r)
	line := container.NewBorder(nil, nil, nil, r.change, r.tick)
	l.box.Add(container.New(proposalLayout{}, line, r.note))
}

func (r *proposalRow) show(p Proposed) {
	r.tick.Text, r.tick.Checked = p.Name, p.Ticked && !p.Fixed
	if r.tick.Enable(); p.Fixed {
		r.tick.Disable()
	}
	r.tick.Refresh()
	say(r.change, p.Change)
	say(r.note, p.Note)
}

// Tick ticks the change of a key, or takes the tick away, as a person does.
func (l *ProposalList) Tick(key string, on bool) {
	for _, r := range l.rows {
		if r.key == key {
			r.tick.SetChecked(on)
		}
	}
}

// Shown is what the list says of a key.
func (l *ProposalList) Shown(key string) (p Proposed, found bool) {
	for _, r := range l.rows {
		if r.key == key {
			return Proposed{key, r.tick.Text, r.change.Text, r.note.Text, r.tick.Checked, r.tick.Disabled()}, true
		}
	}
	return Proposed{}, false
}

// CreateRenderer is for the toolkit.
func (l *ProposalList) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(l.box) }

// proposalLayout has a change on one line and, close below its name, what is to be said of it.
type proposalLayout struct{}

// How much closer lines stand than the toolkit puts them, in its units.
const (
	closeLines = 8
	closeNote  = 10
)

// MinSize has room for the note where there is one.
func (proposalLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	size := o[0].MinSize().SubtractWidthHeight(0, closeLines)
	if o[1].Visible() {
		size.Height += o[1].MinSize().Height - closeNote
	}
	return size
}

// Layout indents the note by the box to tick.
func (proposalLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	line, note := o[0].MinSize().Height, o[1].MinSize().Height
	indent := theme.Size(theme.SizeNameInlineIcon) + theme.Size(theme.SizeNameInnerPadding) - 4
	o[0].Move(fyne.NewPos(0, -closeLines/2))
	o[0].Resize(fyne.NewSize(size.Width, line))
	o[1].Move(fyne.NewPos(indent, line-closeLines/2-closeNote))
	o[1].Resize(fyne.NewSize(size.Width-indent, note))
}
