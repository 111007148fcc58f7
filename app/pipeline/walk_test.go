package pipeline_test

import (
	"math"

	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/torso"
)

// A walk lays a tape along outlines at rising heights, by the meaning of the words alone:
// a plane cuts every outline, and the tape is the convex side of the points it cuts. It
// shares no code with the figure's own lengths.

// outlines are closed outlines at rising heights.
type outlines struct {
	heights []float64
	rings   []plane.Ring
}

func skinOf(t torso.Torso) outlines {
	var o outlines
	for i, z := range t.Skin.Z {
		o.heights, o.rings = append(o.heights, z), append(o.rings, t.Skin.R[i].Ring())
	}
	return o
}

// cut is the farthest crossing of an outline with the line through at along u (a unit vector), forwards.
func cut(r plane.Ring, at, u plane.Point) float64 {
	far := math.Inf(-1)
	for i, a := range r {
		b := r[(i+1)%len(r)]
		sa, sb := u.Cross(a.Sub(at)), u.Cross(b.Sub(at))
		if (sa > 0) == (sb > 0) {
			continue
		}
		far = math.Max(far, a.Lerp(b, sa/(sa-sb)).Sub(at).Dot(u))
	}
	return far
}

// at is the outline at a height, straight between the two given.
func (o outlines) cutAt(z float64, at, u plane.Point) float64 {
	last := len(o.heights) - 1
	if z <= o.heights[0] {
		return cut(o.rings[0], at, u)
	}
	for i := 1; i <= last; i++ {
		if z <= o.heights[i] {
			lo, hi := cut(o.rings[i-1], at, u), cut(o.rings[i], at, u)
			return lo + (hi-lo)*(z-o.heights[i-1])/(o.heights[i]-o.heights[i-1])
		}
	}
	return cut(o.rings[last], at, u)
}

// tape is the length of a tape from height lo to hi, pulled tight in the upright plane
// through the axis on the side that u points to.
func (o outlines) tape(lo, hi float64, u plane.Point) float64 {
	return tight(o.profile(lo, hi, u, func(z float64) (plane.Point, float64) { return plane.Point{}, z }))
}

// profile is what a plane cuts from height lo to hi; place says where its line lies at a
// height and how far along the tape that is.
func (o outlines) profile(lo, hi float64, u plane.Point, place func(z float64) (at plane.Point, along float64)) []plane.Point {
	zs := []float64{lo}
	for _, z := range o.heights {
		if z > lo+1e-9 && z < hi-1e-9 {
			zs = append(zs, z)
		}
	}
	var p []plane.Point
	for _, z := range append(zs, hi) {
		at, along := place(z)
		p = append(p, plane.Point{X: along, Y: o.cutAt(z, at, u)})
	}
	return p
}

// tight is the length of the upper convex side of points in order, by giving up every
// point that lies under the line between any two others.
func tight(p []plane.Point) float64 {
	l := 0.0
	for i := 0; i < len(p)-1; {
		next, steepest := i+1, math.Inf(-1)
		for k := i + 1; k < len(p); k++ {
			if slope := (p[k].Y - p[i].Y) / (p[k].X - p[i].X); slope >= steepest {
				next, steepest = k, slope
			}
		}
		l += p[i].Dist(p[next])
		i = next
	}
	return l
}

// walked are the lengths along a figure's skin.
func walked(t torso.Torso) measure.Sheet { return skinOf(t).lengths(t) }

// lengths walks outlines between the landmarks of a figure, the waist at height 0.
func (o outlines) lengths(t torso.Torso) measure.Sheet {
	front, back, right := plane.Point{Y: 1}, plane.Point{Y: -1}, plane.Point{X: 1}
	s := measure.Sheet{
		measure.BackWaist:      o.tape(0, t.Nape.Z, back),
		measure.FrontWaist:     o.tape(0, t.NeckFront.Z, front),
		measure.SideLength:     o.tape(0, t.At(measure.Underarm).Height, right),
		measure.WaistToHighHip: o.tape(t.At(measure.HighHip).Height, 0, right),
		measure.WaistToHip:     o.tape(t.At(measure.Hip).Height, 0, right),
	}
	// Over the bust the tape lies in an upright plane from neck point to bust point.
	neck, bust := t.Neck, t.BustPoint
	lean := (neck.X - bust.X) / (neck.Z - bust.Z)
	p := o.profile(bust.Z, neck.Z, front, func(z float64) (plane.Point, float64) {
		return plane.Point{X: bust.X + (z-bust.Z)*lean}, (z - bust.Z) * math.Hypot(1, lean)
	})
	p[len(p)-1].Y = neck.Y // the outline only touches the plane there
	s[measure.NeckToBustPoint] = tight(p)
	return s
}
