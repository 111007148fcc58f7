package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/control"
	"understructure/app/ui/look"
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
	key       *control.Key
	box       fyne.CanvasObject // both, with all that is said of the section

	plan plan.Plan
	body *picture.Body
	unit string
}

func newFigure() *figure {
	f := &figure{
		elevation: control.NewElevation(), section: control.NewSection(),
		level: widget.NewLabel(""), numbers: widget.NewLabel(""), notes: widget.NewLabel(""),
		key: control.NewKey(), body: new(picture.Body),
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
	foot := container.New(layout.NewCustomPaddedLayout(4, 8, 6, 14), container.NewVBox(f.key, f.noted))
	f.box = container.New(figureColumns{}, f.elevation, container.NewBorder(head, foot, nil, nil, f.section))
	return f
}

// mostNotes is how high notes may stand before they are scrolled.
const mostNotes = 136

// show draws a plan, with lengths in the unit u; while there is none, nothing is shown.
func (f *figure) show(p plan.Plan, u string) {
	f.plan, f.unit, f.body = p, u, picture.NewBody(p.Surface)
	f.box.Hide()
	if f.body.Empty() {
		return
	}
	f.box.Show()
	f.elevation.Draw(f.body, f.tapes(), rules[u])
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
			Taken: f.garment(l), Built: length(l.BuiltGirth, f.unit), Clearance: length(l.Clearance, f.unit),
			Strains: l.Clearance != nil && *l.Clearance < 0,
		})
	}
	return out
}

// garment marks with a tilde a girth that was drawn from statistics, not taken.
func (f *figure) garment(l plan.Level) string {
	if l.GarmentGirth == nil || l.Taken {
		return length(l.GarmentGirth, f.unit)
	}
	return "~" + length(l.GarmentGirth, f.unit)
}

func (f *figure) showLevel() {
	for _, l := range f.plan.Levels {
		if l.Name == f.elevation.Picked() {
			f.showSection(l)
			return
		}
	}
}

// about says in words how the garment sits at a level. Lengths beside the section are in millimetres,
// like those of the templates.
func (f *figure) about(l plan.Level) string {
	return lang.L("{{.Height}} above the floor\nClearance {{.Clearance}} mm, ease wanted {{.Ease}} mm\nChance of strain {{.Chance}}", map[string]any{
		"Height": length(&l.Height, f.unit) + " " + f.unit, "Clearance": whole(l.Clearance), "Ease": whole(&l.Ease), "Chance": chance(l.StrainChance)})
}

// lines are the outlines at a level, each with its girth, breadth and depth.
func (f *figure) lines(l plan.Level) []control.Line {
	garment := whole(l.GarmentGirth)
	if !l.Taken {
		garment = "~" + garment
	}
	lines := []control.Line{
		{Name: lang.L("garment, inside"), Colour: look.ColorInk, Numbers: f.sizes(picture.Garment, l.Height, garment)},
		{Name: lang.L("wanted"), Colour: look.ColorWanted, Numbers: f.sizes(picture.Wanted, l.Height, whole(l.TargetGirth))},
		{Name: lang.L("mount, built"), Colour: look.ColorSkin, Stroke: control.Area, Numbers: f.sizes(picture.Built, l.Height, whole(l.BuiltGirth))},
	}
	if l.FormGirth != nil {
		lines = append(lines, control.Line{Name: lang.L("form"), Colour: look.ColorForm, Stroke: control.Dashed, Numbers: f.sizes(picture.Form, l.Height, whole(l.FormGirth))})
	}
	if core := f.body.Ring(picture.Core, l.Height); len(core) > 0 {
		girth := core.Tape()
		lines = append(lines, control.Line{Name: lang.L("foam"), Colour: look.ColorForm, Stroke: control.Dashed, Numbers: f.sizes(picture.Core, l.Height, whole(&girth))})
	}
	return append(lines,
		control.Line{Name: lang.L("too large: strain"), Colour: look.ColorStrain, Stroke: control.Area},
		control.Line{Name: lang.L("slack"), Colour: look.ColorSlack, Stroke: control.Area})
}

func (f *figure) sizes(k picture.Kind, z float64, girth string) []string {
	ring := f.body.Ring(k, z)
	if len(ring) == 0 {
		return []string{girth, "–", "–"}
	}
	lo, hi := ring.Bounds()
	broad, deep := hi.X-lo.X, hi.Y-lo.Y
	return []string{girth, whole(&broad), whole(&deep)}
}

func (f *figure) showSection(l plan.Level) {
	set(f.level, control.Sentence(lang.L(l.Name)))
	set(f.numbers, f.about(l))
	f.key.Draw([]string{lang.L("mm round"), lang.L("broad"), lang.L("deep")}, f.lines(l))
	var notes []string
	for _, w := range f.plan.Warnings {
		if w.Level == l.Name {
			notes = append(notes, w.Message)
		}
	}
	set(f.notes, strings.Join(notes, "\n"))
	f.noted.SetMinSize(fyne.NewSize(0, min(f.notes.MinSize().Height, mostNotes)))
	if f.noted.Hide(); len(notes) > 0 {
		f.noted.Show()
	}
	f.section.Draw(f.body, l.Height)
}
