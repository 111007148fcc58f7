package judge

import (
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/plantest"
	"understructure/patterns/sheet"
)

// Rules are the middles of the first and the last tick of both rules of a page, where the page means them.
func Rules(pg sheet.Page) (level, upright [2]plane.Point) {
	var r plantest.Recorder
	pg.Draw(&r)
	for i, l := range r.Lines {
		if l.Layer != drawing.Sheet || len(l.Points) != 2 {
			continue
		}
		ends := func() [2]plane.Point {
			first, last := r.Lines[i+1].Points, r.Lines[i+11].Points
			return [2]plane.Point{first[0].Lerp(first[1], 0.5), last[0].Lerp(last[1], 0.5)}
		}
		switch d := l.Points[1].Sub(l.Points[0]); sheet.Rule {
		case d.X:
			level = ends()
		case d.Y:
			upright = ends()
		}
	}
	return level, upright
}
