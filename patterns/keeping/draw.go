package keeping

import (
	"fmt"
	"math"
	"strings"

	"understructure/geometry/plane"
	"understructure/geometry/rest"
	"understructure/patterns/drawing"
	"understructure/patterns/leaf"
)

// The sets of fold places, and the lines by which they are told apart in black and white.
var (
	names = [rest.Sets]string{"A", "B", "C"}
	pens  = [rest.Sets]drawing.Pen{{Width: 0.35}, {Width: 0.3, Dash: []float64{2.4, 1.2}}, {Width: 0.35, Dash: []float64{0.4, 1}}}
)

var outline = drawing.Pen{Width: 0.3}

// scales are those at which garments are drawn, 1 to so many.
var scales = []float64{5, 8, 10, 12, 15, 18, 20, 22, 25, 30, 40, 50, 60, 80, 100}

// scaleFor is the largest scale at which a size lies in a room.
func scaleFor(size, room plane.Point) float64 {
	for _, s := range scales {
		if size.X/s <= room.X && size.Y/s <= room.Y {
			return s
		}
	}
	return math.Max(size.X/room.X, size.Y/room.Y)
}

// laid draws the garment lying flat with the folds of all sets, its lowest point at the foot of a box that its middle
// shares, and beside it how far each fold lies above the hem.
func (s *sheet) laid(c drawing.Canvas, foot plane.Point, scale float64) {
	put := func(p plane.Point) plane.Point { return foot.Add(p.Mul(1 / scale)) }
	mirror := func(p plane.Point) plane.Point { return plane.Point{X: -p.X, Y: p.Y} }
	c.Fill(s.flat.Front.Map(put), drawing.Mist)
	c.Line(s.flat.Front.Map(put), true, outline)
	c.Line([]plane.Point{put(mirror(s.flat.Waist)), put(s.flat.Waist)}, false, leaf.Hair)
	for _, r := range []plane.Ring{s.flat.Sleeve, s.flat.Sleeve.Map(mirror)} {
		if len(r) > 0 {
			c.Fill(r.Map(put), drawing.Mist)
			c.Line(r.Map(put), true, outline)
		}
	}
	half := s.flat.Breadth/2 + 2*scale
	for set := range rest.Sets {
		if s.packed.Sides.Folds > 0 {
			s.sideFolds(c, put, set)
		}
		for k, y := range s.packed.Across.Places(set) {
			l := []plane.Point{put(plane.Point{X: -half, Y: y}), put(plane.Point{X: half, Y: y})}
			c.Line(l, false, pens[set])
			w := leaf.Word(fmt.Sprintf("%s%d", names[set], k+1), leaf.Small, l[1].X+1, l[1].Y-0.8)
			w.Bold = true
			c.Word(w)
		}
	}
}

// sideFolds draws where the sides are turned in, from the hem up to the waist.
func (s *sheet) sideFolds(c drawing.Canvas, put func(plane.Point) plane.Point, set int) {
	x := s.packed.Sides.At[set]
	for _, side := range []float64{-1, 1} {
		var inside []plane.Point
		for y := 0.0; y <= s.flat.Waist.Y; y += 5 {
			if p := (plane.Point{X: side * x, Y: y}); s.flat.Front.Contains(p) {
				inside = append(inside, put(p))
			}
		}
		if len(inside) > 1 {
			c.Line([]plane.Point{inside[0], inside[len(inside)-1]}, false, pens[set])
			w := leaf.Word(names[set], leaf.Small, inside[0].X, inside[0].Y-3.2)
			w.Bold = true
			if s.apart(set, put) {
				c.Word(w.Back(0.5))
			}
		}
	}
}

// apart reports whether the places of the sides are far enough from each other for each to have its letter; where they are
// not, the first and the last have one.
func (s *sheet) apart(set int, put func(plane.Point) plane.Point) bool {
	step := put(plane.Point{X: s.packed.Sides.At[0]}).X - put(plane.Point{X: s.packed.Sides.At[1]}).X
	return step > leaf.Small || set != 1 && 2*step > leaf.Small
}

// fromAbove draws the box open, from its upper left corner, with the garment in it folded by the first set: what lies on
// top as it is, and what lies below it in dashes.
func (s *sheet) fromAbove(c drawing.Canvas, corner plane.Point, scale float64) drawing.Box {
	p := s.packed
	size := plane.Point{X: p.Breadth / scale, Y: p.Length / scale}
	box := drawing.Box{Lo: plane.Point{X: corner.X, Y: corner.Y - size.Y}, Hi: plane.Point{X: corner.X + size.X, Y: corner.Y}}
	c.Line(box.Corners(), true, leaf.Firm)
	c.Line(box.Grow(-rest.Bed/scale).Corners(), true, leaf.Hair)
	half := (p.Breadth - 2*rest.Bed) / 2
	if p.Sides.Folds > 0 {
		half = p.Sides.At[0]
	}
	low := box.Lo.Y + rest.Bed/scale
	last := len(p.Across.Parts(0)) - 1
	for i := range last + 1 {
		strip, up := s.strip(i, half)
		pen := drawing.Pen{Width: 0.15, Dash: []float64{1, 0.8}, Colour: drawing.Grey}
		if i == last {
			pen = outline
		}
		for _, run := range strip.Cut(s.flat.Front, true) {
			var put []plane.Point
			for _, q := range run {
				put = append(put, plane.Point{X: box.Centre().X + q.X/scale, Y: low + up(q.Y)/scale})
			}
			c.Line(put, false, pen)
		}
	}
	s.sleevesIn(c, box, scale)
	for end := range min(2, p.Across.Folds) { // the first, third and so on at the upper end
		y := low + float64(1-end)*p.Across.Pitch()/scale
		c.Line([]plane.Point{{X: box.Centre().X - half/scale, Y: y}, {X: box.Centre().X + half/scale, Y: y}}, false, pens[0])
		var here []string
		for k := end; k < p.Across.Folds; k += 2 {
			here = append(here, fmt.Sprintf("%s%d", names[0], k+1))
		}
		w := leaf.Word(strings.Join(here, " "), leaf.Small, box.Hi.X+1.2, y-0.8)
		w.Bold = true
		c.Word(w.Fit(leaf.Right + 3 - w.At.X))
	}
	if p.Sides.Folds > 0 {
		for _, x := range []float64{-half, half} {
			at := box.Centre().X + x/scale
			c.Line([]plane.Point{{X: at, Y: low}, {X: at, Y: low + math.Min(p.Across.Pitch(), p.Length-2*rest.Bed)/scale}}, false, pens[0])
		}
	}
	return box
}

// sleevesIn draws the sleeves in the box: beside the bodice, or laid over it.
func (s *sheet) sleevesIn(c drawing.Canvas, box drawing.Box, scale float64) {
	if s.flat.Sleeve == nil {
		return
	}
	last := len(s.packed.Across.Places(0))
	_, up := s.strip(last, 0)
	lo, hi := s.flat.Sleeve.Bounds()
	for _, side := range []float64{-1, 1} {
		c.Line(s.flat.Sleeve.Map(func(p plane.Point) plane.Point {
			x := p.X
			if s.packed.SleevesOn {
				x = math.Min(lo.X, s.flat.Trunk/2) - (p.X-lo.X)*math.Min(1, s.flat.Trunk/2/(hi.X-lo.X))
			}
			return plane.Point{X: box.Centre().X + side*x/scale, Y: box.Lo.Y + (rest.Bed+up(p.Y))/scale}
		}), true, drawing.Pen{Width: 0.2, Colour: drawing.Grey})
	}
}

// strip is the part of the flat garment between two folds of the first set, and how far from the lower wall of its box a
// height of it lies: parts lie to and fro, the first fold at the upper end.
func (s *sheet) strip(i int, half float64) (drawing.Box, func(y float64) float64) {
	places, pitch := s.packed.Across.Places(0), s.packed.Across.Pitch()
	from, to := 0.0, s.flat.Length
	if i > 0 {
		from = places[i-1]
	}
	if i < len(places) {
		to = places[i]
	}
	b := drawing.Box{Lo: plane.Point{X: -half, Y: from}, Hi: plane.Point{X: half, Y: to}}
	switch {
	case len(places) == 0:
		return b, func(y float64) float64 { return y }
	case i == 0:
		return b, func(y float64) float64 { return pitch - (to - y) }
	case i%2 == 1:
		return b, func(y float64) float64 { return pitch - (y - from) }
	}
	return b, func(y float64) float64 { return y - from }
}

// fromTheSide draws the box cut along its length, the hem's end at the left: its layers, and a pad in every fold.
func (s *sheet) fromTheSide(c drawing.Canvas, corner plane.Point, scale float64) drawing.Box {
	p := s.packed
	box := drawing.Box{Lo: plane.Point{X: corner.X, Y: corner.Y - p.Height/scale}, Hi: plane.Point{X: corner.X + p.Length/scale, Y: corner.Y}}
	c.Line(box.Corners(), true, leaf.Firm)
	layer, pad, pitch := s.cloth.Layer(p)/scale, s.cloth.Pad/scale, p.Across.Pitch()/scale
	parts := p.Across.Parts(0)
	left, y := box.Lo.X+rest.Bed/scale, box.Lo.Y+rest.Bed/scale
	bend := pad/2 + layer
	for i, part := range parts {
		from, to := left, left+pitch
		open := len(parts) > 1
		switch { // an outermost part ends where it ends
		case !open:
		case i == 0:
			from = to - part/scale
		case i == len(parts)-1 && i%2 == 1:
			from = to - part/scale
		case i == len(parts)-1:
			to = from + part/scale
		}
		a, b := from, to
		if i < len(parts)-1 && i%2 == 0 || i > 0 && i%2 == 1 {
			b -= bend
		}
		if i < len(parts)-1 && i%2 == 1 || i > 0 && i%2 == 0 {
			a += bend
		}
		bar := drawing.Box{Lo: plane.Point{X: a, Y: y}, Hi: plane.Point{X: math.Max(a, b), Y: y + layer}}
		c.Fill(bar.Corners(), drawing.Pale)
		c.Line(bar.Corners()[:2], false, leaf.Fine)
		c.Line(bar.Corners()[2:], false, leaf.Fine)
		if i < len(parts)-1 {
			at, side := plane.Point{X: left + pitch - bend, Y: y + layer + pad/2}, 1.0
			if i%2 == 1 {
				at.X, side = left+bend, -1
			}
			turn(c, at, pad/2, layer, side)
		}
		y += layer + pad
	}
	return box
}

// turn draws cloth of a thickness half round a pad, to the right or, where side is −1, to the left.
func turn(c drawing.Canvas, at plane.Point, radius, thickness, side float64) {
	const steps = 24
	arc := func(r float64) []plane.Point {
		var out []plane.Point
		for i := range steps + 1 {
			sin, cos := math.Sincos(math.Pi*float64(i)/steps - math.Pi/2)
			out = append(out, at.Add(plane.Point{X: side * r * cos, Y: r * sin}))
		}
		return out
	}
	inner, outer := arc(radius), arc(radius+thickness)
	band := append(plane.Ring{}, outer...)
	for i := len(inner) - 1; i >= 0; i-- {
		band = append(band, inner[i])
	}
	c.Fill(band, drawing.Pale)
	c.Line(outer, false, leaf.Fine)
	round := plane.Ring{}
	for i := range 2 * steps {
		sin, cos := math.Sincos(math.Pi * float64(i) / steps)
		round = append(round, at.Add(plane.Point{X: radius * cos, Y: radius * sin}))
	}
	c.Fill(round, drawing.White)
	c.Line(round, true, leaf.Fine)
}
