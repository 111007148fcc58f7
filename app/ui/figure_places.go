package ui

import (
	"fmt"
	"math"
	"strings"

	"fyne.io/fyne/v2/lang"

	"understructure/app/ui/control"
	"understructure/app/ui/picture"
	"understructure/geometry/fit"
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
	last := len(f.plan.Stages) - 1
	at := last
	if f.stage = f.body; last > 0 {
		at = min(int(f.layers.Value), last)
	}
	if at < last {
		f.stage = picture.NewStage(f.plan, at)
	}
	set(f.layer, f.stageName(at))
	f.elevation.Draw(f.stage, f.tapes(), rules[f.unit])
	f.unrolled.Draw(f.stage, f.tapes())
	f.section.Draw(f.stage, f.section.Height())
}

// stageName is what stands when a stage is done.
func (f *figure) stageName(at int) string {
	stages := f.plan.Stages
	if at == len(stages)-1 {
		return lang.L("finished mount")
	}
	count := 0
	for _, s := range stages {
		if s.Kind == stages[at].Kind {
			count++
		}
	}
	of := map[string]any{"Number": stages[at].Number, "Count": count}
	switch stages[at].Kind {
	case plan.FormStage:
		return lang.L("bare form")
	case plan.SliceStage:
		return lang.L("slice {{.Number}} of {{.Count}}", of)
	}
	return lang.L("layer {{.Number}} of {{.Count}}", of)
}

// mostPlaces are as many as one would look at.
const mostPlaces = 8

// listWorst lists the places that one should look at before the garment is put on.
func (f *figure) listWorst() {
	var levels []fit.Level
	for _, l := range f.plan.Levels {
		levels = append(levels, fit.Level{Name: l.Name, Height: l.Height})
	}
	var rows []control.Where
	for _, p := range fit.Worst(f.body.Clearance(), levels, mostPlaces) {
		rows = append(rows, control.Where{
			Band:   p.Band,
			Place:  control.Sentence(lang.L(p.Level)) + above(p.Above) + ", " + control.SideWord(p.Side),
			Amount: control.BandWord(p.Band) + "  " + whole(&p.Point),
			Spot:   control.Spot{Height: p.Height, Turn: float64(p.Turn)},
		})
	}
	f.worst.Fill(rows)
	f.worst.Point(f.spot)
}

// above writes how far from its level a place lies, in millimetres.
func above(mm float64) string {
	if math.Abs(mm) < 5 {
		return ""
	}
	return strings.Replace(fmt.Sprintf(" %+.0f", mm), "-", "−", 1)
}

// goTo rings a place, turns the figure so that it is seen, and shows the section there.
func (f *figure) goTo(s control.Spot) {
	var nearest plan.Level
	for i, l := range f.plan.Levels {
		if i == 0 || math.Abs(l.Height-s.Height) < math.Abs(nearest.Height-s.Height) {
			nearest = l
		}
	}
	f.elevation.Pick(nearest.Name)
	f.point(&s)
	if !f.elevation.Sees(s) {
		f.elevation.Look(nearestView(control.Facing(s)))
		f.markView()
	}
	f.showLevel()
	f.onLevel()
}

// point rings a place; nil takes the ring away.
func (f *figure) point(s *control.Spot) {
	f.spot = s
	f.elevation.Point(s)
	f.unrolled.Point(s)
	f.worst.Point(s)
}
