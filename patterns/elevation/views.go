package elevation

import (
	"fmt"
	"math"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/plan"
)

// Views are the three elevations of a mount, dressed: front, side and back beside each other, to one scale. Where the garment has a
// skirt they stand on the floor, with what holds the skirt.
type Views struct {
	plan   plan.Plan
	bodies []body
	scale  float64
	high   float64       // what is drawn, in millimetres of paper
	keys   []plane.Point // where each body stands in the key, from its first line on
	foot   float64       // the strip below, for the key
}

// The strips kept round the pictures, in millimetres of paper: for the stand height, between two views, above and below.
const (
	standStrip = 7.0
	between    = 5.0
	titleStrip = 5.0
	keyStrip   = 6.0 // of one line
	barStrip   = 34.0
)

var sides = []string{Front, Side, Back}

// ViewsOf chooses the largest scale at which a plan's views fit into a width and a height of paper.
func ViewsOf(p plan.Plan, width, most float64) Views {
	v := Views{plan: p, bodies: dressed(p)}
	wide := 0.0
	extent := v.extent()
	for _, e := range extent {
		wide += e.Width()
	}
	high := extent[0].Height()
	if len(v.bodies) == 0 || high <= 0 {
		return Views{}
	}
	v.keys = keyPlaces(v.bodies, barStrip, width)
	v.foot = keyStrip - v.keys[len(v.keys)-1].Y
	v.scale = scaleFor(wide, high, width-nameStrip-standStrip-float64(len(sides))*between, most-titleStrip-v.foot)
	v.high = high / v.scale
	return v
}

// Height is how much paper the views need, with their titles and their key; 0 where there is nothing to draw.
func (v Views) Height() float64 {
	if v.scale == 0 {
		return 0
	}
	return v.high + titleStrip + v.foot
}

// dressed are the bodies of the mount, and above them those of the skirt.
func dressed(p plan.Plan) []body {
	all := bodies(p.Surface)
	if k := p.Skirt; k != nil {
		all = append(present([]body{
			{"skirt support", k.Heights, k.Support, drawing.Pen{Width: 0.2, Dash: []float64{3, 0.8, 0.6, 0.8}}, drawing.Mist},
			{"skirt as it hangs", k.Heights, k.Garment, drawing.Pen{Width: 0.45}, drawing.White},
		}), all...)
	}
	return all
}

// extent is the box of each view, in millimetres of the mount; all have the same heights.
func (v Views) extent() [3]drawing.Box {
	var out [3]drawing.Box
	lo, hi := math.Inf(1), math.Inf(-1)
	for i, side := range sides {
		_, out[i] = seen(v.bodies, side)
		lo, hi = math.Min(lo, out[i].Lo.Y), math.Max(hi, out[i].Hi.Y)
	}
	if v.plan.Skirt != nil {
		lo = math.Min(lo, 0)
	}
	for i := range out {
		out[i].Lo.Y, out[i].Hi.Y = lo, hi
	}
	return out
}

// Draw draws the views into a box of the height asked for: the names of the levels on the left, then front, side and back.
func (v Views) Draw(c drawing.Canvas, box drawing.Box) {
	if v.scale == 0 {
		return
	}
	extent := v.extent()
	picture := drawing.Box{Lo: plane.Point{X: box.Lo.X + nameStrip, Y: box.Lo.Y + v.foot}, Hi: plane.Point{X: box.Hi.X, Y: box.Hi.Y - titleStrip}}
	wide := standStrip
	for _, e := range extent {
		wide += e.Width() / v.scale
	}
	gap := (picture.Width() - wide) / float64(len(sides))
	x := picture.Lo.X + standStrip + gap/2
	at := func(e drawing.Box) func(plane.Point) plane.Point {
		left := x
		return func(p plane.Point) plane.Point {
			return plane.Point{X: left + (p.X-e.Lo.X)/v.scale, Y: picture.Lo.Y + (p.Y-e.Lo.Y)/v.scale}
		}
	}
	names := drawing.Box{Lo: box.Lo, Hi: plane.Point{X: picture.Lo.X, Y: box.Hi.Y}}
	v.stand(c, at(extent[0]), picture)
	for i, side := range sides {
		v.view(c, side, at(extent[i]))
		middle := x + extent[i].Width()/v.scale/2
		c.Word(drawing.Word{Text: side, Size: wordSize, Bold: true, At: plane.Point{X: middle, Y: box.Hi.Y - 3}}.Back(0.5))
		x += extent[i].Width()/v.scale + gap
	}
	levels(c, v.plan.Levels, at(extent[0]), names, picture)
	top := plane.Point{X: box.Lo.X, Y: picture.Lo.Y - keyStrip + 1}
	bar(c, v.scale, top)
	for i, b := range v.bodies {
		entry(c, b, top.Add(v.keys[i]))
	}
}

// view draws one side: the fills first, so that no line lies under them.
func (v Views) view(c drawing.Canvas, side string, fit func(plane.Point) plane.Point) {
	views, _ := seen(v.bodies, side)
	for i, b := range v.bodies {
		for _, line := range views[i] {
			if b.fill != drawing.White {
				c.Fill(mapped(line, fit), b.fill)
			}
		}
	}
	v.strain(c, side, fit)
	v.hoops(c, side, fit)
	for i, b := range v.bodies {
		for _, line := range views[i] {
			c.Line(mapped(line, fit), true, b.pen)
		}
	}
}

// strain hatches the mount where it is larger round than the garment.
func (v Views) strain(c drawing.Canvas, side string, fit func(plane.Point) plane.Point) {
	const gap = 0.7
	s, last := v.plan.Surface, math.Inf(-1)
	for i := range min(len(s.Heights), len(s.Garment), len(s.Built)) {
		if len(s.Garment[i]) == 0 || len(s.Built[i]) == 0 || s.Built[i].Tape() < s.Garment[i].Tape()+0.1 {
			continue
		}
		lo, hi := reach(s.Built[i], across[side])
		p, q := fit(plane.Point{X: lo, Y: s.Heights[i]}), fit(plane.Point{X: hi, Y: s.Heights[i]})
		if p.Y-last >= gap {
			c.Line([]plane.Point{p, q}, false, drawing.Pen{Width: 0.2})
			last = p.Y
		}
	}
}

// hoops draws the level lines of the skirt's support, those of steel stronger.
func (v Views) hoops(c drawing.Canvas, side string, fit func(plane.Point) plane.Point) {
	if v.plan.Skirt == nil {
		return
	}
	for _, h := range v.plan.Skirt.Hoops {
		reach := map[string][2]float64{Front: {-h.Right, h.Left}, Side: {-h.Back, h.Front}, Back: {-h.Left, h.Right}}[side]
		pen := drawing.Pen{Width: 0.15, Dash: []float64{0.8, 0.8}}
		if h.Steel {
			pen = drawing.Pen{Width: 0.35}
		}
		c.Line([]plane.Point{fit(plane.Point{X: reach[0], Y: h.Height}), fit(plane.Point{X: reach[1], Y: h.Height})}, false, pen)
	}
}

// stand draws the floor and, left of the front view, how high the waist stands above it.
func (v Views) stand(c drawing.Canvas, fit func(plane.Point) plane.Point, picture drawing.Box) {
	if v.plan.Skirt == nil {
		return
	}
	floor, waist := fit(plane.Point{}).Y, fit(plane.Point{Y: v.plan.StandHeight}).Y
	c.Line([]plane.Point{{X: picture.Lo.X, Y: floor}, {X: picture.Hi.X, Y: floor}}, false, drawing.Pen{Width: 0.35})
	x := picture.Lo.X + 2.5
	c.Line([]plane.Point{{X: x, Y: floor}, {X: x, Y: waist}}, false, drawing.Pen{Width: 0.15})
	for _, y := range []float64{floor, waist} {
		d := math.Copysign(1.4, floor+waist-2*y)
		c.Line([]plane.Point{{X: x - 0.6, Y: y + d}, {X: x, Y: y}, {X: x + 0.6, Y: y + d}}, false, drawing.Pen{Width: 0.2})
	}
	w := drawing.Word{Text: "stand height " + whole(v.plan.StandHeight), Size: wordSize, Turn: math.Pi / 2, At: plane.Point{X: x + fonts.CapHeight*wordSize + 0.9, Y: (floor + waist) / 2}}
	c.Word(w.Back(0.5))
}

func whole(v float64) string { return fmt.Sprintf("%.0f", v) }
