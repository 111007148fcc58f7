// Package sheet lays the pieces of a plan on paper, at true size. Pieces lie close by their true outlines; a
// piece larger than the paper is cut into tiles that overlap; a piece that is another turned over shares its
// template. Pages are plain data, in millimetres, y up from the lower left corner; Draw draws one on any canvas.
// It does not write files.
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
	Panels        []Panel // how large pieces go together, on the first pages
}

// Title is what the title block says.
type Title struct {
	Object   string // number and title of the garment
	Piece    string // which piece, or which pieces
	Material string
	Page     string // "page 3 of 12"
}

// Item is a piece on a page, or one tile of it. The piece is turned by a quarter counter-clockwise where Turned
// says so, then moved by Offset; what lies outside Clip is not drawn.
type Item struct {
	Piece  piece.Piece
	Twin   string // the piece that the same template serves when it is turned over; "" for none
	Label  Label
	Turned bool
	Offset plane.Point
	Clip   drawing.Box // on the page
	Tile   *Tile       // nil for a whole piece
}

// Tile is the part of a large piece that an item shows.
type Tile struct {
	Row, Column int         // from 0; rows from the top
	Core        drawing.Box // on the page: from seam to seam, without the overlaps
	Seams       []Seam
	Grid        *Grid // of the whole piece, the same for all its tiles
}

// Grid is how a piece is divided.
type Grid struct {
	Rows, Columns int
	Pages         [][]int // by row and column: the number of the page that the tile lies on, from 1; 0 where there is nothing to print

	across, up []float64 // where the cuts are, as the piece lies
}

// Count is the number of tiles that are printed.
func (g *Grid) Count() int {
	n := 0
	for _, row := range g.Pages {
		for _, p := range row {
			if p > 0 {
				n++
			}
		}
	}
	return n
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

// Name is the piece's, and of a tile its letter and number.
func (it Item) Name() string {
	if it.Tile == nil {
		return it.Piece.ID
	}
	return it.Piece.ID + " " + TileName(it.Tile.Row, it.Tile.Column)
}

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
