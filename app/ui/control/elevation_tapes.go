package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"

	"understructure/app/ui/look"
	"understructure/geometry/view"
)

// overhang is how far a tape's line reaches beyond the figure.
const overhang = 5

// markTapes draws the tapes over the figures with the lines that lead to the table, the ring round the place that is pointed
// at, and below each figure from where it is seen.
func (r *elevationRenderer) markTapes(a arrangement) {
	r.tapes.Objects = nil
	for v, yaw := range r.e.yaws {
		c := view.From(yaw, 0)
		for i, t := range r.e.tapes {
			if before, _ := r.e.body.TapeOn(c, a.frames[v], t.Height); len(before) > 0 {
				r.markTape(a, v, i, float32(before[0].X), float32(before[len(before)-1].X))
			}
		}
		if s := r.e.spot; s != nil {
			if at, seen := r.e.body.SpotOn(c, a.frames[v], s.Height, s.Turn); seen {
				r.tapes.Add(ring(float32(at.X), float32(at.Y)))
			}
		}
		if !r.e.Going() {
			name, b := words(viewName(yaw), look.ColorFaint, false), a.boxes[v]
			place(name, b.at.X+b.size.Width/2, b.at.Y+b.size.Height+12, 0.5)
			r.tapes.Add(name)
		}
	}
	canvas.Refresh(r.tapes)
}

// markTape draws a tape from left to right over a view.
func (r *elevationRenderer) markTape(a arrangement, v, i int, left, right float32) {
	colour, width := r.stroke(r.e.tapes[i])
	y := a.levels[i]
	r.tapes.Add(line(left-overhang, y, right+overhang, y, colour, width))
	if v == 0 {
		r.lead(right+overhang, y, a.table-leader, a.table, a.rows[i], colour)
	} else {
		r.lead(left-overhang, y, a.table+tableWidth+leader, a.table+tableWidth, a.rows[i], colour)
	}
}

// stroke is how the line of a tape is drawn.
func (r *elevationRenderer) stroke(t Tape) (fyne.ThemeColorName, float32) {
	switch {
	case t.Name == r.e.picked:
		return theme.ColorNamePrimary, 2.2
	case t.Name == r.e.hovered:
		return look.ColorInk, 1.6
	case t.Strains:
		return look.ColorStrain, 1.6
	}
	return look.ColorFaint, 1
}

// lead draws from a tape level to the figure's margin, then slanting to the row.
func (r *elevationRenderer) lead(x, y, edge, table, row float32, colour fyne.ThemeColorName) {
	r.tapes.Add(line(x, y, edge, y, colour, 0.6))
	r.tapes.Add(line(edge, y, table, row, colour, 0.6))
}
