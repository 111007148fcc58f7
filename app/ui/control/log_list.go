package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// LogList is a short list of what was written down, oldest first. Each line can be opened and taken out.
type LogList struct {
	widget.BaseWidget
	OnOpen, OnRemove func(i int)

	lines  []string
	chosen int
	rows   []*logRow
	box    *fyne.Container
}

// logRow is one line with its two buttons.
type logRow struct {
	text         *widget.Label
	open, remove *widget.Button
}

// NewLogList returns an empty list.
func NewLogList() *LogList {
	l := &LogList{OnOpen: func(int) {}, OnRemove: func(int) {}, chosen: -1, box: container.NewVBox()}
	l.ExtendBaseWidget(l)
	return l
}

// Fill shows these lines, one of them in hand; −1 is none.
func (l *LogList) Fill(lines []string, chosen int) {
	for len(l.rows) > len(lines) {
		l.rows = l.rows[:len(l.rows)-1]
		l.box.Objects = l.box.Objects[:len(l.rows)]
	}
	for len(l.rows) < len(lines) {
		l.add(len(l.rows))
	}
	l.lines, l.chosen = lines, chosen
	for i, r := range l.rows {
		if bold := i == chosen; r.text.Text != lines[i] || r.text.TextStyle.Bold != bold {
			r.text.TextStyle.Bold = bold
			r.text.SetText(lines[i])
		}
	}
	l.box.Refresh()
}

// Lines returns what is shown.
func (l *LogList) Lines() []string { return l.lines }

func (l *LogList) add(i int) {
	r := &logRow{
		text:   caption(),
		open:   widget.NewButtonWithIcon("", theme.DocumentCreateIcon(), func() { l.OnOpen(i) }),
		remove: widget.NewButtonWithIcon("", theme.DeleteIcon(), func() { l.OnRemove(i) }),
	}
	r.text.Show()
	r.open.Importance, r.remove.Importance = widget.LowImportance, widget.LowImportance
	l.rows = append(l.rows, r)
	l.box.Add(container.NewBorder(nil, nil, nil, container.NewHBox(r.open, r.remove), r.text))
}

// CreateRenderer is for the toolkit.
func (l *LogList) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(l.box) }
