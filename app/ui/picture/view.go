package picture

import "understructure/geometry/plane"

// View is where one looks from.
type View int

// The two elevations. The side is the figure's left, which lies to the right of the front view,
// as a draughtsman lays them out.
const (
	Front View = iota
	Side
)

// across is how far to the viewer's right a point lies, toward how near to the viewer.
func (v View) across(p plane.Point) float64 {
	if v == Side {
		return -p.Y
	}
	return -p.X
}

func (v View) toward(p plane.Point) float64 {
	if v == Side {
		return -p.X
	}
	return p.Y
}

// Width returns the extent of the body in this view, left and right of the axis, in millimetres.
func (b *Body) Width(v View) (left, right float64) {
	if v == Side {
		return -b.High.Y, -b.Low.Y
	}
	return -b.High.X, -b.Low.X
}

// span is the extent of one outline in one view.
type span struct{ height, left, right float64 }

func (b *Body) findEdges() {
	for k := Kind(0); k < kinds; k++ {
		for i, z := range b.surface.Heights {
			r := at(rings(b.surface, k), i)
			if len(r) < 3 {
				continue
			}
			lo, hi := r.Bounds()
			b.edges[k][Front] = append(b.edges[k][Front], span{z, -hi.X, -lo.X})
			b.edges[k][Side] = append(b.edges[k][Side], span{z, -hi.Y, -lo.Y})
		}
	}
}

// Extent returns how far the mount reaches to the left and right of the axis in a view at a height, in
// millimetres; false where there is nothing.
func (b *Body) Extent(v View, z float64) (left, right float64, ok bool) {
	e := b.edges[Built][v]
	for i := 1; i < len(e); i++ {
		if lo, hi := e[i-1], e[i]; z >= lo.height && z <= hi.height {
			t := (z - lo.height) / (hi.height - lo.height)
			return lo.left + t*(hi.left-lo.left), lo.right + t*(hi.right-lo.right), true
		}
	}
	return 0, 0, false
}

// Frame says where millimetres fall on an image.
type Frame struct {
	Scale float64 // pixels a millimetre
	X     float64 // pixel of the axis
	Y     float64 // pixel of height 0 (of the body's y axis in a section)
}

func (f Frame) at(across, up float64) plane.Point {
	return plane.Point{X: f.X + across*f.Scale, Y: f.Y - up*f.Scale}
}
