package rest

import (
	"math"

	"understructure/geometry/curve"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
)

// sideOf is the length of a skirt at the side, between those in front and behind where it was not taken.
func sideOf(skirt measure.Sheet) float64 {
	front := first(skirt, 0, measure.FrontLength, measure.SideLength, measure.BackLength)
	return first(skirt, (front+first(skirt, front, measure.BackLength))/2, measure.SideLength)
}

// side is half of an edge: heights from the top down, and how far out each lies.
type side struct{ y, x []float64 }

// add adds a girth at a height; one that is not known, or hardly lower than the last, is left out.
func (s *side) add(y, girth float64) {
	const apart = 8.0
	if n := len(s.y); girth > 0 && (n == 0 || y < s.y[n-1]-apart) {
		s.y, s.x = append(s.y, y), append(s.x, girth/4)
	}
}

// smooth draws the edge through its places.
func (s side) smooth() []plane.Point {
	const step = 12.0
	if len(s.y) < 2 {
		return []plane.Point{{X: s.x[0], Y: s.y[0]}}
	}
	down := make([]float64, len(s.y))
	for i := range s.y {
		down[i] = s.y[0] - s.y[i]
	}
	through, long := curve.Through(down, s.x), down[len(down)-1]
	n := int(math.Ceil(long / step))
	out := make([]plane.Point, n+1)
	for i := range out {
		d := long * float64(i) / float64(n)
		out[i] = plane.Point{X: through.At(d), Y: s.y[0] - d}
	}
	return out
}

// hem is the lower edge from the right to the middle: as much lower behind, or higher in front, as the skirt is longer
// there. What lies lowest is drawn, since that is what needs room.
func (g Garment) hem(corner plane.Point) []plane.Point {
	const steps = 24
	drop := 0.0
	if len(g.Skirt) > 0 {
		drop = longest(g.Skirt, measure.FrontLength, measure.SideLength, measure.BackLength) - sideOf(g.Skirt)
	}
	out := make([]plane.Point, steps)
	for i := range out {
		t := float64(i+1) / steps
		out[i] = plane.Point{X: corner.X * (1 - t), Y: corner.Y - drop*math.Sin(t*math.Pi/2)}
	}
	return out
}

// armhole runs from the shoulder point down to the side, cut in as far as the bodice is narrow there.
func armhole(point, under plane.Point, across float64) []plane.Point {
	const steps = 14
	middle := point.Lerp(under, 0.5)
	if across > 0 {
		middle.X = math.Min(across, math.Max(point.X, under.X))
	}
	control := middle.Mul(2).Sub(point.Lerp(under, 0.5))
	out := make([]plane.Point, steps)
	for i := range out {
		t := float64(i) / steps
		out[i] = point.Lerp(control, t).Lerp(control.Lerp(under, t), t)
	}
	return out
}

// neckline runs from the middle, at a height, to the neck point at the right, which it does not hold.
func neckline(half, middle float64) []plane.Point {
	const steps = 14
	out := make([]plane.Point, steps)
	for i := range out {
		a := float64(i) / steps * math.Pi / 2
		out[i] = plane.Point{X: half * math.Sin(a), Y: napeDepth - (napeDepth-middle)*math.Cos(a)}
	}
	return out
}

// whole is an outline, counter-clockwise, of which neckline and half are the right half from the top down.
func whole(neck, half []plane.Point) plane.Ring {
	right := append(append([]plane.Point{}, neck...), half...)
	var r plane.Ring
	for _, p := range right {
		if p.X > 1e-9 {
			r = append(r, plane.Point{X: -p.X, Y: p.Y})
		} else {
			r = append(r, p)
		}
	}
	for i := len(right) - 1; i >= 0; i-- {
		if right[i].X > 1e-9 {
			r = append(r, right[i])
		}
	}
	return r
}

// sleeve is the left sleeve as it lies beside the bodice, slanting out only as far as the bodice or the hip below it
// wants; nil for none. Its head rises from under the arm to the shoulder point.
func (g Garment) sleeve(point plane.Point, under float64) plane.Ring {
	s := g.Sleeve
	length := first(s, longest(s, measure.UnderLength)+first(s, 0, measure.UpperGirth)/4, measure.SleeveLength)
	upper := first(s, first(s, 0, measure.ElbowGirth, measure.WristGirth), measure.UpperGirth)
	if length <= 0 || upper <= 0 {
		return nil
	}
	elbow, wrist := first(s, upper, measure.ElbowGirth), first(s, first(s, upper, measure.ElbowGirth), measure.WristGirth)
	head := math.Min(point.Y-under, length/2)
	down, wide := []float64{0, head, length}, []float64{0.35 * upper / 2, upper / 2, wrist / 2}
	if at := math.Max(elbowPart*length, head+20); at < length-20 {
		down, wide = []float64{0, head, at, length}, []float64{0.35 * upper / 2, upper / 2, elbow / 2, wrist / 2}
	}
	through := curve.Through(down, wide)
	inner := math.Max(point.X, g.Bodice[measure.BustGirth]/4) + beside
	var left, right plane.Ring
	const steps = 40
	for i := range steps + 1 {
		d := length * float64(i) / steps
		left = append(left, plane.Point{X: inner + (upper/2-through.At(d))/2, Y: point.Y - d})
		right = append(right, plane.Point{X: inner + (upper/2+through.At(d))/2, Y: point.Y - d})
	}
	return append(left, right.Reverse()...)
}

// beside is the room left between bodice and sleeve.
const beside = 12.0
