package control

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// Piece is what a card says of a template: its name in bold, and what else is to be known, line by line.
type Piece struct {
	Name  string
	Lines [3]string
}

// PieceGrid shows pieces as cards in as many columns as there is room for. Only those on the screen are
// asked for.
type PieceGrid struct {
	widget.BaseWidget
	OnPicked func(i int)
	Picture  func(i int) image.Image // of a piece; nil while there is none

	pieces []Piece
	grid   *widget.GridWrap
}

// NewPieceGrid returns an empty one.
func NewPieceGrid() *PieceGrid {
	g := &PieceGrid{OnPicked: func(int) {}, Picture: func(int) image.Image { return nil }}
	g.grid = widget.NewGridWrap(func() int { return len(g.pieces) },
		func() fyne.CanvasObject { return newPieceCard() },
		func(i int, o fyne.CanvasObject) { o.(*pieceCard).show(g.pieces[i], g.Picture(i)) })
	g.grid.OnSelected = func(i int) {
		g.grid.Unselect(i)
		g.OnPicked(i)
	}
	g.ExtendBaseWidget(g)
	return g
}

// Draw shows other pieces, from the first on.
func (g *PieceGrid) Draw(pieces []Piece) {
	g.pieces = pieces
	g.grid.Refresh()
	g.grid.ScrollToOffset(0)
}

// Pieces are those shown.
func (g *PieceGrid) Pieces() []Piece { return g.pieces }

// Pick is as if a person picked a piece.
func (g *PieceGrid) Pick(i int) { g.grid.Select(i) }

// Ready shows a piece whose picture has come.
func (g *PieceGrid) Ready(i int) { g.grid.RefreshItem(i) }

// CreateRenderer is for the toolkit.
func (g *PieceGrid) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(g.grid) }
