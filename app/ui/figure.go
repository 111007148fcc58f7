package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
	"understructure/app/ui/look"
	"understructure/app/ui/picture"
	"understructure/geometry/measure"
	"understructure/geometry/torso"
	"understructure/patterns/plan"
)

// figure is the picture: the mount from its sides, and beside it the section of the picked level.
type figure struct {
	doc     *document.Document
	shaping *shaping

	views     *control.Switch
	spin      *widget.Button
	colours   *control.Switch
	elevation *control.Elevation
	table     *control.Turntable
	unrolled  *control.Map
	legend    *control.Legend
	layers    *widget.Slider
	layer     *widget.Label

	section *control.Section
	level   *widget.Label
	numbers *widget.Label
	panels  *control.Switch
	notes   *widget.Label
	key     *control.Key
	worst   *control.PlaceList
	below   map[string]fyne.CanvasObject // by the word of panels
	box     fyne.CanvasObject            // everything

	plan  plan.Plan
	body  *picture.Body // the finished mount
	stage *picture.Body // as far as it is built
	spot  *control.Spot // that one went to; nil for none
	unit  string

	onLevel func() // another level was picked
}

func newFigure(d *document.Document, of func(record.Record) (torso.Torso, error)) *figure {
	f := &figure{
		doc: d, shaping: &shaping{doc: d, figure: of},
		elevation: control.NewElevation(), table: control.NewTurntable(), unrolled: control.NewMap(),
		legend: control.NewLegend(), layers: widget.NewSlider(0, 0), layer: widget.NewLabel(""),
		section: control.NewSection(), level: widget.NewLabel(""), numbers: widget.NewLabel(""), notes: widget.NewLabel(""),
		key: control.NewKey(), worst: control.NewPlaceList(lang.L("Nothing touches, strains or hangs slack.")),
		body: new(picture.Body), stage: new(picture.Body), onLevel: func() {},
	}
	f.elevation.Pick(string(measure.Waist))
	f.listen()
	f.layOut()
	return f
}

// listen connects what a person does to what happens.
func (f *figure) listen() {
	f.elevation.OnPicked = func(string) { f.point(nil); f.drawTable(); f.showLevel(); f.onLevel() }
	f.elevation.OnMoved = f.lift
	f.elevation.OnSettled = f.shaping.settle
	f.elevation.OnType = f.typeGirth
	f.table.OnPicked, f.unrolled.OnPicked, f.worst.OnPicked = f.goTo, f.goTo, f.goTo
	f.section.OnPulled = f.pull
	f.section.OnSettled = f.shaping.settle
	f.section.OnGivenUp = f.shaping.giveUp
	f.layers.OnChanged = func(float64) { f.drawStage() }
}

// show draws a plan, with lengths in the unit u; while there is none, nothing is shown. A plan that is shown
// already is left as it is, with what the hand has moved since.
func (f *figure) show(p plan.Plan, u string) {
	if u == f.unit && one(p.Surface.Heights, f.plan.Surface.Heights) && len(p.Stages) == len(f.plan.Stages) {
		return
	}
	f.plan, f.unit, f.body = p, u, picture.NewBody(p.Surface)
	f.box.Hide()
	if f.body.Empty() {
		return
	}
	f.box.Show()
	f.showLayers()
	f.drawStage()
	f.listWorst()
	f.showLevel()
}

// one reports whether two lists are the same one in memory.
func one(a, b []float64) bool { return len(a) > 0 && len(b) > 0 && &a[0] == &b[0] }

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
	if len(notes) == 0 {
		notes = []string{lang.L("Nothing to note at this level.")}
	}
	set(f.notes, strings.Join(notes, "\n"))
	height := l.Height
	if f.spot != nil {
		height = f.spot.Height
	}
	f.section.Draw(f.stage, height)
	f.section.Shape(f.body.Ring(picture.Garment, l.Height))
}
