package elevation

import (
	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/plan"
)

// Sections are the mount cut at every level that has an outline and seen from above, front at the top, all to one scale.
type Sections struct {
	bodies []body
	cuts   []cut
	row    int // how many stand side by side
	scale  float64
	size   drawing.Box // of the largest section, about the mount's axis, in millimetres of the mount
}

// cut is a level, and the index of the height that is nearest to it.
type cut struct {
	level string
	index int
}

// highest is how high the largest section is drawn at most, in millimetres of paper.
const highest = 20.0

// SectionsOf chooses the largest scale at which a plan's sections, so many in a row, fit into a width.
func SectionsOf(p plan.Plan, row int, width float64) Sections {
	s := Sections{bodies: bodies(p.Surface), row: row, size: drawing.Empty()}
	for _, l := range p.Levels {
		if i, ok := Nearest(p, l.Name); ok && len(s.bodies) > 0 {
			s.cuts = append(s.cuts, cut{l.Name, i})
			b := around(s.bodies, i)
			s.size = s.size.Round(b.Corners()...)
		}
	}
	if len(s.cuts) > 0 {
		s.scale = scaleFor(s.size.Width(), s.size.Height(), width/float64(row)-3, highest)
	}
	return s
}

// Rows is how many rows of sections there are, and Height how much paper one needs.
func (s Sections) Rows() int { return (len(s.cuts) + s.row - 1) / s.row }

// Height is how much paper a row needs, with the names.
func (s Sections) Height() float64 { return s.size.Height()/s.scale + 1.9*wordSize + 1 }

// Draw draws one row into a box of its height.
func (s Sections) Draw(c drawing.Canvas, row int, box drawing.Box) {
	wide := box.Width() / float64(s.row)
	middle := s.size.Centre()
	for k, each := range s.cuts[row*s.row : min((row+1)*s.row, len(s.cuts))] {
		x := box.Lo.X + (float64(k)+0.5)*wide
		at := plane.Point{X: x, Y: box.Lo.Y + 1.9*wordSize + s.size.Height()/s.scale/2}
		fit := func(p plane.Point) plane.Point {
			d := p.Sub(middle).Mul(1 / s.scale)
			return plane.Point{X: at.X + d.X, Y: at.Y + d.Y}
		}
		s.cut(c, each.index, fit)
		c.Word(drawing.Word{Text: each.level, Size: wordSize, Bold: true, At: plane.Point{X: x, Y: box.Lo.Y + fonts.Descent*wordSize}}.Fit(wide - 2).Back(0.5))
	}
}

func (s Sections) cut(c drawing.Canvas, i int, fit func(plane.Point) plane.Point) {
	for _, b := range s.bodies {
		if i < len(b.rings) && len(b.rings[i]) > 2 && b.fill != drawing.White {
			c.Fill(mapped(b.rings[i], fit), b.fill)
		}
	}
	at := fit(plane.Point{})
	cross(c, at, drawing.Box{Lo: at, Hi: at})
	for _, b := range s.bodies {
		if i < len(b.rings) && len(b.rings[i]) > 2 {
			c.Line(mapped(b.rings[i], fit), true, b.pen)
		}
	}
}

// Scale is what a millimetre on paper stands for.
func (s Sections) Scale() float64 { return s.scale }
