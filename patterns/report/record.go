package report

import (
	"fmt"
	"io"
	"strings"

	"understructure/patterns/drawing"
	"understructure/patterns/elevation"
	"understructure/patterns/plan"
	"understructure/patterns/vector"
)

// Record writes the mount record for the garment's file: what was made, from what, by which measurements, how it is
// expected to fit, how it is built and how it is dressed. All lengths are in millimetres. It has one to four pages A4,
// more only where a plan has very many warnings or pieces to cut.
func Record(w io.Writer, p plan.Plan) error {
	title := strings.TrimSpace(p.Object.Number + " " + p.Object.Title)
	m := vector.Meta{Title: "Mount record – " + title, Subject: "Record of a costume mount"}
	return setRecord(p).book(m, m.Title).Write(w)
}

// mostPages is how long a record is meant to be.
const mostPages = 4

// heights are those that drawings may have, in millimetres of paper.
type heights struct{ views, layers, lowLayers, stack float64 }

// roomy is how large drawings are; tight is for a record that would else be too long.
var (
	roomy = heights{views: 104, layers: 74, lowLayers: 64, stack: 104}
	tight = heights{views: 80, layers: 62, lowLayers: 52, stack: 92}
)

func setRecord(p plan.Plan) *setter {
	s := setRecordWith(p, roomy)
	if len(s.pages) > mostPages {
		if t := setRecordWith(p, tight); len(t.pages) <= mostPages {
			return t
		}
	}
	return s
}

// setRecordWith sets first what is to be seen and how it fits, then how it was measured, then how it is made and dressed.
func setRecordWith(p plan.Plan, h heights) *setter {
	s := newSetterIn(recordFrame)
	wide, half := newGalley(1), newGalley(2)
	wide.title(p)
	wide.views(p, h.views)
	wide.sections(p)
	wide.fit(p.Levels)
	s.flow(wide.strips, 1)
	half.doubt(p)
	half.warnings(p.Warnings)
	s.flow(half.strips, 2)

	wide = newGalley(1)
	wide.taped(p)
	s.flow(wide.strips, 1)
	s.values(p)
	half = newGalley(2)
	half.skirt(p.Skirt)
	half.standing(p)
	s.flow(half.strips, 2)
	s.making(p, h)

	wide, half = newGalley(1), newGalley(2)
	wide.numbers(p.Pieces)
	wide.cuts(p.Cuts)
	s.flow(wide.strips, 1)
	half.cautions(p.Cautions)
	s.flow(half.strips, 2)
	s.signature()
	return s
}

// views draws the mount from the front, the side and the back.
func (g *galley) views(p plan.Plan, most float64) {
	v := elevation.ViewsOf(p, g.width, most)
	if v.Height() == 0 {
		return
	}
	g.heading("Elevations")
	g.add(v.Height(), v.Draw)
}

// sections draws the mount cut at every level that has one.
func (g *galley) sections(p plan.Plan) {
	const row = 5
	all := elevation.SectionsOf(p, row, g.width)
	if all.Rows() == 0 {
		return
	}
	g.heading(fmt.Sprintf("Sections, seen from above, front at the top, scale 1 : %g", all.Scale()))
	for i := range all.Rows() {
		g.add(all.Height(), func(c drawing.Canvas, b drawing.Box) { all.Draw(c, i, b) })
	}
}
