package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// TableRow is a name and numbers beside it.
type TableRow struct {
	Name    string
	Numbers []string
	Strong  bool // something is to be seen here
}

// Table is a small table of numbers with heads over its columns, which are equally wide.
type Table struct {
	widget.BaseWidget
	rows []TableRow
	box  *fyne.Container
}

// NewTable returns an empty table.
func NewTable() *Table {
	t := &Table{box: container.New(layout.NewCustomPaddedVBoxLayout(-10))}
	t.ExtendBaseWidget(t)
	return t
}

// Draw shows these rows, the first of heads over the names.
func (t *Table) Draw(heads []string, rows []TableRow) {
	t.rows, t.box.Objects = rows, nil
	head := tableLine(heads[0], heads[1:], false)
	for _, o := range head.Objects {
		o.(*widget.Label).Importance = widget.LowImportance
	}
	t.box.Add(head)
	for _, r := range rows {
		t.box.Add(tableLine(r.Name, r.Numbers, r.Strong))
	}
	t.Refresh()
}

// Row returns the row of a name, and whether there is one.
func (t *Table) Row(name string) (TableRow, bool) {
	for _, r := range t.rows {
		if r.Name == name {
			return r, true
		}
	}
	return TableRow{}, false
}

func tableLine(name string, numbers []string, strong bool) *fyne.Container {
	line := container.NewGridWithColumns(1 + len(numbers))
	for i, text := range append([]string{name}, numbers...) {
		l := widget.NewLabel(text)
		l.SizeName = theme.SizeNameCaptionText
		l.TextStyle.Bold = strong
		if i > 0 {
			l.Alignment = fyne.TextAlignTrailing
		}
		line.Add(l)
	}
	return line
}

// CreateRenderer is for the toolkit.
func (t *Table) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(t.box) }
