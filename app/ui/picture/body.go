// Package picture draws a plan as a person would sketch it: the figure from the front and from
// the side, shaded, and one section seen from above. Pictures are plain images in pixels.
// It does not know widgets, nor text.
package picture

import (
	"math"
	"sort"

	"understructure/geometry/plane"
	"understructure/geometry/space"
	"understructure/patterns/plan"
)

// columns is how many points each outline is drawn with.
const columns = 128

// Body is a plan's surface made ready for drawing. The zero Body is empty.
type Body struct {
	surface    plan.Surface
	skin       []outline // of what is built, at those heights that have it
	clearances []float64 // at the heights of skin; NaN where there is no garment
	edges      [kinds][2][]span
	Low, High  space.Point // corners of the box round everything
}

type outline struct {
	height  float64
	points  [columns]plane.Point
	normals [columns]space.Point
}

// Kind is one of the outlines that a plan holds at a height.
type Kind int

// The outlines of a plan.
const (
	Built Kind = iota
	Garment
	Wanted
	Form
	Core
	kinds
)

func rings(s plan.Surface, k Kind) []plane.Ring {
	return [kinds][]plane.Ring{Built: s.Built, Garment: s.Garment, Wanted: s.Target, Form: s.Form, Core: s.Core}[k]
}

// NewBody makes a plan's surface ready.
func NewBody(s plan.Surface) *Body {
	b := &Body{surface: s}
	for i, z := range s.Heights {
		built := at(s.Built, i)
		if len(built) < 3 {
			continue
		}
		b.skin = append(b.skin, outline{height: z, points: around(built)})
		b.clearances = append(b.clearances, clearance(built, at(s.Garment, i)))
	}
	b.findNormals()
	b.findEdges()
	b.findBox()
	return b
}

// Empty reports whether there is nothing to draw.
func (b *Body) Empty() bool { return b == nil || len(b.skin) < 2 }

func at(r []plane.Ring, i int) plane.Ring {
	if i < len(r) {
		return r[i]
	}
	return nil
}

func clearance(built, garment plane.Ring) float64 {
	if len(garment) < 3 {
		return math.NaN()
	}
	return garment.Tape() - built.Tape()
}

// around takes points of the ring at equal parts of its length, from the corner that lies
// furthest to the figure's right, so that the points of neighbouring outlines lie above each other.
func around(r plane.Ring) (out [columns]plane.Point) {
	start := 0
	for i, p := range r {
		if p.X > r[start].X {
			start = i
		}
	}
	step, walked, next := r.Perimeter()/columns, 0.0, 0
	for i := 0; i < len(r) && next < columns; i++ {
		p, q := r[(start+i)%len(r)], r[(start+i+1)%len(r)]
		d := p.Dist(q)
		for next < columns && float64(next)*step <= walked+d {
			t := 0.0
			if d > 0 {
				t = (float64(next)*step - walked) / d
			}
			out[next] = p.Lerp(q, t)
			next++
		}
		walked += d
	}
	for ; next < columns; next++ {
		out[next] = r[start]
	}
	return out
}

func (b *Body) findNormals() {
	for i := range b.skin {
		below, above := &b.skin[max(i-1, 0)], &b.skin[min(i+1, len(b.skin)-1)]
		here := &b.skin[i]
		for j := range here.points {
			p, q := here.points[(j+columns-1)%columns], here.points[(j+1)%columns]
			round := space.Point{X: q.X - p.X, Y: q.Y - p.Y}
			u, v := below.points[j], above.points[j]
			up := space.Point{X: v.X - u.X, Y: v.Y - u.Y, Z: above.height - below.height}
			here.normals[j] = round.Cross(up).Unit()
		}
	}
}

func (b *Body) findBox() {
	b.Low = space.Point{X: math.Inf(1), Y: math.Inf(1), Z: math.Inf(1)}
	b.High = b.Low.Mul(-1)
	for i, z := range b.surface.Heights {
		for k := Kind(0); k < kinds; k++ {
			r := at(rings(b.surface, k), i)
			if len(r) < 3 {
				continue
			}
			lo, hi := r.Bounds()
			b.Low = space.Point{X: min(b.Low.X, lo.X), Y: min(b.Low.Y, lo.Y), Z: min(b.Low.Z, z)}
			b.High = space.Point{X: max(b.High.X, hi.X), Y: max(b.High.Y, hi.Y), Z: max(b.High.Z, z)}
		}
	}
	if b.High.X < b.Low.X {
		b.Low, b.High = space.Point{}, space.Point{}
	}
}

// Ring returns one kind of outline at the height nearest to z, nil where there is none.
func (b *Body) Ring(k Kind, z float64) plane.Ring {
	h := b.surface.Heights
	if len(h) == 0 {
		return nil
	}
	i := sort.SearchFloat64s(h, z)
	if i == len(h) || i > 0 && z-h[i-1] < h[i]-z {
		i--
	}
	return at(rings(b.surface, k), i)
}

// Box returns the corners of the box round every outline at the height nearest to z; false where there is none.
func (b *Body) Box(z float64) (lo, hi plane.Point, ok bool) {
	lo = plane.Point{X: math.Inf(1), Y: math.Inf(1)}
	hi = lo.Mul(-1)
	for k := Kind(0); k < kinds; k++ {
		if r := b.Ring(k, z); len(r) >= 3 {
			l, h := r.Bounds()
			lo = plane.Point{X: min(lo.X, l.X), Y: min(lo.Y, l.Y)}
			hi, ok = plane.Point{X: max(hi.X, h.X), Y: max(hi.Y, h.Y)}, true
		}
	}
	return lo, hi, ok
}
