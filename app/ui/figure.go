package ui

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/control"
	"understructure/app/ui/picture"
	"understructure/geometry/measure"
	"understructure/patterns/plan"
)

// figure is the picture: the elevations, and beside them the section of the picked level.
type figure struct {
	elevation *control.Elevation
	section   *control.Section
	level     *widget.Label
	numbers   *widget.Label
	notes     *widget.Label
	noted     *container.Scroll
	legend    *fyne.Container
	split     *container.Split

	plan plan.Plan
	body *picture.Body
	unit string
}

func newFigure() *figure {
	f := &figure{
		elevation: control.NewElevation(), section: control.NewSection(),
		level: widget.NewLabel(""), numbers: widget.NewLabel(""), notes: widget.NewLabel(""),
		legend: container.NewVBox(), body: new(picture.Body),
	}
	f.elevation.Pick(string(measure.Waist))
	f.elevation.OnPicked = func(string) { f.showLevel() }
	f.level.TextStyle.Bold = true
	f.level.SizeName = theme.SizeNameSubHeadingText
	f.notes.Wrapping = fyne.TextWrapWord
	f.numbers.SizeName = theme.SizeNameCaptionText
	f.notes.SizeName = theme.SizeNameCaptionText
	head := together(f.level, f.numbers)
	f.noted = container.NewVScroll(f.notes)
	f.noted.SetMinSize(fyne.NewSize(0, 96))
	foot := container.NewVBox(f.noted, container.NewPadded(f.legend))
	f.split = container.NewHSplit(f.elevation, container.NewBorder(head, foot, nil, nil, f.section))
	f.split.Offset = 0.72
	return f
}

// show draws a plan, with lengths in the unit u.
func (f *figure) show(p plan.Plan, u string) {
	f.plan, f.unit, f.body = p, u, picture.NewBody(p.Surface)
	f.elevation.Draw(f.body, f.tapes(), rules[u])
	f.legend.Objects = []fyne.CanvasObject{control.NewLegend(len(p.Surface.Form) > 0, len(p.Surface.Core) > 0)}
	f.legend.Refresh()
	f.showLevel()
}

// rules are the height rules by unit: a tick every 5 cm or 2 inches, numbers at 10 cm or 4 inches.
var rules = map[string]control.Rule{
	"mm": {Name: "mm", Step: 50, Count: 2, Unit: 1},
	"cm": {Name: "cm", Step: 50, Count: 2, Unit: 10},
	"in": {Name: "in", Step: 50.8, Count: 2, Unit: 25.4},
}

func (f *figure) tapes() []control.Tape {
	var out []control.Tape
	for _, l := range f.plan.Levels {
		out = append(out, control.Tape{
			Name: l.Name, Height: l.Height,
			Taken: f.garment(l), Built: f.length(l.BuiltGirth), Clearance: f.length(l.Clearance),
			Strains: l.Clearance != nil && *l.Clearance < 0,
		})
	}
	return out
}

// garment marks with a tilde a girth that was drawn from statistics, not taken.
func (f *figure) garment(l plan.Level) string {
	if l.GarmentGirth == nil || l.Taken {
		return f.length(l.GarmentGirth)
	}
	return "~" + f.length(l.GarmentGirth)
}

// length writes to a millimetre, the finest that a girth is worth; with a true minus for strain.
func (f *figure) length(v *float64) string {
	if v == nil {
		return "–"
	}
	digits, scale := 1, 10.0
	switch f.unit {
	case "mm":
		digits, scale = 0, 1
	case "in":
		digits, scale = 2, 25.4
	}
	s := fmt.Sprintf("%.*f", digits, *v/scale)
	return strings.Replace(s, "-", "−", 1)
}

func (f *figure) showLevel() {
	for _, l := range f.plan.Levels {
		if l.Name == f.elevation.Picked() {
			f.showSection(l)
			return
		}
	}
}

// numbersAt says in words what the section measures.
func (f *figure) numbersAt(l plan.Level) string {
	with := func(v *float64) string { return f.length(v) + " " + f.unit }
	lines := []string{
		"Garment " + with(l.GarmentGirth) + ", mount " + with(l.BuiltGirth),
		"Clearance " + with(l.Clearance),
	}
	if ring := f.body.Ring(picture.Built, l.Height); len(ring) > 0 {
		lo, hi := ring.Bounds()
		broad, deep := hi.X-lo.X, hi.Y-lo.Y
		lines = append(lines, "Mount "+with(&broad)+" broad, "+with(&deep)+" deep", with(&l.Height)+" above the floor")
	}
	return strings.Join(lines, "\n")
}

func (f *figure) showSection(l plan.Level) {
	set(f.level, strings.ToUpper(l.Name[:1])+l.Name[1:])
	set(f.numbers, f.numbersAt(l))
	var notes []string
	for _, w := range f.plan.Warnings {
		if w.Level == l.Name {
			notes = append(notes, w.Message)
		}
	}
	set(f.notes, strings.Join(notes, "\n"))
	if f.noted.Hide(); len(notes) > 0 {
		f.noted.Show()
	}
	f.section.Draw(f.body, l.Height)
}
