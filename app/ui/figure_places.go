package ui

import (
	"fmt"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/control"
	"understructure/app/ui/picture"
	"understructure/geometry/fit"
	"understructure/geometry/measure"
	"understructure/patterns/plan"
)

// showLayers gives the slider a step for each stage of building. A sketch has none, and shows the finished mount.
func (f *figure) showLayers() {
	if len(f.plan.Stages) == 0 {
		return
	}
	last := float64(len(f.plan.Stages) - 1)
	atEnd := f.layers.Value >= f.layers.Max
	f.layers.Max, f.layers.Step = last, 1
	if atEnd || f.layers.Value > last {
		f.layers.Value = last
	}
	f.layers.Refresh()
}

// drawStage draws the mount as far as the slider says it is built.
func (f *figure) drawStage() {
	f.stage = f.body
	if n := len(f.plan.Stages); n > 0 {
		at := min(int(f.layers.Value), n-1)
		set(f.layer, f.plan.Stages[at].Name)
		if at < n-1 {
			f.stage = picture.NewStage(f.plan, at)
		}
	}
	f.elevation.Draw(f.stage, f.tapes(), rules[f.unit])
	f.unrolled.Draw(f.body, f.tapes())
	f.drawTable()
	f.section.Draw(f.stage, f.section.Height())
}

func (f *figure) drawTable() {
	var heights []float64
	picked := math.NaN()
	for _, l := range f.plan.Levels {
		heights = append(heights, l.Height)
		if l.Name == f.elevation.Picked() {
			picked = l.Height
		}
	}
	f.table.Draw(f.stage, heights, picked)
}

// mostPlaces are as many as one would look at.
const mostPlaces = 6

// bandWords say what is the matter at a place.
var bandWords = map[fit.Band]string{
	fit.Straining: "strains, {{.Amount}} mm too little", fit.Touching: "touches, {{.Amount}} mm",
	fit.Slack: "slack, {{.Amount}} mm", fit.VerySlack: "very slack, {{.Amount}} mm",
}

// listWorst lists the places that one should look at before the garment is put on.
func (f *figure) listWorst() {
	var levels []fit.Level
	for _, l := range f.plan.Levels {
		levels = append(levels, fit.Level{Name: l.Name, Height: l.Height})
	}
	var rows []control.Where
	for _, p := range fit.Worst(f.body.Clearance(), levels, mostPlaces) {
		what := lang.L(bandWords[p.Band], map[string]any{"Amount": fmt.Sprintf("%.0f", math.Abs(p.Point))})
		text := lang.L(p.Level) + above(p.Above) + ", " + lang.L(p.Side) + ": " + what
		rows = append(rows, control.Where{Text: control.Sentence(text), Spot: control.Spot{Height: p.Height, Turn: float64(p.Turn)}})
	}
	f.worst.Fill(rows)
}

// above writes how far from its level a place lies.
func above(mm float64) string {
	if math.Abs(mm) < 5 {
		return ""
	}
	return fmt.Sprintf(" %+.0f mm", mm)
}

// goTo rings a place and shows the section there.
func (f *figure) goTo(s control.Spot) {
	var nearest plan.Level
	for i, l := range f.plan.Levels {
		if i == 0 || math.Abs(l.Height-s.Height) < math.Abs(nearest.Height-s.Height) {
			nearest = l
		}
	}
	f.elevation.Pick(nearest.Name)
	f.point(&s)
	f.drawTable()
	f.showLevel()
	f.onLevel()
}

func (f *figure) point(s *control.Spot) {
	f.spot = s
	f.elevation.Point(s)
	f.table.Point(s)
	f.unrolled.Point(s)
}

// pull shapes the section in hand.
func (f *figure) pull(p control.Pull) {
	ring, said := f.shaping.pull(measure.Level(f.elevation.Picked()), p, f.unit)
	f.section.Follow(ring)
	set(f.numbers, said)
}

// lift moves a level; the waist is where heights are counted from.
func (f *figure) lift(name string, height float64) {
	if name == string(measure.Waist) {
		set(f.numbers, lang.L("Heights are counted from the waist. Type the waist height to set it above the floor."))
		f.elevation.Draw(f.stage, f.tapes(), rules[f.unit])
		return
	}
	if err := f.shaping.lift(measure.Level(name), height-f.plan.StandHeight); err != nil {
		set(f.numbers, err.Error())
	}
}

// typeGirth asks for the garment's girth at a level, where it stands in the table.
func (f *figure) typeGirth(name string, at fyne.Position) {
	canvas := fyne.CurrentApp().Driver().CanvasForObject(f.elevation)
	if canvas == nil {
		return
	}
	field := girthField(f.doc.Record(), measure.Level(name))
	entry := widget.NewEntry()
	if v := field.Get(f.doc.Record()); v != nil {
		entry.SetText(field.Kind.Format(*v, f.unit))
	}
	asked := widget.NewPopUp(entry, canvas)
	entry.OnSubmitted = func(text string) {
		v, err := field.Read(text, f.unit)
		if err != nil {
			set(f.numbers, err.Error())
			return
		}
		asked.Hide()
		f.doc.Set(field, v)
		f.doc.Settle()
	}
	asked.Resize(fyne.NewSize(74, entry.MinSize().Height))
	asked.ShowAtRelativePosition(at.SubtractXY(10, entry.MinSize().Height/2), f.elevation)
	canvas.Focus(entry)
}
