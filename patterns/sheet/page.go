// Package sheet lays the pieces of a plan on paper, at true size. Small pieces share a page; a
// piece larger than the paper is cut into tiles that overlap. Pages are plain data, in
// millimetres, y up from the lower left corner; Draw draws one on any canvas.
// It does not write files, and it does not nest outlines: pieces lie side by side in their boxes.
package sheet

import (
	"math"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/piece"
)

// Page is one sheet of paper. Where Scale is not zero the page is drawn larger by it, across and up, for a printer
// that does not print true (see Print); all other lengths are those that come out of that printer.
type Page struct {
	Width, Height float64
	Scale         plane.Point
	Title         Title
	Items         []Item
	Tile          *Tile // nil on a page of whole pieces
}

// Title is what the title block says.
type Title struct {
	Object   string // number and title of the garment
	Piece    string // which piece, or which pieces
	Material string
	Page     string // "page 3 of 12"
}

// Item is a piece on a page. The piece is turned by a quarter counter-clockwise where Turned
// says so, then moved by Offset; what lies outside Clip is not drawn.
type Item struct {
	Piece  piece.Piece
	Label  Label
	Turned bool
	Offset plane.Point
	Clip   drawing.Box // on the page
}

// Tile is the part of a large piece that one page shows.
type Tile struct {
	Row, Column   int // from 0; rows from the top
	Rows, Columns int
	Core          drawing.Box // on the page: from seam to seam, without the overlaps
	Printed       [][]bool    // by row and column: whether that tile has anything on it
}

// The margins and strips of a page, in millimetres.
const (
	margin = 10.0 // desktop printers leave up to 6.4 mm blank, more at the foot (common practice, no published source)
	side   = 11.0 // left strip, for the upright rule
	foot   = 27.0 // lower strip, for the level rule and the title block
)

// Rule is the length of the two rules on every page, in millimetres: long enough to show an
// error of scale of 0.5 % on an ordinary ruler, short enough for the least page.
const Rule = 100.0

// field is the part of a page that pieces may lie on.
func field(width, height float64) drawing.Box {
	return drawing.Box{
		Lo: plane.Point{X: margin + side, Y: margin + foot},
		Hi: plane.Point{X: width - margin, Y: height - margin},
	}
}

// OnPage returns where a point of the piece comes to lie on the page.
func (it Item) OnPage(p plane.Point) plane.Point { return turned(p, it.Turned).Add(it.Offset) }

func turned(p plane.Point, quarter bool) plane.Point {
	if quarter {
		return plane.Point{X: -p.Y, Y: p.X}
	}
	return p
}

// turnOf is the turn of a piece on its page, in radians.
func turnOf(quarter bool) float64 {
	if quarter {
		return math.Pi / 2
	}
	return 0
}
