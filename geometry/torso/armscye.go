package torso

import (
	"math"

	"understructure/geometry/measure"
	"understructure/geometry/section"
	"understructure/geometry/space"
)

// loop draws the armscye in four quarters, each an ellipse's: over the shoulder point it
// runs level, at the front and back cuts upright, at the underarm level again.
func (u *upper) loop(z heights, underarm section.Body) []space.Point {
	right, _ := underarm.Sides()
	tip := raised(u.tip(), z.shoulder)
	front := raised(u.bentChest.moved(u.cutFront), z.at(measure.AcrossChest))
	low := space.Point{X: right, Y: underarm.Y, Z: z.at(measure.Underarm)}
	back := raised(u.bentChest.moved(u.cutBack), z.at(measure.AcrossChest))
	var loop []space.Point
	for _, q := range [...]struct {
		from, to space.Point
		level    bool // the quarter starts level
	}{{tip, front, true}, {front, low, false}, {low, back, true}, {back, tip, false}} {
		const steps = 16
		for i := range steps {
			sin, cos := math.Sincos(float64(i) / steps * math.Pi / 2)
			across, along := sin, 1-cos
			if !q.level {
				across, along = 1-cos, sin
			}
			p := q.from.Lerp(q.to, along)
			p.Y = q.from.Y + (q.to.Y-q.from.Y)*across
			loop = append(loop, p)
		}
	}
	return loop
}

// loopLength is the length of a closed loop.
func loopLength(loop []space.Point) float64 {
	l := 0.0
	for i, p := range loop {
		l += p.Dist(loop[(i+1)%len(loop)])
	}
	return l
}
