package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
	"understructure/patterns/tapes"
)

// measurePlace is where it is typed what the garment is, and the tape readings of garment and form.
type measurePlace struct {
	doc           *document.Document
	units         *control.Switch
	tabs          *container.AppTabs
	object        *object
	garment, form *values
	label         *text // of the form
	formTab       *container.TabItem
	box           fyne.CanvasObject
}

func newMeasurePlace(d *document.Document) *measurePlace {
	m := &measurePlace{doc: d, object: newObject(d), garment: newValues(d, fieldsOf("Garment")), form: newValues(d, fieldsOf("Form")), label: newText(document.FormText(), d)}
	m.garment.list.Head, m.form.list.Head = m.object.fold, m.label.row
	m.garment.list.Draw, m.form.list.Draw = tapeOf(d, tapes.Bodice), tapeOf(d, tapes.Form)
	m.formTab = container.NewTabItem(lang.L("Form"), m.form.list)
	m.tabs = container.NewAppTabs(container.NewTabItem(lang.L("Garment"), m.garment.list))
	m.tabs.OnSelected = func(*container.TabItem) { m.show() }
	m.units = control.NewSwitch(record.Units...)
	m.units.OnChosen = m.setUnit
	m.box = container.New(besideTabs{}, m.tabs, m.units)
	return m
}

func (m *measurePlace) setUnit(u string) {
	if err := m.doc.SetUnit(u); err != nil {
		m.doc.Failed(err)
	}
}

func (m *measurePlace) name() string             { return "Measure" }
func (m *measurePlace) side() fyne.CanvasObject  { return m.box }
func (m *measurePlace) stage() fyne.CanvasObject { return nil }

func (m *measurePlace) show() {
	switch has, shown := hasForm(m.doc.Record()), len(m.tabs.Items) > 1; {
	case has && !shown:
		m.tabs.Append(m.formTab)
	case !has && shown:
		m.tabs.Remove(m.formTab)
	}
	r := m.doc.Record()
	m.units.Choose(r.Unit)
	m.object.show()
	m.label.show(r)
	m.garment.show()
	m.form.show()
}

// hasForm reports whether there is a form to be measured.
func hasForm(r record.Record) bool { return len(fieldsOf("Form")(r)) > 0 }

// besideTabs puts a switch into the row of the tabs' names, where there is room behind them.
type besideTabs struct{}

// MinSize is that of the tabs.
func (besideTabs) MinSize(o []fyne.CanvasObject) fyne.Size {
	return o[0].MinSize().Max(o[1].MinSize())
}

// Layout gives the tabs everything, and the switch the upper right corner.
func (besideTabs) Layout(o []fyne.CanvasObject, size fyne.Size) {
	tabs, beside := o[0], o[1].MinSize()
	tabs.Resize(size)
	o[1].Resize(beside)
	o[1].Move(fyne.NewPos(size.Width-beside.Width-4, 2))
}
