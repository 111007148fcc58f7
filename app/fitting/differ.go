package fitting

import (
	"math"
	"strings"

	"understructure/geometry/plane"
	"understructure/patterns/piece"
)

// same is how far two edges may lie apart and still be one, mm: what a knife keeps to, from memory.
//
// Too small strains nothing, so a piece may be smaller than its template by more than that: by gives where it
// is soft, for it is drawn that far when it is laid (from memory), and in its height, which the tape
// knows no better; by giveRound all round a slice, which is what whole sheets may leave (derived).
const (
	same      = 0.5
	gives     = 2.0
	giveRound = wholeSheets / (2 * math.Pi)
)

// sampled is how finely an edge is looked at, mm.
const sampled = 4.0

func isSlice(p piece.Piece) bool { return strings.HasPrefix(p.Material, "plank") }

// spot is one place on the edge of a piece.
type spot struct {
	at      plane.Point
	outward plane.Point // unit normal
	height  float64     // on the mount; not a number where that is not known
	off     float64     // how far it lies from the edge of the other piece, mm
}

// spots walks round a piece.
func spots(p piece.Piece) []spot {
	var out []spot
	n := len(p.Outline)
	for i, a := range p.Outline {
		b := p.Outline[(i+1)%n]
		long := a.Dist(b)
		if long == 0 {
			continue
		}
		steps := math.Ceil(long / sampled)
		normal := outward(a, b)
		for k := 0.0; k < steps; k++ {
			s := spot{at: a.Lerp(b, k/steps), outward: normal, height: math.NaN()}
			if known(p) {
				s.height = p.Position[i].Lerp(p.Position[(i+1)%n], k/steps).Z
			}
			out = append(out, s)
		}
	}
	return out
}

// spotsOf are the spots of a that lie off the edge of b when a is moved by t: inside it or outside.
func spotsOf(a piece.Piece, t rigid, b plane.Ring) (inside, outside []spot) {
	for _, s := range spots(a) {
		at := t.of(s.at)
		if _, _, s.off = nearest(at, b); s.off <= same {
			continue
		}
		if b.Contains(at) {
			inside = append(inside, s)
		} else {
			outside = append(outside, s)
		}
	}
	return inside, outside
}

// back is the opposite motion.
func (t rigid) back() rigid {
	out := rigid{cos: t.cos, sin: -t.sin}
	out.move = out.turned(t.move).Mul(-1)
	return out
}

func most(spots []spot) float64 {
	far := 0.0
	for _, s := range spots {
		far = math.Max(far, s.off)
	}
	return far
}
