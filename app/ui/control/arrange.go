package control

import (
	"math"

	"fyne.io/fyne/v2"

	"understructure/app/ui/picture"
)

// Widths and heights within an elevation, in the toolkit's units.
const (
	ruleWidth  = 40
	tableWidth = 230
	takenWidth = 46 // of the column of the garment's girths
	rowHeight  = 21
	margin     = 8
	leader     = 16 // room for the slanting lines between figure and table
	headHeight = 34
	footHeight = 34
	bleed      = 4 // of a painted figure beyond its outlines
)

// columns are the right edges of the numbers within the table: garment, built, clearance.
var columns = [3]float32{126, 164, tableWidth - 5}

// arrangement says where everything of an elevation goes: rule, figure, table and, of two views, the other figure.
type arrangement struct {
	frames []picture.Frame // one a view
	boxes  []box           // in which they are painted
	rule   float32         // right edge
	table  float32         // left edge
	rows   []float32       // middle of each row
	levels []float32       // where each level is on the figure
}

// box is a rectangle of the widget.
type box struct {
	at   fyne.Position
	size fyne.Size
}

// widths are how far each view may reach to the left and right of the axis, in millimetres. One that can be turned
// keeps its room whichever way it stands.
func (e *Elevation) widths() [][2]float64 {
	if len(e.yaws) == 1 {
		return [][2]float64{{-e.body.Reach(), e.body.Reach()}}
	}
	fl, fr := e.body.Width(picture.Front)
	sl, sr := e.body.Width(picture.Side)
	return [][2]float64{{fl, fr}, {sl, sr}}
}

func (e *Elevation) arrange(size fyne.Size) arrangement {
	widths := e.widths()
	var wide float64
	for _, w := range widths {
		wide += w[1] - w[0]
	}
	tall := e.body.High.Z - e.body.Low.Z
	spare := float64(size.Width) - ruleWidth - tableWidth - leader*float64(len(widths)) - 3*margin
	room := float64(size.Height) - headHeight - footHeight
	scale := max(0.02, min(spare/max(wide, 1), room/max(tall, 1)))

	a := arrangement{rule: float32((spare-scale*wide)/2 + ruleWidth)}
	top := headHeight + (room-scale*tall)/2
	x := float64(a.rule) + margin
	for _, w := range widths {
		a.frames = append(a.frames, picture.Frame{Scale: scale, X: x - w[0]*scale, Y: top + e.body.High.Z*scale})
		x0, x1 := round(float32(x)-bleed), round(float32(x+(w[1]-w[0])*scale)+bleed)
		y0, y1 := round(float32(top)-bleed), round(float32(top+tall*scale)+bleed)
		a.boxes = append(a.boxes, box{fyne.NewPos(x0, y0), fyne.NewSize(x1-x0, y1-y0)})
		if a.table == 0 {
			x += (w[1]-w[0])*scale + leader
			a.table = float32(x)
			x += tableWidth + leader
		}
	}
	for _, t := range e.tapes {
		a.levels = append(a.levels, float32(a.frames[0].Y-t.Height*scale))
	}
	a.rows = spread(a.levels, rowHeight, headHeight+rowHeight/2, size.Height-footHeight)
	return a
}

// view is the index of the view that a point belongs to.
func (a arrangement) view(p fyne.Position) int {
	if len(a.frames) > 1 && p.X > a.table+tableWidth/2 {
		return 1
	}
	return 0
}

func (a arrangement) inTable(p fyne.Position) bool {
	return p.X > a.table-leader && p.X < a.table+tableWidth+leader
}

// onTaken reports whether a point lies where the garment's girth of a row stands.
func (a arrangement) onTaken(p fyne.Position) bool {
	return p.X > a.table+columns[0]-takenWidth && p.X < a.table+columns[0]+4
}

// nearest returns the index of the level nearest to a point: by its row within the table, by its
// place on the figure elsewhere; -1 when there is none.
func (a arrangement) nearest(p fyne.Position) int {
	places := a.levels
	if a.inTable(p) {
		places = a.rows
	}
	i, _ := closest(places, p.Y)
	return i
}

// tape returns the index of the tape at a point of the figure, -1 where there is none.
func (a arrangement) tape(p fyne.Position) int {
	if a.inTable(p) {
		return -1
	}
	if i, far := closest(a.levels, p.Y); far <= grasp {
		return i
	}
	return -1
}

// closest returns the index of the place nearest to y and how far it is; -1 when there is none.
func closest(places []float32, y float32) (int, float64) {
	best, least := -1, math.Inf(1)
	for i, at := range places {
		if d := math.Abs(float64(at - y)); d < least {
			best, least = i, d
		}
	}
	return best, least
}

// headY is where the heads of the columns stand: over the first row.
func (a arrangement) headY() float32 {
	if len(a.rows) == 0 {
		return headHeight / 2
	}
	return a.rows[0] - rowHeight
}
