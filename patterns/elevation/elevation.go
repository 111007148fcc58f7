// Package elevation draws a mount from the front, from the side and in section: the garment's
// inside, the wanted figure, the form and what is built, each with a line of its own that is
// told apart in black and white too.
// It does not shade, and it does not turn the figure.
package elevation

import (
	"fmt"
	"math"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/plan"
)

// The sides from which a mount is seen.
const (
	Front = "front" // the figure's right is on the left
	Side  = "side"  // from the figure's right: its front is on the right
)

// body is one of the surfaces, and how it is drawn.
type body struct {
	name  string
	rings []plane.Ring
	pen   drawing.Pen
}

// The colours are black and grey, and blue and vermilion of the palette of M. Okabe and K. Ito,
// "Color Universal Design", 2008, which is made to be told apart with any kind of colour vision.
var (
	blue      = drawing.Colour{R: 0x00, G: 0x72, B: 0xb2}
	vermilion = drawing.Colour{R: 0xd5, G: 0x5e, B: 0x00}
)

func bodies(s plan.Surface) []body {
	all := []body{
		{"form", s.Form, drawing.Pen{Width: 0.2, Dash: []float64{0.5, 0.8}, Colour: drawing.Grey}},
		{"foam core", s.Core, drawing.Pen{Width: 0.2, Dash: []float64{0.5, 0.8}, Colour: drawing.Grey}},
		{"built", s.Built, drawing.Pen{Width: 0.22, Colour: vermilion}},
		{"wanted", s.Target, drawing.Pen{Width: 0.22, Dash: []float64{2.2, 1.2}, Colour: blue}},
		{"garment inside", s.Garment, drawing.Pen{Width: 0.32}},
	}
	var present []body
	for _, b := range all {
		for _, r := range b.rings {
			if len(r) > 0 {
				present = append(present, b)
				break
			}
		}
	}
	return present
}

// Sizes of words, and the strip kept for the names of levels, in millimetres.
const (
	wordSize  = 2.4
	nameStrip = 27.0
)

// Draw draws the mount from one side into a box.
func Draw(c drawing.Canvas, p plan.Plan, side string, box drawing.Box) {
	all := bodies(p.Surface)
	views, extent := seen(p.Surface.Heights, all, side)
	if extent.Width() <= 0 || extent.Height() <= 0 {
		return
	}
	for _, other := range []string{Front, Side} { // both sides to one scale
		_, e := seen(p.Surface.Heights, all, other)
		half := plane.Point{X: e.Width() / 2}
		extent = extent.Round(extent.Centre().Sub(half), extent.Centre().Add(half))
	}
	names, picture := box, box
	picture.Lo.X += nameStrip
	names.Hi.X = picture.Lo.X
	fit := into(extent, picture.Grow(-1))
	levels(c, p.Levels, fit, names, picture)
	for i, b := range all {
		for _, v := range views[i] {
			c.Line(mapped(v, fit), true, b.pen)
		}
	}
}

// seen are the silhouettes of all bodies from one side, and the box round them.
func seen(heights []float64, all []body, side string) (views [][][]plane.Point, extent drawing.Box) {
	views, extent = make([][][]plane.Point, len(all)), drawing.Empty()
	for i, b := range all {
		views[i] = silhouettes(heights, b.rings, side)
		for _, v := range views[i] {
			extent = extent.Round(v...)
		}
	}
	return views, extent
}

// silhouettes are the closed outlines of a body seen from one side, one for each run of heights
// at which it has a section.
func silhouettes(heights []float64, rings []plane.Ring, side string) [][]plane.Point {
	var all [][]plane.Point
	var up, down []plane.Point
	end := func() {
		if len(up) > 1 {
			for i := len(down) - 1; i >= 0; i-- {
				up = append(up, down[i])
			}
			all = append(all, up)
		}
		up, down = nil, nil
	}
	for i, z := range heights {
		if i >= len(rings) || len(rings[i]) == 0 {
			end()
			continue
		}
		lo, hi := rings[i].Bounds()
		if side == Side {
			up, down = append(up, plane.Point{X: hi.Y, Y: z}), append(down, plane.Point{X: lo.Y, Y: z})
		} else {
			up, down = append(up, plane.Point{X: -lo.X, Y: z}), append(down, plane.Point{X: -hi.X, Y: z})
		}
	}
	end()
	return all
}

// into scales one box to lie in the middle of another, without distortion.
func into(from, to drawing.Box) func(plane.Point) plane.Point {
	s := math.Min(to.Width()/from.Width(), to.Height()/from.Height())
	return func(p plane.Point) plane.Point { return to.Centre().Add(p.Sub(from.Centre()).Mul(s)) }
}

func mapped(line []plane.Point, f func(plane.Point) plane.Point) []plane.Point {
	return plane.Ring(line).Map(f)
}

// levels draws a fine line across the picture at every level and its name and height beside it,
// moved down where two would stand on each other.
func levels(c drawing.Canvas, all []plan.Level, fit func(plane.Point) plane.Point, names, picture drawing.Box) {
	fine := drawing.Pen{Width: 0.13, Colour: drawing.Grey}
	lowest := math.Inf(1)
	for _, l := range all {
		y := fit(plane.Point{Y: l.Height}).Y
		if y < picture.Lo.Y || y > picture.Hi.Y {
			continue
		}
		at := math.Min(y, lowest-1.25*wordSize)
		lowest = at
		end := plane.Point{X: names.Hi.X - 3, Y: at}
		c.Line([]plane.Point{end, {X: names.Hi.X, Y: y}, {X: picture.Hi.X, Y: y}}, false, fine)
		base := at - fonts.CapHeight*wordSize/2
		height := drawing.Word{Text: fmt.Sprintf("%.0f", l.Height), Size: wordSize, At: plane.Point{X: end.X - 1, Y: base}}.Back(1)
		c.Word(height)
		c.Word(drawing.Word{Text: l.Name, Size: wordSize, At: plane.Point{X: names.Lo.X, Y: base}}.Fit(height.At.X - names.Lo.X - 1))
	}
}

// Key draws the meaning of the lines side by side from a place on, for as many as the plan has.
func Key(c drawing.Canvas, p plan.Plan, at plane.Point) {
	for _, b := range bodies(p.Surface) {
		y := at.Y + fonts.CapHeight*wordSize/2
		c.Line([]plane.Point{{X: at.X, Y: y}, {X: at.X + 9, Y: y}}, false, b.pen)
		w := drawing.Word{Text: b.name, Size: wordSize, At: plane.Point{X: at.X + 10.5, Y: at.Y}}
		c.Word(w)
		at.X += 10.5 + w.Width() + 6
	}
}
