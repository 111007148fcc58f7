package ui

import (
	"math"
	"strings"

	"fyne.io/fyne/v2/lang"

	"understructure/app/ui/control"
	"understructure/app/ui/look"
	"understructure/app/ui/picture"
	"understructure/geometry/fit"
	"understructure/patterns/plan"
)

// showLevel shows the section of the picked level, or at the place that one went to, and what is to be said of it.
func (f *figure) showLevel() {
	l, ok := f.picked()
	if !ok {
		return
	}
	f.key.Draw([]string{lang.L("mm round"), lang.L("broad"), lang.L("deep")}, f.lines(l))
	f.note(l)
	if f.spot != nil {
		f.showPlace(l, *f.spot)
		return
	}
	set(f.level, control.Sentence(lang.L(l.Name)))
	f.section.Draw(f.stage, l.Height)
	f.section.Shape(f.body.Ring(picture.Garment, l.Height))
	if !f.shaping.busy() {
		f.say(f.above(l.Height), lang.L("Clearance {{.Clearance}} mm, ease wanted {{.Ease}} mm",
			map[string]any{"Clearance": whole(l.Clearance), "Ease": whole(&l.Ease)}), f.strain(l))
	}
}

// showPlace shows the section through a place, which is not the one of a level and cannot be shaped.
func (f *figure) showPlace(l plan.Level, s control.Spot) {
	set(f.level, control.Sentence(lang.L(l.Name))+", "+control.SideWord(fit.Side(int(math.Round(s.Turn)))))
	f.section.Draw(f.stage, s.Height)
	f.section.Shape(nil)
	here := "–"
	if point, _, ok := f.body.ClearanceAt(s.Height, s.Turn); ok {
		here = whole(&point)
	}
	f.say(f.above(s.Height), lang.L("Clearance here {{.Here}} mm", map[string]any{"Here": here}), f.strain(l))
}

// say writes what is to be said of the level in hand, three lines of it.
func (f *figure) say(lines ...string) {
	for i, l := range f.said {
		text := ""
		if i < len(lines) {
			text = lines[i]
		}
		set(l, text)
	}
}

// above says how high a place lies.
func (f *figure) above(z float64) string {
	return lang.L("{{.Height}} above the floor", map[string]any{"Height": length(&z, f.unit) + " " + f.unit})
}

func (f *figure) strain(l plan.Level) string {
	return lang.L("Chance of strain {{.Chance}}; 1 % at {{.Ease}} mm ease", map[string]any{"Chance": chance(l.StrainChance), "Ease": whole(l.EaseForOnePercent)})
}

// note lists what the plan remarks on a level.
func (f *figure) note(l plan.Level) {
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
}

// lines are the outlines at a level, each with its girth, breadth and depth. Lengths beside the section are in
// millimetres, like those of the templates.
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
