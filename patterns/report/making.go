package report

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/elevation"
	"understructure/patterns/plan"
)

// overLayers is the height of the heading over the layers, in millimetres.
const overLayers = 10.0

// making sets what the mount is made of, how it is built and how it is dressed. The materials go first where the page
// has no room left for the layers.
func (s *setter) making(p plan.Plan, h heights) {
	room := s.y-s.frame.Lo.Y >= h.lowLayers+overLayers
	if !room {
		g := newGalley(2)
		g.materials(p)
		s.flow(g.strips, 2)
	}
	drawn := s.layers(p, h)
	g := newGalley(2)
	drawn += g.stack(p, h.stack)
	if drawn < len(p.Layers) {
		g.built(p)
	}
	g.dressing(p)
	if room {
		g.materials(p)
	}
	s.flow(g.strips, 2)
}

// layers draws what is laid on the mount, apart and in order, somewhat smaller where it then still fits on the page, and
// returns how many layers that are.
func (s *setter) layers(p plan.Plan, h heights) int {
	high := h.layers
	if free := s.y - s.frame.Lo.Y - overLayers; free >= h.lowLayers {
		high = min(free, h.layers)
	}
	g := newGalley(1)
	all := elevation.LayersOf(p, g.width, high)
	if all.Rows() > 0 {
		g.heading("Layers in the order in which they go on: above from the front right, below from the back left")
	}
	for i := range all.Rows() {
		g.add(all.Height(), func(c drawing.Canvas, b drawing.Box) { all.Draw(c, i, b) })
		g.gap(2)
	}
	s.flow(g.strips, 1)
	return all.Count()
}

// stack draws the slices apart, and returns how many they are.
func (g *galley) stack(p plan.Plan, about float64) int {
	s := elevation.StackOf(p, g.width, about)
	if s.Count() > 0 {
		g.heading("Slices, pole and pins, from the bottom up")
		g.add(s.Height(), s.Draw)
	}
	return s.Count()
}

// built lists what is laid or stacked, in order of building; slices of one thickness that follow each other share a row.
func (g *galley) built(p plan.Plan) {
	if len(p.Layers) == 0 {
		return
	}
	g.heading("In order of building")
	var rows [][]cell
	for i := 0; i < len(p.Layers); {
		first, last := p.Layers[i], p.Layers[i]
		area, pieces := 0.0, 0
		for ; i < len(p.Layers) && alike(first, p.Layers[i]); i++ {
			last = p.Layers[i]
			area, pieces = area+last.Area, pieces+last.Pieces
		}
		number := fmt.Sprint(first.Number)
		if last.Number != first.Number {
			number += dash + fmt.Sprint(last.Number)
		}
		rows = append(rows, []cell{{text: number}, {text: first.Material}, {text: fmt.Sprintf("%.1f mm", first.Thickness)}, {text: fmt.Sprint(pieces)}, {text: fmt.Sprintf("%.3f m²", area/1e6)}})
	}
	g.table([]column{{"number", 11, true}, {"material", 38, false}, {"thickness", 14, true}, {"pieces", 9, true}, {"area", 13, true}}, rows)
}

// alike reports whether two layers may stand in one row: slices, or the very same.
func alike(a, b plan.Layer) bool {
	return a == b || strings.HasPrefix(a.Material, "plank") && a.Material == b.Material
}

// quantity is a number with no more than three decimals.
func quantity(v float64) string { return strconv.FormatFloat(math.Round(v*1000)/1000, 'f', -1, 64) }

// dressing lists the steps of dressing.
func (g *galley) dressing(p plan.Plan) {
	g.heading("Dressing, in this order")
	for i, step := range dressing(p) {
		g.text(fmt.Sprint(i+1), step)
	}
}

// standing states the self-check against tipping.
func (g *galley) standing(p plan.Plan) {
	t := p.Standing
	if t.MassKg <= 0 {
		return
	}
	g.heading("Standing")
	g.text("", fmt.Sprintf("Dressed, the mount weighs about %.1f kg and its centre of gravity lies %s mm above the floor. "+
		"It does not tip on a plane of 10 degrees if the base reaches %s mm from the pole on every side, nor under a push of 13 %% of its weight at 1.5 m if it reaches %s mm: "+
		"so it reaches at least %s mm. This is a check of one's own work, and does not replace local rules.", t.MassKg, signed(t.CentreHeight), signed(t.TiltBase), signed(t.PushBase), signed(t.Base)))
	g.note("", t.Note)
}

// usual are the cautions that go with every mount (common practice, no published source).
var usual = []string{
	"Hot knives and hot wires release fumes from foam and wadding: cut with ventilation, away from the garment, and never leave a hot tool alone.",
	"Cutting raises dust. Wear a mask, and keep garments covered until the work is clean.",
	"Old garments may carry pesticides, and green and some other colours may hold arsenic; have them tested where there is doubt, wear gloves, and wash hands.",
	"No bare foam or wadding touches the garment: the smooth cover goes on before any fitting.",
	"Check the stand against tipping before it is dressed, and again when it is dressed.",
	"Two people lift and dress a heavy or full garment.",
	"Local rules and the judgement of the conservator in charge decide, whatever is printed here.",
}

// cautions sets those of this mount, and those that go with every one.
func (g *galley) cautions(own []string) {
	g.heading("Cautions")
	for _, c := range append(own[:len(own):len(own)], usual...) {
		g.text(dash, c)
	}
}

// signature rules lines for notes down to the foot of the page, above a place to sign.
func (s *setter) signature() {
	const least, most, pitch, foot = 2, 16, 7.5, 14.0
	s.section("Notes and signature", least*pitch+foot)
	lines := min(most, int((s.y-s.frame.Lo.Y-foot)/pitch))
	b := s.room(float64(lines)*pitch + foot)
	s.draw(func(c drawing.Canvas) {
		for i := range lines {
			rule(c, b.Lo.X, b.Hi.X, b.Hi.Y-float64(i+1)*pitch)
		}
		for i, label := range []string{"made by", "checked by", "date"} {
			x := b.Lo.X + float64(i)*(b.Width()+4)/3
			rule(c, x, x+(b.Width()-8)/3, b.Lo.Y+4)
			c.Word(drawing.Word{Text: label, Size: tableSize, Colour: drawing.Grey, At: plane.Point{X: x, Y: b.Lo.Y + 1}})
		}
	})
}
