package report

import (
	"fmt"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/plan"
)

// layers lists what is laid or stacked, in order of building, and the lengths along the surface.
func (s *setter) layers(p plan.Plan) {
	if len(p.Layers) > 0 {
		s.heading("In order of building", 25)
		var rows [][]cell
		for _, l := range p.Layers {
			rows = append(rows, []cell{{text: fmt.Sprint(l.Number)}, {text: l.Material}, {text: fmt.Sprintf("%.1f mm", l.Thickness)},
				{text: fmt.Sprint(l.Pieces)}, {text: fmt.Sprintf("%.3f m²", l.Area/1e6)}})
		}
		s.table([]column{{"number", 18, true}, {"material", 74, false}, {"thickness", 26, true}, {"pieces", 22, true}, {"area", 30, true}}, rows)
	}
	if len(p.Lengths) == 0 {
		return
	}
	s.heading("Lengths along the surface", 20)
	var rows [][]cell
	for _, l := range p.Lengths {
		n := name(l.Key)
		rows = append(rows, []cell{{text: n.what}, {text: n.number(l.Taken)}, {text: n.number(l.Built)}})
	}
	s.table([]column{{"length", 92, false}, {"taken", 39, true}, {"as drawn", 39, true}}, rows)
}

func (s *setter) materials(p plan.Plan) {
	if len(p.Materials) == 0 {
		return
	}
	s.heading("Materials", 20)
	var rows [][]cell
	for _, m := range p.Materials {
		rows = append(rows, []cell{{text: m.Name}, {text: fmt.Sprintf("%.4g", m.Quantity)}, {text: m.Unit}, {text: m.Note}})
	}
	s.table([]column{{"what", 52, false}, {"how much", 24, true}, {"", 18, false}, {"note", 76, false}}, rows)
}

// standing states the self-check against tipping.
func (s *setter) standing(p plan.Plan) {
	if p.Standing.MassKg <= 0 {
		return
	}
	s.heading("Standing", 25)
	t := p.Standing
	s.paragraph(fmt.Sprintf("Dressed, the mount weighs about %.1f kg and its centre of gravity lies %s mm above the floor. "+
		"It does not tip on a plane of 10 degrees if the base reaches %s mm from the pole on every side, nor under a push of 13 %% of its weight at a height of 1.5 m if the base reaches %s mm. "+
		"The base should therefore reach at least %s mm. %s", t.MassKg, signed(t.CentreHeight), signed(t.TiltBase), signed(t.PushBase), signed(t.Base), t.Note), false)
	s.paragraph("This is a check of one's own work; it does not replace local rules.", false)
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

// cautions sets those that go with every mount, and those of this one.
func (s *setter) cautions(own []string) {
	s.heading("Cautions", 30)
	for _, c := range append(usual[:len(usual):len(usual)], own...) {
		s.paragraph(c, true)
	}
}

// signature leaves lines for notes and a place to sign.
func (s *setter) signature() {
	const lines, pitch = 6, 8.0
	s.heading("Notes and signature", lines*pitch+22)
	b := s.room(lines*pitch + 18)
	s.draw(func(c drawing.Canvas) {
		for i := range lines {
			rule(c, b.Lo.X, b.Hi.X, b.Hi.Y-float64(i+1)*pitch)
		}
		for i, label := range []string{"made by", "checked by", "date"} {
			x := b.Lo.X + float64(i)*(measure+4)/3
			rule(c, x, x+(measure-8)/3, b.Lo.Y+4)
			c.Word(drawing.Word{Text: label, Size: smallSize, Colour: drawing.Grey, At: plane.Point{X: x, Y: b.Lo.Y}})
		}
	})
}
