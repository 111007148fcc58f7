package elevation

import (
	"fmt"
	"math"
	"strings"

	"understructure/geometry/plane"
	"understructure/geometry/space"
	"understructure/patterns/drawing"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// Layers is what is laid on a mount, drawn apart along one axis in the order in which it goes on: each layer's
// pieces where they lie on the figure, three-quarter from the front in the upper row and from the back in the lower one.
type Layers struct {
	stations []station
	heights  []float64
	base     []plane.Ring // what the first layer lies on
	built    []plane.Ring
	scale    float64
	wide     float64 // of one station, in millimetres of paper
	high     float64
	bottom   float64
}

// station is one layer with its pieces; the first is what they are laid on.
type station struct {
	number string
	words  []string
	pieces []piece.Piece
}

// The two views, from the figure's front right and from its back left: their right hand, and the direction towards the viewer.
var threeQuarter = func() [2][2]plane.Point {
	s, c := math.Sincos(35 * math.Pi / 180)
	right, near := plane.Point{X: -c, Y: s}, plane.Point{X: s, Y: c}
	return [2][2]plane.Point{{right, near}, {right.Mul(-1), near.Mul(-1)}}
}()

// mostStations is how many stand in one row, and captionStrip the room for what is said below a column.
const (
	mostStations = 9
	captionStrip = 3*1.2*wordSize + 2
	rowGap       = 2.5
)

// LayersOf chooses the largest scale at which a plan's layers, drawn apart, fit into a width of paper and a row of them
// into a height.
func LayersOf(p plan.Plan, width, most float64) Layers {
	l := Layers{heights: p.Surface.Heights, built: p.Surface.Built}
	for _, layer := range p.Layers {
		if s, ok := stationOf(p, layer); ok {
			l.stations = append(l.stations, s)
		}
	}
	box := drawing.Empty()
	for _, v := range threeQuarter {
		for _, line := range silhouettes(l.heights, l.built, v[0]) {
			box = box.Round(line...)
		}
	}
	if len(l.stations) == 0 || box.Height() <= 0 {
		return Layers{}
	}
	on := "form"
	if l.base = p.Surface.Form; p.Build == "slices" {
		on, l.base = "foam", p.Surface.Core
	}
	l.stations = append([]station{{words: []string{on}}}, l.stations...)
	l.wide = width / float64(max(min(len(l.stations), mostStations), 5))
	l.scale = scaleFor(box.Width(), box.Height(), l.wide*0.86, (most-captionStrip-rowGap)/2)
	l.high, l.bottom = box.Height()/l.scale, box.Lo.Y
	return l
}

// stationOf gathers a layer's pieces that have a place on the mount; slices have a drawing of their own.
func stationOf(p plan.Plan, l plan.Layer) (station, bool) {
	if strings.HasPrefix(l.Material, "plank") {
		return station{}, false
	}
	s := station{number: fmt.Sprint(l.Number)}
	for _, q := range p.Pieces {
		if q.Layer == l.Number && q.Material == l.Material && len(q.Position) > 2 {
			s.pieces = append(s.pieces, q)
		}
	}
	material, _, _ := strings.Cut(l.Material, " ")
	s.words = []string{fmt.Sprintf("%s %g mm", material, math.Round(l.Thickness*10)/10), count(l.Pieces)}
	return s, len(s.pieces) > 0
}

func count(n int) string {
	if n == 1 {
		return "1 piece"
	}
	return fmt.Sprintf("%d pieces", n)
}

// Count is how many layers are drawn.
func (l Layers) Count() int { return max(0, len(l.stations)-1) }

// Rows is in how many rows the layers stand.
func (l Layers) Rows() int { return (len(l.stations) + mostStations - 1) / mostStations }

// Height is how much paper one row needs.
func (l Layers) Height() float64 { return 2*l.high + rowGap + captionStrip }

// Draw draws one row of layers into a box of its height.
func (l Layers) Draw(c drawing.Canvas, row int, box drawing.Box) {
	all := l.stations[row*mostStations : min((row+1)*mostStations, len(l.stations))]
	for k, view := range threeQuarter {
		y := box.Hi.Y - float64(k+1)*l.high - float64(k)*rowGap
		l.axis(c, box.Lo.X+l.wide/2, box.Lo.X+(float64(len(all))-0.5)*l.wide, y+l.high/2)
		for i, s := range all {
			at := plane.Point{X: box.Lo.X + (float64(i)+0.5)*l.wide, Y: y}
			l.station(c, s, view, func(p plane.Point) plane.Point {
				return plane.Point{X: at.X + p.X/l.scale, Y: at.Y + (p.Y-l.bottom)/l.scale}
			})
		}
	}
	for i, s := range all {
		caption(c, s, plane.Point{X: box.Lo.X + (float64(i)+0.5)*l.wide, Y: box.Lo.Y + captionStrip - 1.2*wordSize}, l.wide-1)
	}
}

// axis is the line along which the layers are drawn apart, with a head that points in the order of laying.
func (l Layers) axis(c drawing.Canvas, from, to, y float64) {
	pen := drawing.Pen{Width: 0.15, Dash: []float64{3, 0.8, 0.6, 0.8}, Colour: drawing.Grey}
	c.Line([]plane.Point{{X: from, Y: y}, {X: to, Y: y}}, false, pen)
	for x := from + l.wide/2; x < to; x += l.wide {
		c.Fill([]plane.Point{{X: x + 0.9, Y: y}, {X: x - 0.9, Y: y + 0.8}, {X: x - 0.9, Y: y - 0.8}}, drawing.Grey)
	}
}

// station draws the mount in outline and on it the pieces that face the viewer.
func (l Layers) station(c drawing.Canvas, s station, view [2]plane.Point, fit func(plane.Point) plane.Point) {
	for _, line := range silhouettes(l.heights, l.built, view[0]) {
		c.Fill(mapped(line, fit), drawing.White)
		c.Line(mapped(line, fit), true, drawing.Pen{Width: 0.15, Colour: drawing.Grey})
	}
	if s.number == "" {
		for _, line := range silhouettes(l.heights, l.base, view[0]) {
			c.Fill(mapped(line, fit), drawing.Pale)
			c.Line(mapped(line, fit), true, drawing.Pen{Width: 0.18})
		}
	}
	for _, q := range s.pieces {
		if facing(q.Position).Dot(view[1]) <= 0 {
			continue
		}
		line := make([]plane.Point, len(q.Position))
		for i, p := range q.Position {
			line[i] = fit(plane.Point{X: plane.Point{X: p.X, Y: p.Y}.Dot(view[0]), Y: p.Z})
		}
		c.Fill(line, drawing.Pale)
		c.Line(line, true, drawing.Pen{Width: 0.18})
	}
}

// facing is the way that a piece on the mount looks, seen from above: its mean normal (M. E. Newell's sum over the
// corners, in I. E. Sutherland, R. F. Sproull and R. A. Schumacker, 1974), turned away from the axis.
func facing(corners []space.Point) plane.Point {
	var n, middle space.Point
	for i, p := range corners {
		n = n.Add(p.Cross(corners[(i+1)%len(corners)]))
		middle = middle.Add(p)
	}
	flat := plane.Point{X: n.X, Y: n.Y}
	if flat.Dot(plane.Point{X: middle.X, Y: middle.Y}) < 0 {
		return flat.Mul(-1)
	}
	return flat
}

func caption(c drawing.Canvas, s station, at plane.Point, width float64) {
	if s.number != "" {
		c.Word(drawing.Word{Text: s.number, Size: 1.15 * wordSize, Bold: true, At: at}.Back(0.5))
		at.Y -= 1.25 * wordSize
	}
	for _, w := range s.words {
		c.Word(drawing.Word{Text: w, Size: wordSize, At: at}.Fit(width).Back(0.5))
		at.Y -= 1.2 * wordSize
	}
}
