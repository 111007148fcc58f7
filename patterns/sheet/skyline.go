package sheet

import (
	"math"

	"understructure/geometry/plane"
)

// skyline packs boxes into a bin from the bottom up: each goes where its top comes lowest,
// then farthest to the left (E. Burke, G. Kendall, G. Whitwell, "A new placement heuristic for
// the orthogonal stock-cutting problem", 2004, describes the skyline).
type skyline struct {
	width, top float64
	steps      []step // from left to right; the first begins at 0
}

type step struct{ x, y float64 }

func newSkyline(width, height float64) *skyline {
	return &skyline{width: width, top: height, steps: []step{{0, 0}}}
}

// slack absorbs the rounding of sums of lengths, far below what paper can show.
const slack = 1e-6

// place puts a box of w × h and returns its lower left corner, or false where there is no room.
func (s *skyline) place(w, h float64) (plane.Point, bool) {
	best := plane.Point{Y: math.Inf(1)}
	for i, st := range s.steps {
		if st.x+w > s.width+slack {
			break
		}
		if y := s.rest(i, w); y < best.Y-slack && y+h <= s.top+slack {
			best = plane.Point{X: st.x, Y: y}
		}
	}
	if math.IsInf(best.Y, 1) {
		return best, false
	}
	s.raise(best.X, best.X+w, best.Y+h)
	return best, true
}

// rest is the height at which a box of width w comes to rest from step i on.
func (s *skyline) rest(i int, w float64) float64 {
	y, end := 0.0, s.steps[i].x+w
	for ; i < len(s.steps) && s.steps[i].x < end-slack; i++ {
		y = math.Max(y, s.steps[i].y)
	}
	return y
}

// raise lifts the skyline between two places to y.
func (s *skyline) raise(from, to, y float64) {
	var next []step
	behind := 0.0 // the height that goes on after the box
	for _, st := range s.steps {
		if st.x < from-slack {
			next = append(next, st)
		}
		if st.x <= to+slack {
			behind = st.y
		}
	}
	next = append(next, step{from, y})
	if to < s.width-slack {
		next = append(next, step{to, behind})
	}
	for _, st := range s.steps {
		if st.x > to+slack {
			next = append(next, st)
		}
	}
	s.steps = next
}

// height is how far up the bin is used.
func (s *skyline) height() float64 {
	y := 0.0
	for _, st := range s.steps {
		y = math.Max(y, st.y)
	}
	return y
}
