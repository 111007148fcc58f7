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
func (l loft) tape(j int, lo, hi float64) float64 {
	c := l.column(j)
	n := 1 + int(math.Abs(hi-lo)/profileGap)
	p := make([]plane.Point, n+1)
	for i := range p {
		z := lo + (hi-lo)*float64(i)/float64(n)
		p[i] = plane.Point{X: z, Y: c.At(z)}
	}
	return curve.TautLength(p)
}

// overBust is the length of a tape pulled tight from the side neck point at height top down
// to the bust point, in the upright plane through both that runs from front to back.
func (l loft) overBust(neck, bust plane.Point, top, bottom float64) float64 {
	quarter := make([]curve.Monotone, section.Front+1)
	for j := range quarter {
		quarter[j] = l.column(j)
	}
	n := 1 + int((top-bottom)/profileGap)
	slope := math.Hypot(1, (neck.X-bust.X)/(top-bottom))
	p := make([]plane.Point, n+1)
	for i := range p {
		t := float64(i) / float64(n)
		z := bottom + (top-bottom)*t
		p[i] = plane.Point{X: (z - bottom) * slope, Y: frontAt(quarter, bust.X+(neck.X-bust.X)*t, z)}
	}
	p[n].Y = neck.Y
	return curve.TautLength(p)
}

// frontAt is the y of the front of the slice at height z, at distance x to the right.
func frontAt(quarter []curve.Monotone, x, z float64) float64 {
	prev := plane.Point{Y: quarter[section.Front].At(z)}
	for j := section.Front - 1; j >= 0; j-- {
		p := section.Direction(j).Mul(quarter[j].At(z))
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
	z, s := d.upper.slices(d.z)
	l.z = append(l.z, z...)
	l.slices = append(l.slices, s...)
	return l
}

// heights are those of the levels and landmarks, in millimetres above the waist.
type heights struct {
	level                           map[measure.Level]float64
	nape, neckFront, neck, shoulder float64
}

func (h heights) at(l measure.Level) float64 { return h.level[l] }
