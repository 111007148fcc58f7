package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"understructure/app/document"
	"understructure/app/record"
)

// measurePlace is where the tape readings of garment and form are typed.
type measurePlace struct {
	doc           *document.Document
	tabs          *container.AppTabs
	garment, form *values
	formTab       *container.TabItem
}

func newMeasurePlace(d *document.Document) *measurePlace {
	m := &measurePlace{doc: d, garment: newValues(d, fieldsOf("Garment")), form: newValues(d, fieldsOf("Form"))}
	m.formTab = container.NewTabItem("Form", m.form.list)
	m.tabs = container.NewAppTabs(container.NewTabItem("Garment", m.garment.list))
	return m
}

func (m *measurePlace) name() string             { return "Measure" }
func (m *measurePlace) side() fyne.CanvasObject  { return m.tabs }
func (m *measurePlace) stage() fyne.CanvasObject { return nil }

func (m *measurePlace) show() {
	switch has, shown := hasForm(m.doc.Record()), len(m.tabs.Items) > 1; {
	case has && !shown:
		m.tabs.Append(m.formTab)
	case !has && shown:
		m.tabs.Remove(m.formTab)
	}
	m.garment.show()
	m.form.show()
}

// hasForm reports whether there is a form to be measured.
func hasForm(r record.Record) bool { return len(fieldsOf("Form")(r)) > 0 }
