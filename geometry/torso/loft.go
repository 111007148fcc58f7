package torso

import (
	"math"

	"understructure/geometry/curve"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/section"
)

// loft is the stack of slices that the skin goes through, bottom to top.
type loft struct {
	z      []float64
	slices []section.Section
}

// column is the profile of one direction.
func (l loft) column(j int) curve.Monotone {
	r := make([]float64, len(l.z))
	for k := range l.slices {
		r[k] = l.slices[k][j]
	}
	return curve.Through(l.z, r)
}

// profileGap is how finely a profile is walked when a tape is laid along it: chords of
// 4 mm on a curve of 60 mm radius are 0.001 mm short each.
const profileGap = 4.0

// tape is the length of a tape pulled tight along one column from height lo to hi.
func tape(column curve.Monotone, lo, hi float64) float64 {
	n := 1 + int(math.Abs(hi-lo)/profileGap)
	p := make([]plane.Point, n+1)
	for i := range p {
		z := lo + (hi-lo)*float64(i)/float64(n)
		p[i] = plane.Point{X: z, Y: column.At(z)}
	}
	return curve.TautLength(p)
}

// overBust is the length of a tape pulled tight from the side neck point at height top down
// to the bust point, in the upright plane through both that runs from front to back.
func (l loft) overBust(neck, bust plane.Point, top, bottom float64) float64 {
	var quarter quarterColumns
	n := 1 + int((top-bottom)/profileGap)
	slope := math.Hypot(1, (neck.X-bust.X)/(top-bottom))
	p := make([]plane.Point, n+1)
	for i := range p {
		t := float64(i) / float64(n)
		z := bottom + (top-bottom)*t
		p[i] = plane.Point{X: (z - bottom) * slope, Y: quarter.frontAt(l, bust.X+(neck.X-bust.X)*t, z)}
	}
	p[n].Y = neck.Y
	return curve.TautLength(p)
}

// quarterColumns are the columns of the front right quarter, each drawn when first asked for.
type quarterColumns [section.Front + 1]*curve.Monotone

func (q *quarterColumns) at(l loft, j int, z float64) float64 {
	if q[j] == nil {
		c := l.column(j)
		q[j] = &c
	}
	return q[j].At(z)
}

// frontAt is the y of the front of the slice at height z, at distance x to the right.
func (q *quarterColumns) frontAt(l loft, x, z float64) float64 {
	prev := plane.Point{Y: q.at(l, section.Front, z)}
	for j := section.Front - 1; j >= 0; j-- {
		p := section.Direction(j).Mul(q.at(l, j, z))
		if p.X >= x {
			return prev.Lerp(p, (x-prev.X)/math.Max(p.X-prev.X, 1e-9)).Y
		}
		prev = p
	}
	return prev.Y
}

// stack returns the slices at the present heights, from hip to above the neck.
func (d *draft) stack() loft {
	var l loft
	for i := len(taped) - 1; i >= 0; i-- {
		l.z = append(l.z, d.z.at(taped[i].level))
		l.slices = append(l.slices, d.slices[taped[i].level])
	}
	top := d.top()
	l.z, l.slices = append(l.z, top.z...), append(l.slices, top.slices...)
	return l
}

// top returns the slices of the upper figure at the present heights, drawn anew only when one
// of the heights that they hang on has moved: most lengths are sought by moving another.
func (d *draft) top() loft {
	z := d.z
	at := [...]float64{z.at(measure.AcrossChest), z.shoulder, z.nape, z.neck, z.neckFront}
	if d.kept.z == nil || at != d.keptAt {
		d.kept, d.keptAt = loft{}, at
		for _, r := range d.upper.ribs(z) {
			d.kept.z = append(d.kept.z, r.z)
			d.kept.slices = append(d.kept.slices, d.upper.slice(r))
		}
	}
	return d.kept
}

// column is the profile of one direction: one column of the stack, without the others.
func (d *draft) column(j int) curve.Monotone {
	var z, r []float64
	for i := len(taped) - 1; i >= 0; i-- {
		s := d.slices[taped[i].level]
		z, r = append(z, d.z.at(taped[i].level)), append(r, s[j])
	}
	for _, b := range d.upper.ribs(d.z) {
		z, r = append(z, b.z), append(r, d.upper.toward(b, j))
	}
	return curve.Through(z, r)
}

// heights are those of the levels and landmarks, in millimetres above the waist.
type heights struct {
	level                           map[measure.Level]float64
	nape, neckFront, neck, shoulder float64
}

func (h heights) at(l measure.Level) float64 { return h.level[l] }
