package elevation

import (
	"fmt"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
)

// scales are those that a drawing of a mount may have, one to so many.
var scales = []float64{1, 2, 2.5, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100, 200, 500, 1000}

// scaleFor is the largest scale at which something fits into a width and a height of paper, and the
// smallest of all where nothing would.
func scaleFor(wide, high, width, height float64) float64 {
	for _, s := range scales {
		if wide <= width*s && high <= height*s {
			return s
		}
	}
	return scales[len(scales)-1]
}

// barLengths are what a scale bar may stand for, in millimetres of the mount, and longestBar how long it is on paper at most.
var barLengths = []float64{100, 50, 20, 10, 5, 2, 1}

const longestBar = 8.0

// bar draws a round length to scale and says what it is, from a place on. It returns how wide that is.
func bar(c drawing.Canvas, scale float64, at plane.Point) float64 {
	const tick = 0.8
	long := barLengths[0]
	for _, l := range barLengths {
		if long = l; l/scale <= longestBar {
			break
		}
	}
	end := plane.Point{X: at.X + long/scale, Y: at.Y}
	for _, p := range []plane.Point{at, end} {
		c.Line([]plane.Point{p, {X: p.X, Y: p.Y + 2*tick}}, false, drawing.Pen{Width: 0.2})
	}
	c.Line([]plane.Point{{X: at.X, Y: at.Y + tick}, {X: end.X, Y: at.Y + tick}}, false, drawing.Pen{Width: 0.2})
	w := drawing.Word{Text: fmt.Sprintf("%g mm, scale 1 : %g", long, scale), Size: wordSize, At: plane.Point{X: end.X + 1.5, Y: at.Y}}
	c.Word(w)
	return w.At.X + w.Width() - at.X
}
