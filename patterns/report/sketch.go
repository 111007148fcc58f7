package report

import (
	"math"

	geo "understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
)

// A sketch is a small drawing without scale that shows where tapes go. Its lines are in parts of
// its own, y up.
type sketch struct {
	name     string
	outlines [][]plane.Point
	tapes    []tape
}

// tape is one line on a sketch: the measurement it stands for and where its number is set.
type tape struct {
	key   geo.Key
	line  []plane.Point
	label plane.Point
}

func pts(xy ...float64) []plane.Point {
	line := make([]plane.Point, len(xy)/2)
	for i := range line {
		line[i] = plane.Point{X: xy[2*i], Y: xy[2*i+1]}
	}
	return line
}

// mirrored closes the right half of an outline, given from the top down, with its left half.
func mirrored(half []plane.Point) []plane.Point {
	all := append([]plane.Point{}, half...)
	for i := len(half) - 1; i >= 0; i-- {
		all = append(all, plane.Point{X: -half[i].X, Y: half[i].Y})
	}
	return append(all, all[0])
}

// round is a curve seen from slightly above: a tape that goes round the figure at a height,
// from -x to x, sagging towards the viewer.
func round(x, y float64) []plane.Point {
	const n = 16
	line := make([]plane.Point, n+1)
	for i := range line {
		t := 2*float64(i)/n - 1
		line[i] = plane.Point{X: x * t, Y: y - 2.2*(1-t*t)}
	}
	return line
}

// ellipse is the part of an ellipse about the origin between two angles in degrees.
func ellipse(a, b, from, to float64) []plane.Point {
	const n = 48
	line := make([]plane.Point, n+1)
	for i := range line {
		s, c := math.Sincos((from + (to-from)*float64(i)/n) * math.Pi / 180)
		line[i] = plane.Point{X: a * c, Y: b * s}
	}
	return line
}

// The right half of a bodice from neck point to hem: shoulder, armhole, side.
var bodiceHalf = pts(13, 94, 36, 87, 32.5, 78, 31, 69, 33.5, 61, 38, 58, 33, 46, 27, 30, 32, 18, 38, 6, 40, -4)

func bodice(neck ...float64) [][]plane.Point {
	return [][]plane.Point{mirrored(append(pts(neck...), bodiceHalf...))}
}

// bodiceFront shows the figure's right on the left, as it faces the viewer.
var bodiceFront = sketch{
	name:     "front",
	outlines: bodice(0, 82, 6, 84, 10.5, 88),
	tapes: []tape{
		{geo.BustGirth, round(34.5, 50), plane.Point{X: -40, Y: 50}},
		{geo.UnderbustGirth, round(30.5, 40), plane.Point{X: -36, Y: 40}},
		{geo.WaistGirth, round(27, 30), plane.Point{X: -33, Y: 30}},
		{geo.HighHipGirth, round(33, 15.5), plane.Point{X: -39, Y: 15.5}},
		{geo.HipGirth, round(39.2, 0), plane.Point{X: -45, Y: 0}},
		{geo.BustPointWidth, pts(-15, 54.5, 15, 54.5), plane.Point{X: -7, Y: 54.5}},
		{geo.AcrossFront, pts(-31, 69, 31, 69), plane.Point{X: -15, Y: 69}},
		{geo.ShoulderLength, pts(14, 97, 37, 90), plane.Point{X: 26, Y: 93.3}},
		{geo.ShoulderSlope, pts(-13, 94, -40, 94, -36, 87), plane.Point{X: -27, Y: 94}},
		{geo.ArmscyeGirth, pts(36, 87, 32.5, 78, 31, 69, 33.5, 61, 38, 58), plane.Point{X: 31.5, Y: 73}},
		{geo.FrontWaist, pts(0, 82, 0, 28), plane.Point{X: 0, Y: 62}},
		{geo.NeckToBustPoint, pts(13, 94, 15, 54.5), plane.Point{X: 13.8, Y: 79}},
		{geo.SideLength, pts(41, 57, 36, 46, 30, 30), plane.Point{X: 36.5, Y: 46}},
		{geo.WaistToHighHip, pts(30, 30, 36, 15.5), plane.Point{X: 33.4, Y: 22}},
		{geo.WaistToHip, pts(31.5, 32, 46, 0), plane.Point{X: 42.3, Y: 8}},
	},
}

var bodiceBack = sketch{
	name:     "back",
	outlines: bodice(0, 91, 8, 92),
	tapes: []tape{
		{geo.NeckBaseGirth, pts(-13, 99.5, -8, 97.5, 0, 97, 8, 97.5, 13, 99.5), plane.Point{X: 0, Y: 97}},
		{geo.AcrossBack, pts(-31, 69, 31, 69), plane.Point{X: -19, Y: 69}},
		{geo.BackWaist, pts(0, 91, 0, 30), plane.Point{X: 0, Y: 52}},
		{geo.NapeToHem, pts(-9, 91, -9, -11), plane.Point{X: -9, Y: 14}},
		{geo.WaistHeight, pts(46, -11, 46, 30, 29, 30), plane.Point{X: 46, Y: 14}},
	},
}

// bodiceSection is the figure from above, front at the foot of the drawing as it faces the viewer.
var bodiceSection = sketch{
	name:     "from above, front below",
	outlines: [][]plane.Point{ellipse(30, 22, 0, 360)},
	tapes: []tape{
		{geo.BustFrontArc, ellipse(34, 26, 180, 360), plane.Point{X: -9.5, Y: -25}},
		{geo.WaistFrontArc, nil, plane.Point{X: 0, Y: -26}},
		{geo.HipFrontArc, nil, plane.Point{X: 9.5, Y: -25}},
		{geo.BustLeftArc, ellipse(38, 30, -84, 90), plane.Point{X: 36.6, Y: 9}},
		{geo.WaistLeftArc, nil, plane.Point{X: 38, Y: 0}},
		{geo.HipLeftArc, nil, plane.Point{X: 36.6, Y: -9}},
		{geo.BustBreadth, pts(-30, 0, 30, 0), plane.Point{X: -24, Y: 0}},
		{geo.WaistBreadth, nil, plane.Point{X: -15.5, Y: 0}},
		{geo.HipBreadth, nil, plane.Point{X: -7, Y: 0}},
		{geo.BustDepth, pts(0, -22, 0, 22), plane.Point{X: 0, Y: 15.5}},
		{geo.WaistDepth, nil, plane.Point{X: 0, Y: 7}},
		{geo.HipDepth, nil, plane.Point{X: 0, Y: -12}},
	},
}

var skirtSketch = sketch{
	name:     "skirt",
	outlines: [][]plane.Point{append(pts(-12, 60, 12, 60, 24, 36, 44, -12), append(round(44, -12)[1:16], pts(-44, -12, -24, 36, -12, 60)...)...)},
	tapes: []tape{
		{geo.WaistGirth, pts(-12, 62.5, 12, 62.5), plane.Point{X: 0, Y: 63}},
		{geo.HipGirth, round(23.5, 37), plane.Point{X: 11, Y: 35.3}},
		{geo.HemGirth, round(44, -15.5), plane.Point{X: 22, Y: -17.2}},
		{geo.FrontLength, pts(0, 60, 0, -14), plane.Point{X: 0, Y: 12}},
		{geo.SideLength, pts(15, 60, 27, 36, 47, -12), plane.Point{X: 37, Y: 12}},
		{geo.BackLength, pts(-15, 60, -27, 36, -47, -12), plane.Point{X: -37, Y: 12}},
	},
}

var sleeveSketch = sketch{
	name:     "sleeve",
	outlines: [][]plane.Point{pts(-14, 56, -8, 64, 0, 67, 8, 64, 14, 56, 13, 26, 9, -8, -8, -8, -12, 24, -14, 56)},
	tapes: []tape{
		{geo.UpperGirth, round(14, 55), plane.Point{X: -20, Y: 55}},
		{geo.ElbowGirth, round(12.3, 24), plane.Point{X: -18.5, Y: 24}},
		{geo.WristGirth, round(8.5, -8), plane.Point{X: -14, Y: -8}},
		{geo.SleeveLength, pts(3, 68, 12, 65, 18, 56, 17, 26, 12, -8), plane.Point{X: 17.4, Y: 40}},
		{geo.UnderLength, pts(-10, 54, -8.5, 24, -5, -7), plane.Point{X: -6.7, Y: 8}},
	},
}

// numbers gives every measurement of a table its number.
type numbers map[geo.Key]int

func counted(table []geo.Measure, first int) numbers {
	n := numbers{}
	for i, m := range table {
		n[m.Key] = first + i
	}
	return n
}

// badgeSketch is the radius of a number's circle on a sketch, in millimetres: three lie side by side
// on the smallest.
const badgeSketch = 1.7

var (
	outlinePen = drawing.Pen{Width: 0.3}
	tapePen    = drawing.Pen{Width: 0.2, Dash: []float64{1.2, 0.7}}
)

// draw draws the sketch with its origin at a place of the page, so many millimetres to a part.
func (k sketch) draw(c drawing.Canvas, n numbers, at plane.Point, scale float64) {
	put := func(line []plane.Point) []plane.Point {
		return plane.Ring(line).Map(func(p plane.Point) plane.Point { return at.Add(p.Mul(scale)) })
	}
	for _, o := range k.outlines {
		c.Fill(put(o), drawing.Mist)
		c.Line(put(o), false, outlinePen)
	}
	for _, t := range k.tapes {
		if len(t.line) > 1 {
			c.Line(put(t.line), false, tapePen)
			ends(c, put(t.line))
		}
	}
	for _, t := range k.tapes {
		badge(c, n[t.key], put([]plane.Point{t.label})[0], badgeSketch)
	}
}

// ends marks both ends of a tape with a dot.
func ends(c drawing.Canvas, line []plane.Point) {
	for _, p := range []plane.Point{line[0], line[len(line)-1]} {
		c.Fill(disc(p, 0.45), drawing.Black)
	}
}

func disc(p plane.Point, r float64) []plane.Point {
	return plane.Ring(ellipse(r, r, 0, 360)).Move(p)
}
