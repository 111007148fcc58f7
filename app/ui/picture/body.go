// Package picture draws a plan as a person would sketch it: the mount from any side, shaded, with
// the garment's outline over it; the skin unrolled; and one section seen from above. Pictures are plain
// images in pixels.
// It does not know widgets, nor text.
package picture

import (
	"math"
	"sort"
	"sync"

	"understructure/geometry/fit"
	"understructure/geometry/plane"
	"understructure/geometry/space"
	"understructure/patterns/plan"
)

// Body is a mount made ready for drawing: finished, or at a stage of its building. It is not changed
// once made, and may be drawn by several painters at once. The zero Body is empty.
type Body struct {
	surface plan.Surface
	mesh    mesh
	skins   [kinds]func() []skin // these are made when first asked for
	rounds  func() []fit.Round
	felt    func() [][columns]float32
	codes   [modes]func() []float32
	layers  []float32 // of a body at a stage: what each point of the mesh is made of
	tapes   *tapes

	Low, High space.Point // corners of the box round everything
	radius    float64     // of the upright cylinder round everything, mm
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

// NewBody makes a plan's surface ready: the finished mount.
func NewBody(s plan.Surface) *Body {
	b := newBody(s)
	for _, s := range b.skins[Built]() {
		b.mesh.add(s)
	}
	return b
}

func newBody(s plan.Surface) *Body {
	b := &Body{surface: s, tapes: newTapes()}
	for k := range b.skins {
		b.skins[k] = sync.OnceValue(func() []skin { return stacked(s.Heights, rings(s, Kind(k))) })
	}
	b.rounds = sync.OnceValue(func() []fit.Round { return fit.Compare(s.Heights, s.Built, s.Garment) })
	b.felt = sync.OnceValue(func() [][columns]float32 { return feltCodes(b.rounds()) })
	for m := range b.codes {
		b.codes[m] = sync.OnceValue(func() []float32 { return b.coded(Mode(m)) })
	}
	b.findBox()
	return b
}

// Empty reports whether there is nothing to draw.
func (b *Body) Empty() bool { return b == nil || len(b.mesh.nets) == 0 }

// Clearance is that of the mount at every height at which there is a garment, from the bottom up.
func (b *Body) Clearance() []fit.Round {
	if b == nil || b.rounds == nil {
		return nil
	}
	return b.rounds()
}

func at(r []plane.Ring, i int) plane.Ring {
	if i < len(r) {
		return r[i]
	}
	return nil
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
			for _, q := range r {
				b.radius = max(b.radius, q.Norm())
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

// nearest is the index of the height nearest to z; false where there are none.
func (b *Body) nearest(z float64) (int, bool) {
	h := b.surface.Heights
	if len(h) == 0 {
		return 0, false
	}
	i := sort.SearchFloat64s(h, z)
	if i == len(h) || i > 0 && z-h[i-1] < h[i]-z {
		i--
	}
	return i, true
}

// Ring returns one kind of outline at the height nearest to z, nil where there is none.
func (b *Body) Ring(k Kind, z float64) plane.Ring {
	i, ok := b.nearest(z)
	if !ok {
		return nil
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
