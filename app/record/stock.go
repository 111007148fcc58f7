package record

import (
	"fmt"

	"understructure/geometry/measure"
	"understructure/patterns/plan"
	"understructure/patterns/sheet"
)

// Stock is a Mount with nothing left open: what the maker chose, and the program's own stock
// for the rest. All lengths are millimetres.
type Stock struct {
	Ease                      map[measure.Level]float64 // one for every level
	TapeError                 float64                   // one standard deviation
	HeightError, CuttingError float64                   // one standard deviation
	Wadding                   []Layer                   // at least one
	Cover                     float64                   // thickness; 0 is no cover
	CoverSpread               float64                   // one standard deviation
	CoverWidth                float64                   // of its roll
	Plank                     Board
	Step                      string
	Paper                     plan.Paper
}

// Layer is one wadding, with one standard deviation of its working thickness and the width of its roll.
type Layer struct{ Thickness, Spread, Width float64 }

// Board is foam sheet stock and the diameter of the pole, 0 for none.
type Board struct{ Thickness, Length, Width, Pole float64 }

// habit marks a default that nobody has published.
const habit = "workshop habit, from memory"

const rolled = "rolls are sold about 1500 mm wide; from memory"

// The stock that stands in for what a record leaves open.
const (
	stockTapeError = 3.0 // readings of one girth by one hand; workshop habit, from memory
	// How far a tape lies off its level, and a knife off its line; workshop habit, from memory.
	stockHeightError, stockCuttingError = 2.0, 1.0
	// Wadding of a quarter of an inch is used for hangers and torsos (Royal Ontario Museum on
	// stashc.com, 2017); its thickness and spread under a cover are workshop habit, from memory.
	stockWadding = 6.0
	stockSpread  = 1.0
	stockCover   = 1.0    // cotton jersey; workshop habit, from memory
	stockRoll    = 1500.0 // width of wadding and of jersey laid open; from memory
	// Forms are built from 2 inch foam, a slice for every 2 inches measured
	// (wandabvictorian.wordpress.com, 2015); the sheet's sides and the pole are workshop habit, from memory.
	stockPlank, stockLength, stockWidth, stockPole = 50.0, 1200.0, 600.0, 32.0
)

// snug and loose are the ease at waist and neck, and elsewhere, by strength of the cloth. No
// fixed allowance is published: finished padding must be smaller than the inside of the garment and
// err small. 10 to 20 mm at the waist and 20 to 40 mm elsewhere, more for brittle cloth,
// are workshop habit, from memory.
var (
	snug  = map[string]float64{"sound": 10, "fair": 15, "weak": 20}
	loose = map[string]float64{"sound": 20, "fair": 30, "weak": 40}
)

// Stocked fills what the mount leaves open for a garment of the given strength ("" counts as fair).
// The map says, by key path, what was filled and why.
func (m Mount) Stocked(strength string) (Stock, map[string]plan.Value) {
	f := filler{filled: map[string]plan.Value{}}
	s := Stock{
		Ease:         f.ease(m.Ease, strength),
		TapeError:    f.length("mount.tape_error", m.TapeError, stockTapeError, habit),
		HeightError:  f.length("mount.height_error", m.HeightError, stockHeightError, "how far a tape lies off its level; "+habit),
		CuttingError: f.length("mount.cutting_error", m.CuttingError, stockCuttingError, "how far a knife strays from its line; "+habit),
		Wadding:      f.waddings(m.Wadding),
		Cover:        f.length("mount.cover.thickness", m.Cover, stockCover, "cotton jersey; "+habit),
		Plank:        f.board(m.Plank),
		Step:         f.word("mount.step", m.Step, "inside", "nothing to carve, and never above the figure"),
		Paper:        m.Printer.correct(f.paper(m.Paper)),
	}
	if s.Cover > 0 {
		s.CoverWidth = f.length("mount.cover.width", m.CoverWidth, stockRoll, rolled)
		s.CoverSpread = f.length("mount.cover.spread", m.CoverSpread, s.Cover*stockSpread/stockWadding, "a sixth of the thickness; "+habit)
	}
	return s, f.filled
}

// filler notes every default that it hands out.
type filler struct{ filled map[string]plan.Value }

func (f filler) length(path string, chosen *float64, otherwise float64, why string) float64 {
	if chosen != nil {
		return *chosen
	}
	f.filled[path] = plan.Value{Value: otherwise, Source: why}
	return otherwise
}

func (f filler) word(path, chosen, otherwise, why string) string {
	if chosen != "" {
		return chosen
	}
	f.filled[path] = plan.Value{Text: otherwise, Source: why}
	return otherwise
}

func (f filler) ease(e Ease, strength string) map[measure.Level]float64 {
	if strength == "" {
		strength = f.word("garment.strength", "", "fair", "neither sound nor weak")
	}
	all := map[measure.Level]float64{}
	for _, l := range measure.Levels {
		byHabit := loose[strength]
		if l == measure.Waist || l == measure.NeckBase {
			byHabit = snug[strength]
		}
		chosen := e.All
		if v, ok := e.ByLevel[l]; ok {
			chosen = &v
		}
		all[l] = f.length("mount.ease."+string(l), chosen, byHabit, "for "+strength+" cloth; "+habit)
	}
	return all
}

func (f filler) waddings(ws []Wadding) []Layer {
	if len(ws) == 0 {
		const why = "needle-punched, a quarter of an inch before covering; "
		return []Layer{{
			f.length("mount.wadding.thickness", nil, stockWadding, why+habit),
			f.length("mount.wadding.spread", nil, stockSpread, habit),
			f.length("mount.wadding.width", nil, stockRoll, rolled),
		}}
	}
	var layers []Layer
	for i, w := range ws {
		path := fmt.Sprintf("mount.wadding[%d].", i)
		if len(ws) == 1 {
			path = "mount.wadding."
		}
		byHabit := w.Thickness * stockSpread / stockWadding
		layers = append(layers, Layer{w.Thickness,
			f.length(path+"spread", w.Spread, byHabit, "a sixth of the thickness; "+habit), f.length(path+"width", w.Width, stockRoll, rolled)})
	}
	return layers
}

func (f filler) board(p *Plank) Board {
	if p == nil {
		p = &Plank{}
	}
	return Board{
		Thickness: f.length("mount.plank.thickness", p.Thickness, stockPlank, "forms are built from 2 inch foam (wandabvictorian.wordpress.com, 2015)"),
		Length:    f.length("mount.plank.length", p.Length, stockLength, habit),
		Width:     f.length("mount.plank.width", p.Width, stockWidth, habit),
		Pole:      f.length("mount.plank.pole", p.Pole, stockPole, habit),
	}
}

func (f filler) paper(p Paper) plan.Paper {
	if p.Name == "" && p.Width > 0 && p.Height > 0 {
		name := fmt.Sprintf("%s × %s mm", decimal(p.Width, 1), decimal(p.Height, 1))
		return plan.Paper{Name: name, Width: p.Width, Height: p.Height}
	}
	name := f.word("mount.paper", p.Name, "A4", "the paper that most printers hold")
	named, _ := sheet.Named(name)
	return named
}

// correct puts on a paper by how much its printer must draw larger, where that was measured.
func (p Printer) correct(on plan.Paper) plan.Paper {
	for _, side := range []struct{ measured, scale *float64 }{{p.X, &on.ScaleX}, {p.Y, &on.ScaleY}} {
		if side.measured != nil {
			*side.scale = sheet.Rule / *side.measured
		}
	}
	return on
}
