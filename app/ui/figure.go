package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
	"understructure/app/ui/picture"
	"understructure/geometry/measure"
	"understructure/geometry/torso"
	"understructure/patterns/plan"
)

// figure is the picture: the mount from its sides or laid out flat, and beside it the section of the picked level.
type figure struct {
	doc     *document.Document
	shaping *shaping

	shows     *control.Switch // mount, clearance or map
	views     *control.Switch
	elevation *control.Elevation
	unrolled  *control.Map
	legend    *control.Legend
	layers    *widget.Slider
	layer     *widget.Label

	section *control.Section
	level   *widget.Label
	said    [3]*widget.Label
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
		elevation: control.NewElevation(), unrolled: control.NewMap(), legend: control.NewLegend(),
		layers: widget.NewSlider(0, 1), layer: widget.NewLabel(""),
		section: control.NewSection(), level: widget.NewLabel(""), notes: widget.NewLabel(""), key: control.NewKey(),
		worst: control.NewPlaceList(lang.L("mm at the point"), lang.L("Nothing strains, touches or hangs slack.")),
		body:  new(picture.Body), stage: new(picture.Body), onLevel: func() {},
	}
	for i := range f.said {
		f.said[i] = widget.NewLabel("")
	}
	f.layers.Value = f.layers.Max
	f.elevation.Pick(string(measure.Waist))
	f.layOut()
	f.listen()
	return f
}

// listen connects what a person does to what happens.
func (f *figure) listen() {
	e := f.elevation
	e.OnPicked = func(string) { f.point(nil); f.showLevel(); f.onLevel() }
	e.OnTurned = f.markView
	e.OnMoved, e.OnHeld, e.OnType = f.lift, f.explain, f.typeGirth
	e.OnSettled, e.OnGivenUp = f.letGo, f.giveUp
	e.OnPlace, f.unrolled.OnPicked, f.worst.OnPicked = f.goTo, f.goTo, f.goTo
	f.section.OnPulled = f.pull
	f.section.OnSettled, f.section.OnGivenUp = f.letGo, f.giveUp
	f.layers.OnChanged = func(float64) { f.drawStage() }
	f.shows.OnChosen = func(string) { f.look() }
	f.views.OnChosen = f.lookFrom
	fyne.CurrentApp().Lifecycle().SetOnExitedForeground(e.Halt)
}

// show draws a plan, with lengths in the unit u; while there is none, nothing is shown. A plan that is shown
// already is left as it is, with what the hand has moved since.
func (f *figure) show(p plan.Plan, u string) {
	_, err := f.doc.Plan()
	if u == f.unit && one(p.Surface.Heights, f.plan.Surface.Heights) && len(p.Stages) == len(f.plan.Stages) {
		if err != nil {
			f.follow()
		}
		return
	}
	f.plan, f.unit, f.body = p, u, picture.NewBody(p.Surface)
	f.box.Hide()
	if !f.body.Empty() {
		f.box.Show()
		f.showLayers()
		f.drawStage()
		f.listWorst()
		f.showLevel()
	}
	f.follow()
}

// one reports whether two lists are the same one in memory.
func one(a, b []float64) bool { return len(a) > 0 && len(b) > 0 && &a[0] == &b[0] }

// rules are the height rules by unit: a tick every 5 cm or 2 inches, numbers at 10 cm or 4 inches.
var rules = map[string]control.Rule{
	"mm": {Name: "mm", Step: 50, Count: 2, Unit: 1},
	"cm": {Name: "cm", Step: 50, Count: 2, Unit: 10, Digits: 1},
	"in": {Name: "in", Step: 50.8, Count: 2, Unit: 25.4, Digits: 2},
}

func (f *figure) tapes() []control.Tape {
	var out []control.Tape
	for _, l := range f.plan.Levels {
		out = append(out, control.Tape{
			Name: l.Name, Height: l.Height, Fixed: l.Name == string(measure.Waist),
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

// picked is the level in hand; false where the figure has none of the name.
func (f *figure) picked() (plan.Level, bool) {
	for _, l := range f.plan.Levels {
		if l.Name == f.elevation.Picked() {
			return l, true
		}
	}
	return plan.Level{}, false
}
