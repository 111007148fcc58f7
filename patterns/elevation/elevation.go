// Package elevation draws a mount from the front, from the side, from the back and in section: the
// garment's inside, the wanted figure, the form and what is built, each with a line of its own that is
// told apart in black and white too. It also draws the mount apart: its slices along the pole, its
// layers in a row.
// It does not shade.
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
	Back  = "back"
)

// across is the direction on the figure, seen from above, that points to the right in a view.
var across = map[string]plane.Point{Front: {X: -1}, Side: {Y: 1}, Back: {X: 1}}

// body is one of the surfaces, and how it is drawn.
type body struct {
	name    string
	heights []float64
	rings   []plane.Ring
	pen     drawing.Pen
	fill    drawing.Colour // White for none
}

// The colours are black and grey, and blue and vermilion of the palette of M. Okabe and K. Ito,
// "Color Universal Design", 2008, which is made to be told apart with any kind of colour vision.
var (
	blue      = drawing.Colour{R: 0x00, G: 0x72, B: 0xb2}
	vermilion = drawing.Colour{R: 0xd5, G: 0x5e, B: 0x00}
)

func bodies(s plan.Surface) []body {
	return present([]body{
		{"form", s.Heights, s.Form, drawing.Pen{Width: 0.2, Dash: []float64{0.5, 0.8}, Colour: drawing.Grey}, drawing.White},
		{"foam core", s.Heights, s.Core, drawing.Pen{Width: 0.2, Dash: []float64{0.5, 0.8}, Colour: drawing.Grey}, drawing.White},
		{"built", s.Heights, s.Built, drawing.Pen{Width: 0.22, Colour: vermilion}, drawing.Mist},
		{"wanted", s.Heights, s.Target, drawing.Pen{Width: 0.22, Dash: []float64{2.2, 1.2}, Colour: blue}, drawing.White},
		{"garment inside", s.Heights, s.Garment, drawing.Pen{Width: 0.32}, drawing.White},
	})
}

// present are the bodies that there are.
func present(all []body) []body {
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
	views, extent := seen(all, side)
	if extent.Width() <= 0 || extent.Height() <= 0 {
		return
	}
	for _, other := range []string{Front, Side} { // both sides to one scale
		_, e := seen(all, other)
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
func seen(all []body, side string) (views [][][]plane.Point, extent drawing.Box) {
	views, extent = make([][][]plane.Point, len(all)), drawing.Empty()
	for i, b := range all {
		views[i] = silhouettes(b.heights, b.rings, across[side])
		for _, v := range views[i] {
			extent = extent.Round(v...)
		}
	}
	return views, extent
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
func Key(c drawing.Canvas, p plan.Plan, at plane.Point) { key(c, bodies(p.Surface), at) }

func key(c drawing.Canvas, all []body, at plane.Point) {
	for i, p := range keyPlaces(all, 0, math.Inf(1)) {
		entry(c, all[i], at.Add(p))
	}
}

// The line before a name in a key, and the room after the name, in millimetres.
const (
	keyLine = 8.0
	keyGap  = 2.8
)

// keyPlaces is where the bodies of a key stand, the first so far to the right of the edge, in lines no wider than a width.
func keyPlaces(all []body, first, width float64) []plane.Point {
	out, at := make([]plane.Point, len(all)), plane.Point{X: first}
	for i, b := range all {
		wide := keyLine + 1.5 + name(b, at).Width()
		if at.X > 0 && at.X+wide > width {
			at = plane.Point{Y: at.Y - 1.6*wordSize}
		}
		out[i] = at
		at.X += wide + keyGap
	}
	return out
}

func name(b body, at plane.Point) drawing.Word {
	return drawing.Word{Text: b.name, Size: wordSize, At: at.Add(plane.Point{X: keyLine + 1.5})}
}

func entry(c drawing.Canvas, b body, at plane.Point) {
	box := drawing.Box{Lo: at, Hi: at.Add(plane.Point{X: keyLine, Y: fonts.CapHeight * wordSize})}
	if b.fill != drawing.White {
		c.Fill(box.Corners(), b.fill)
	}
	y := box.Centre().Y
	c.Line([]plane.Point{{X: box.Lo.X, Y: y}, {X: box.Hi.X, Y: y}}, false, b.pen)
	c.Word(name(b, at))
}
