package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/geometry/measure"
)

// shapePlace is where the picked level is shaped by typed numbers.
type shapePlace struct {
	window *Window
	doc    *document.Document
	values *values
	one    *widget.Button // lets the picked level follow the measurements again
	all    *widget.Button // lets every level
	box    fyne.CanvasObject
}

func newShapePlace(w *Window) *shapePlace {
	s := &shapePlace{window: w, doc: w.doc}
	s.values = newValues(w.doc, s.fields)
	advice := widget.NewLabel(lang.L("Pick a level in the figure. Pull the round handles of its section, with Shift for the balance, or type here. The tape stays as it is taken. Drag a tape up or down to move the level."))
	advice.Wrapping = fyne.TextWrapWord
	small(advice)
	s.one = widget.NewButton(lang.L("As measured"), s.clear)
	s.all = widget.NewButton(lang.L("All as measured"), w.doc.ClearShape)
	s.one.Importance, s.all.Importance = widget.LowImportance, widget.LowImportance
	s.box = container.NewBorder(advice, container.NewHBox(s.one, s.all), nil, nil, s.values.list)
	return s
}

func (s *shapePlace) name() string             { return "Shape" }
func (s *shapePlace) side() fyne.CanvasObject  { return s.box }
func (s *shapePlace) stage() fyne.CanvasObject { return nil }

func (s *shapePlace) picked() measure.Level {
	return measure.Level(s.window.figure.elevation.Picked())
}

// fields are what can be set at the picked level, under its name.
func (s *shapePlace) fields(r record.Record) []document.Field {
	fields := document.ShapeFields(r, s.picked())
	for i := range fields {
		fields[i].Group = string(s.picked())
	}
	return fields
}

func (s *shapePlace) show() {
	shape := s.doc.Record().Mount.Shape
	able(s.one, !shape[s.picked()].Empty())
	able(s.all, !shape.Empty())
	said := sayings(s.doc)
	s.now(said.drawn)
	s.values.fill(said)
}

// able lets a button be pressed, or not.
func able(b *widget.Button, yes bool) {
	if yes == b.Disabled() {
		b.Disable()
		if yes {
			b.Enable()
		}
	}
}

// now adds what the figure has at the picked level, for whoever wants another.
func (s *shapePlace) now(drawn map[string]float64) {
	t, err := s.window.options.Figure(s.doc.Record())
	if err != nil {
		return // the foot of the window says why
	}
	l := t.At(s.picked())
	at := l.Section.Reading(l.Seam)
	for key, v := range map[string]float64{"height": l.Height, "girth": l.Girth, "breadth": at.Breadth, "depth": at.Depth, "front_arc": at.FrontArc, "left_arc": at.LeftArc} {
		drawn["mount.shape."+string(l.Name)+"."+key] = v
	}
}

// clear lets the picked level follow the measurements again.
func (s *shapePlace) clear() {
	if err := s.doc.SetShape(s.picked(), measure.Adjustment{}); err != nil {
		s.window.failed(err)
	}
	s.doc.Settle()
}
