package condition

import (
	"fmt"
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/rest"
	"understructure/patterns/drawing"
	"understructure/patterns/leaf"
)

// views are the garment from the front and from behind under one grid.
type views struct {
	flat    rest.Flat
	scale   float64 // the garment is drawn 1 to so many
	cell    float64 // side of a square on the garment
	columns int
	rows    int
}

// The room of one view, of which labels take some, the least side of a square on paper, and the least breadth of a grid:
// the names of both sides stand under it.
const (
	roomX, roomY = 84.0, 112.0
	label        = 4.5
	leastCell    = 6.5
	leastBroad   = 40.0
)

// cells are sides of squares on the garment that are easily counted, and scales those of the drawing.
var (
	cells  = []float64{25, 50, 100, 200, 250, 500, 1000}
	scales = []float64{4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 22, 25, 30, 35, 40, 50, 60, 80, 100, 150}
)

func newViews(g rest.Garment) (views, error) {
	v := views{}
	var err error
	if v.flat, err = rest.Lie(g); err != nil {
		return v, err
	}
	for _, v.scale = range scales {
		for _, v.cell = range cells {
			if v.cell/v.scale >= leastCell {
				break
			}
		}
		broad := math.Max(v.flat.Breadth, leastBroad*v.scale)
		v.columns, v.rows = int(math.Ceil(broad/v.cell-1e-9)), int(math.Ceil(v.flat.Length/v.cell-1e-9))
		if w, h := v.size(); w+label <= roomX && h+label <= roomY {
			return v, nil
		}
	}
	return v, fmt.Errorf("a garment of %.0f × %.0f mm is too large for the page", v.flat.Breadth, v.flat.Length)
}

// size is that of the grid on paper.
func (v views) size() (width, height float64) {
	return float64(v.columns) * v.cell / v.scale, float64(v.rows) * v.cell / v.scale
}

// draw draws one view below and to the right of a corner. What is the wearer's left is at the right in front.
func (v views) draw(c drawing.Canvas, outline plane.Ring, front bool, corner plane.Point) {
	w, h := v.size()
	lo := plane.Point{X: corner.X + label, Y: corner.Y - label - h}
	middle := plane.Point{X: lo.X + w/2, Y: lo.Y + (h-v.flat.Length/v.scale)/2}
	put := func(p plane.Point) plane.Point { return middle.Add(p.Mul(1 / v.scale)) }
	mirrored := func(p plane.Point) plane.Point { return put(plane.Point{X: -p.X, Y: p.Y}) }
	pen := drawing.Pen{Width: 0.35}
	c.Line(outline.Map(put), true, pen)
	seam := drawing.Pen{Width: 0.2, Dash: []float64{1.6, 1}, Colour: drawing.Grey}
	c.Line([]plane.Point{put(v.flat.Waist), mirrored(v.flat.Waist)}, false, seam)
	c.Line([]plane.Point{put(plane.Point{Y: top(outline)}), put(plane.Point{Y: bottom(outline)})}, false, seam)
	for _, place := range []func(plane.Point) plane.Point{put, mirrored} { // sleeves lie on the skirt
		if r := v.flat.Sleeve.Map(place); len(r) > 0 {
			c.Fill(r, drawing.White)
			c.Line(r, true, pen)
		}
	}
	v.grid(c, lo)
	sides := [2]string{"wearer's right", "wearer's left"}
	if !front {
		sides[0], sides[1] = sides[1], sides[0]
	}
	c.Word(leaf.Word(sides[0], leaf.Small, lo.X, lo.Y-3.2))
	c.Word(leaf.Word(sides[1], leaf.Small, lo.X+w, lo.Y-3.2).Back(1))
}

// top and bottom are where an outline crosses its middle.
func top(r plane.Ring) float64 {
	y := 0.0
	for _, p := range r {
		if math.Abs(p.X) < 1e-9 {
			y = math.Max(y, p.Y)
		}
	}
	return y
}

func bottom(r plane.Ring) float64 {
	y := math.Inf(1)
	for _, p := range r {
		if math.Abs(p.X) < 1e-9 {
			y = math.Min(y, p.Y)
		}
	}
	return y
}

// grid draws the squares from their lower left corner, letters over the columns and numbers beside the rows.
func (v views) grid(c drawing.Canvas, lo plane.Point) {
	w, h := v.size()
	side := v.cell / v.scale
	light := drawing.Pen{Width: 0.1, Colour: drawing.Grey, Dash: []float64{0.3, 0.7}}
	for i := range v.columns + 1 {
		x := lo.X + float64(i)*side
		c.Line([]plane.Point{{X: x, Y: lo.Y}, {X: x, Y: lo.Y + h}}, false, light)
		if i < v.columns {
			c.Word(leaf.Word(letter(i), leaf.Small, x+side/2, lo.Y+h+1.4).Back(0.5))
		}
	}
	for i := range v.rows + 1 {
		y := lo.Y + h - float64(i)*side
		c.Line([]plane.Point{{X: lo.X, Y: y}, {X: lo.X + w, Y: y}}, false, light)
		if i < v.rows {
			c.Word(leaf.Word(fmt.Sprint(i+1), leaf.Small, lo.X-1.2, y-side/2-0.9).Back(1))
		}
	}
}

// letter names a column: A to Z, then AA and on.
func letter(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return letter(i/26-1) + letter(i%26)
}
