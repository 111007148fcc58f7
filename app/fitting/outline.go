package fitting

import (
	"math"

	"understructure/geometry/measure"
	"understructure/geometry/plane"
)

// moves says by how much a mount is to become larger: all round, and beside that on single sides.
type moves struct{ all, front, back, left, right float64 }

// add adds to one side, "" for all round.
func (m *moves) add(where string, d float64) {
	switch where {
	case "front":
		m.front += d
	case "back":
		m.back += d
	case "left":
		m.left += d
	case "right":
		m.right += d
	default:
		m.all += d
	}
}

func (m moves) sided() float64 { return m.front + m.back + m.left + m.right }
func (m moves) sum() float64   { return m.all + m.sided() }

// uneven reports whether front and back change unlike, crooked whether left and right do.
func (m moves) uneven() bool  { return m.front != m.back }
func (m moves) crooked() bool { return m.left != m.right }

// deeper is how much depth a millimetre more of the front arc gives: the half circle's share, 2/π
// (derived: the half perimeter of an ellipse grows by π/2 a unit of its depth where it is round).
const deeper = 2 / math.Pi

// reshaped carries the outline a from one girth to another. What is given of it changes with the
// girth, and with the side that it belongs to; an arc that is not given is taken from drawn only where one side changes.
func reshaped(a measure.Adjustment, from, to float64, m moves, drawn func() (front, left float64)) measure.Adjustment {
	grow := (to - m.sided()) / from
	part := func(v *float64, more float64) *float64 {
		if v == nil {
			return nil
		}
		x := *v*grow + more
		return &x
	}
	if front, left := a.FrontArc == nil && m.uneven(), a.LeftArc == nil && m.crooked(); front || left {
		f, l := drawn()
		if front && f > 0 {
			a.FrontArc = &f
		}
		if left && l > 0 {
			a.LeftArc = &l
		}
	}
	return measure.Adjustment{
		Height: a.Height, Girth: &to,
		FrontArc: part(a.FrontArc, m.front+(m.left+m.right)/2),
		LeftArc:  part(a.LeftArc, m.left+(m.front+m.back)/2),
		Breadth:  part(a.Breadth, deeper*(m.left+m.right)),
		Depth:    part(a.Depth, deeper*(m.front+m.back)),
	}
}

// arcs returns what draws the arcs of the figure at a level for a girth of that much; 0 where there is no figure.
func (f *fitter) arcs(l measure.Level, girth float64) func() (front, left float64) {
	return func() (front, left float64) {
		t, ok := f.figure()
		if !ok {
			return 0, 0
		}
		level := t.At(l)
		hull := level.Section.Ring().Hull()
		scale := girth / hull.Perimeter()
		return scale * beyond(hull, func(p plane.Point) float64 { return p.Y - level.Seam }),
			scale * beyond(hull, func(p plane.Point) float64 { return -p.X })
	}
}

// beyond is the length of the outline where side is positive.
func beyond(r plane.Ring, side func(plane.Point) float64) float64 {
	sum := 0.0
	for i, p := range r {
		q := r[(i+1)%len(r)]
		a, b := side(p), side(q)
		switch {
		case a >= 0 && b >= 0:
			sum += p.Dist(q)
		case a > 0 || b > 0:
			sum += p.Dist(q) * math.Max(a, b) / math.Abs(a-b)
		}
	}
	return sum
}
