// Package nest lays flat pieces close together by their true outlines: on a strip of fixed width and open
// length, such as cloth or paper from a roll, or on planks, sheets and offcuts.
//
// Two pieces overlap where the place of one, seen from the other, lies in their no-fit polygon. A first
// layout is laid piece by piece; then the strip is shortened, or a plank emptied, and the overlaps
// that this makes are pulled apart by guided local search, as long as that succeeds. Every layout is
// checked at the true outlines before it is handed out.
//
// The same job gives the same layout: work is counted in places tried, not in seconds, and chance has a
// fixed seed. It knows no paper, marks or words and reads no files. Holes are ignored: nothing is laid inside a piece.
package nest

import (
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/unit"
)

// Piece is one flat outline, how many are wanted and how each may lie.
type Piece struct {
	ID      string       // names it in errors
	Outline plane.Ring   // simple; mm
	Beside  []plane.Ring // what lies with it and is kept free as well, such as words that stand beside a small piece
	Count   int          // how many, at least 1
	Turns   []unit.Angle // allowed turns, counter-clockwise, as grain and nap permit; none means only as drawn
	Over    bool         // it may also be turned over: mirrored left to right, then turned
}

// Options say how pieces are laid. The zero Options lay them edge to edge with the usual effort.
type Options struct {
	Gap      float64            // room for the knife between two pieces, mm; none is kept to the edge of the stock
	Slack    float64            // outlines may be drawn simpler outward by so much, which is faster; mm, 0 to MostSlack
	Effort   int                // places to try in all, each counted again for every item looked at there; 0 for UsualEffort
	Seed     uint64             // another seed is another chance
	Progress func(done float64) // told now and then which part of the work is done, 0 to 1; may be nil
}

// MostSlack is the most that an outline may be simplified by, mm: the width of a pen line.
const MostSlack = 0.5

// UsualEffort takes a second or two on one core; a thousand million take most of a minute.
const UsualEffort = 10_000_000

// Placement is one piece where it lies: turned over if it is, then turned about the origin of its
// own outline, then moved.
type Placement struct {
	Piece int         `json:"piece"` // index of the piece
	Copy  int         `json:"copy"`  // which of its copies, from 0
	Bin   int         `json:"bin"`   // index into Layout.Bins
	Turn  unit.Angle  `json:"turn"`
	Over  bool        `json:"over"`
	Move  plane.Point `json:"move"`
}

// Of returns where a point of the piece comes to lie.
func (p Placement) Of(q plane.Point) plane.Point { return rigid(p.Turn, p.Over)(q).Add(p.Move) }

// Ring returns a ring of the piece as it lies, run the same way round as it was drawn.
func (p Placement) Ring(r plane.Ring) plane.Ring {
	r = r.Map(p.Of)
	if p.Over {
		return r.Reverse()
	}
	return r
}

// rigid turns about the origin, after turning over about the y axis. Quarter turns are exact.
func rigid(turn unit.Angle, over bool) func(plane.Point) plane.Point {
	s, c := math.Sincos(float64(turn))
	if q := float64(turn) / (math.Pi / 2); math.Abs(q-math.Round(q)) < 1e-12 {
		s, c = math.Round(s), math.Round(c)
	}
	side := 1.0
	if over {
		side = -1
	}
	return func(q plane.Point) plane.Point {
		x := side * q.X
		return plane.Point{X: c*x - s*q.Y, Y: s*x + c*q.Y}
	}
}

// inverse undoes rigid.
func inverse(turn unit.Angle, over bool) func(plane.Point) plane.Point {
	if over {
		return rigid(turn, true) // turned over and turned twice, all is as it was
	}
	return rigid(-turn, false)
}

// Layout is where everything lies.
type Layout struct {
	Placements []Placement `json:"placements"` // by bin, then by piece and copy
	Bins       []Bin       `json:"bins"`       // the stock that is used, in the order of use
	Left       []int       `json:"left"`       // how many of each piece found no room
	Stopped    bool        `json:"stopped"`    // the context ended before the effort was spent
}

// Bin is one strip, plank, sheet or offcut that is used.
type Bin struct {
	Stock       int     `json:"stock"`       // index of the stock; 0 for a strip
	Copy        int     `json:"copy"`        // which of its copies, from 0
	Length      float64 `json:"length"`      // how far pieces reach from the left edge, mm
	Area        float64 `json:"area"`        // of the bin; of a strip, of its length; mm²
	Waste       float64 `json:"waste"`       // of that, what is not pieces, mm²
	Utilisation float64 `json:"utilisation"` // part of the area that is pieces, 0 to 1
}
