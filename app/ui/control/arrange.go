package control

import (
	"math"

	"fyne.io/fyne/v2"

	"understructure/app/ui/picture"
)

// Widths and heights within an elevation, in the toolkit's units.
const (
	ruleWidth  = 34
	tableWidth = 230
	rowHeight  = 21
	margin     = 8
	leader     = 16 // room for the slanting lines between figure and table
	headHeight = 34
	footHeight = 34
)

// columns are the right edges of the numbers within the table: garment, built, clearance.
var columns = [3]float32{126, 164, tableWidth - 5}

// arrangement says where everything of an elevation goes: rule, front, table, side.
type arrangement struct {
	frames [2]picture.Frame // of front and side
	rule   float32          // right edge
	table  float32          // left edge
	rows   []float32        // middle of each row
	levels []float32        // where each level is on the figure
}

func (e *Elevation) arrange(size fyne.Size) arrangement {
	fl, fr := e.body.Width(picture.Front)
	sl, sr := e.body.Width(picture.Side)
	tall := e.body.High.Z - e.body.Low.Z
	spare := float64(size.Width) - ruleWidth - tableWidth - 2*leader - 3*margin
	room := float64(size.Height) - headHeight - footHeight
	scale := max(0.02, min(spare/(fr-fl+sr-sl), room/tall))
	left := (spare - scale*(fr-fl+sr-sl)) / 2

	a := arrangement{rule: float32(left + ruleWidth)}
	front := left + ruleWidth + margin - fl*scale
	a.table = float32(front + fr*scale + leader)
	side := float64(a.table) + tableWidth + leader - sl*scale
	y := headHeight + (room-scale*tall)/2 + e.body.High.Z*scale
	a.frames = [2]picture.Frame{{Scale: scale, X: front, Y: y}, {Scale: scale, X: side, Y: y}}
	for _, t := range e.tapes {
		a.levels = append(a.levels, float32(y-t.Height*scale))
	}
	a.rows = spread(a.levels, rowHeight, headHeight+rowHeight/2, size.Height-footHeight)
	return a
}

// nearest returns the index of the level nearest to a point: by its row within the table, by its
// place on the figure elsewhere; -1 when there is none.
func (a arrangement) nearest(p fyne.Position) int {
	places := a.levels
	if p.X > a.table && p.X < a.table+tableWidth {
		places = a.rows
	}
	best, least := -1, math.Inf(1)
	for i, y := range places {
		if d := math.Abs(float64(y - p.Y)); d < least {
			best, least = i, d
		}
	}
	return best
}

// headY is where the heads of the columns stand: over the first row.
func (a arrangement) headY() float32 {
	if len(a.rows) == 0 {
		return headHeight / 2
	}
	return a.rows[0] - rowHeight
}
