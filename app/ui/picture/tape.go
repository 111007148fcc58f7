package picture

import (
	"sync"

	"understructure/geometry/plane"
	"understructure/geometry/view"
)

// tapes are the taut outlines of a mount at the heights asked for so far.
type tapes struct {
	sync.Mutex
	known map[float64]plane.Ring
}

func newTapes() *tapes { return &tapes{known: map[float64]plane.Ring{}} }

// mostTapes is how many outlines are kept: more than a figure has levels, and not without end while one is dragged.
const mostTapes = 64

// tape is a taut tape round the mount at a height; nil where there is no mount.
func (b *Body) tape(z float64) plane.Ring {
	if b == nil || b.tapes == nil {
		return nil
	}
	b.tapes.Lock()
	defer b.tapes.Unlock()
	if r, ok := b.tapes.known[z]; ok {
		return r
	}
	if len(b.tapes.known) >= mostTapes {
		clear(b.tapes.known)
	}
	var hull plane.Ring
	for _, s := range b.skins[Built]() {
		if z >= s.Bottom() && z <= s.Top() {
			at := s.At(z)
			hull = at.Ring().Hull()
		}
	}
	b.tapes.known[z] = hull
	return hull
}

// TapeLine returns how a taut tape round the mount at a height is seen: the part before the figure
// and the part behind it, each from left to right, in millimetres as Frame takes them: X to the right of the axis, Y above
// the floor. Without pitch both are the same straight line. Nil where there is no mount.
func (b *Body) TapeLine(c view.Camera, z float64) (before, behind []plane.Point) {
	return c.AppendRound(nil, nil, b.tape(z), z)
}

// TapeOn is TapeLine in the pixels of a frame.
func (b *Body) TapeOn(c view.Camera, f Frame, z float64) (before, behind []plane.Point) {
	before, behind = b.TapeLine(c, z)
	for _, part := range [2][]plane.Point{before, behind} {
		for i, q := range part {
			part[i] = f.at(q.X, q.Y)
		}
	}
	return before, behind
}
