// Package piece holds one flat template: what is cut, from what, and the marks on it.
// It does not know how a piece came about, nor the paper it is printed on.
package piece

import (
	"slices"

	"understructure/geometry/plane"
	"understructure/geometry/space"
)

// Piece is one flat template at true size, in millimetres, y up the figure.
type Piece struct {
	ID        string       `json:"id"`        // short, unique in a plan, safe as a file name: "W03-back-left"
	Name      string       `json:"name"`      // in words: "layer 3 of 7, back, left"
	Material  string       `json:"material"`  // "wadding 6 mm", "plank 50 mm", "jersey cover"
	Count     int          `json:"count"`     // how many to cut
	Layer     int          `json:"layer"`     // order of laying, from 1 inside; slices count from the bottom
	Thickness float64      `json:"thickness"` // of the material
	Outline   plane.Ring   `json:"outline"`   // the finished edge, counter-clockwise, dart openings included: the cut line, or with an Allowance the seam line
	Holes     []plane.Ring `json:"holes"`     // clockwise
	Marks     []Mark       `json:"marks"`
	Strain    float64      `json:"strain"` // greatest stretch or squeeze of any edge when laid flat, as a fraction
	Seams     []Seam       `json:"seams"`

	// Position is where each corner of the outline lies on the mount; nil where a piece has no one
	// place. A sheet lies half its thickness above what is beneath it, a slice on its bottom face.
	Position []space.Point `json:"position,omitempty"`
}

// Area is the area of cloth or foam inside the cut line, holes taken off, in square millimetres.
func (p Piece) Area() float64 {
	a := p.Outline.Area()
	for _, h := range p.Holes {
		a += h.Area()
	}
	return a
}

// Kind says what a mark is for.
type Kind string

// Closed reports whether the last point of such a mark joins the first.
func (k Kind) Closed() bool { return k == InnerOutline || k == Allowance }

// CutLine is the line to cut along: the allowance where there is one, else the outline.
func (p Piece) CutLine() plane.Ring {
	for _, m := range p.Marks {
		if m.Kind == Allowance {
			return m.Points
		}
	}
	return p.Outline
}

// Sewn reports whether the outline is a seam line, with an allowance to cut outside it.
func (p Piece) Sewn() bool {
	return slices.ContainsFunc(p.Marks, func(m Mark) bool { return m.Kind == Allowance })
}

// The kinds of marks.
const (
	LevelLine    Kind = "level"        // where a level crosses the piece; Label names it
	CentreFront  Kind = "centre-front" // balance line
	CentreBack   Kind = "centre-back"
	Side         Kind = "side"
	Up           Kind = "up"        // an arrow: two points, tail and head
	Feather      Kind = "feather"   // an edge to be thinned so that it does not print through
	Step         Kind = "step"      // an edge cut square, that abuts on a step of the foam
	Pin          Kind = "pin"       // centre of an alignment pin: one point
	InnerOutline Kind = "inner"     // the smaller outline of a carved or bevelled slice, closed
	Dart         Kind = "dart"      // the two legs of a dart, apex in the middle: three points
	Allowance    Kind = "allowance" // the cut line outside the outline, which is then the seam line; closed
	Notch        Kind = "notch"     // where two sewn edges meet: from the seam line outward, two points
)

// Mark is a point, a line or an arrow on a piece, with words where it needs them.
type Mark struct {
	Kind   Kind          `json:"kind"`
	Label  string        `json:"label,omitempty"`
	Points []plane.Point `json:"points"`
}

// Seam is a stretch of the outline that is joined to another.
type Seam struct {
	To     string        `json:"to"`     // ID of the neighbour, or of the piece itself for a dart
	Kind   string        `json:"kind"`   // "butt", "dart", "sewn"
	Length float64       `json:"length"` // along this piece's edge
	Points []plane.Point `json:"points"` // the stretch itself, in order round the outline
}
