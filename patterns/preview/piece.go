package preview

import (
	"image"
	"math"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/piece"
	"understructure/patterns/sheet"
)

// Ink is what the picture of a piece by itself is drawn in.
type Ink struct{ Cloth, Line, Faint drawing.Colour }

// of takes black for the line and every grey for what stands back.
func (i Ink) of(k drawing.Colour) drawing.Colour {
	if k == drawing.Black {
		return i.Line
	}
	return i.Faint
}

// Card is a small picture of a piece with its marks, without words: as large as fits, but with no more than so
// many pixels to a millimetre, so that small pieces look small beside others. Its ground is transparent.
func Card(pc piece.Piece, width, height int, most float64, ink Ink) image.Image {
	b := drawing.Empty().Round(pc.CutLine()...)
	c := around(b, width, height, 3, most)
	c.thinnest = 0.6
	c.piece(sheet.Item{Piece: pc, Clip: b.Grow(1)}, ink)
	return c.gg.Image()
}

// enlarged is how many times a letter of the lines around it a letter on a portrait becomes at the most.
const enlarged = 1.6

// Portrait is a picture of a piece with its marks and words, as large as fits and its letters bear, beside lines
// that say how far it reaches across and up. A letter of those is so many pixels high. Its ground is transparent.
func Portrait(pc piece.Piece, width, height int, letter float64, across, up string, ink Ink) (image.Image, error) {
	it, _, _, err := sheet.Alone(pc)
	if err != nil {
		return nil, err
	}
	cloth := drawing.Empty().Round(placed(it, pc.CutLine())...)
	c := around(it.Clip, width, height, 3*letter, enlarged*letter/labelSize)
	c.piece(it, ink)
	c.dimension(cloth, it.Clip, letter, across, up)
	return c.gg.Image(), nil
}

// labelSize is that of ordinary letters on pieces, in millimetres.
const labelSize = 3.2

// around is a clear picture that a box fills, but for an edge of so many pixels, at no more than so many pixels a millimetre.
func around(b drawing.Box, width, height int, edge, most float64) *canvas {
	width, height = max(width, 1), max(height, 1)
	room := func(pixels int) float64 { return math.Max(float64(pixels)-2*edge, 1) }
	scale := math.Min(most, math.Min(room(width)/math.Max(b.Width(), 1e-3), room(height)/math.Max(b.Height(), 1e-3)))
	c := newCanvas(width, height, scale)
	c.look(b.Centre().Sub(plane.Point{X: float64(width), Y: float64(height)}.Mul(0.5 / scale)))
	c.gg.SetRGBA(0, 0, 0, 0)
	c.gg.Clear()
	return c
}

// piece draws an item on its cloth.
func (c *canvas) piece(it sheet.Item, ink Ink) {
	c.gg.SetFillRuleEvenOdd()
	c.gg.ClearPath()
	for _, r := range append([]plane.Ring{it.Piece.CutLine()}, it.Piece.Holes...) {
		c.gg.NewSubPath()
		for _, p := range placed(it, r) {
			c.gg.LineTo(c.pixel(p))
		}
		c.gg.ClosePath()
	}
	c.ink(ink.Cloth)
	c.gg.Fill()
	c.gg.SetFillRuleWinding()
	c.colour = ink.of
	it.Draw(c)
}

// dimension draws a line below the box, as long as the cloth is broad, and one to its left as it is high.
func (c *canvas) dimension(cloth, box drawing.Box, letter float64, across, up string) {
	size, arm := letter/c.scale, 0.4*letter/c.scale
	low, left := box.Lo.Y-1.2*size, box.Lo.X-1.2*size
	c.measure(plane.Point{X: cloth.Lo.X, Y: low}, plane.Point{X: cloth.Hi.X, Y: low}, arm, drawing.Word{Text: across, Size: size})
	c.measure(plane.Point{X: left, Y: cloth.Lo.Y}, plane.Point{X: left, Y: cloth.Hi.Y}, arm, drawing.Word{Text: up, Size: size, Turn: math.Pi / 2})
}

// measure draws a line with ends and, on its clear middle, how long it is.
func (c *canvas) measure(from, to plane.Point, arm float64, w drawing.Word) {
	along := w.Along()
	out := plane.Point{X: -along.Y, Y: along.X}
	pen := drawing.Pen{Colour: drawing.Grey}
	middle := from.Lerp(to, 0.5)
	half := along.Mul(w.Width()/2 + w.Size/2)
	if gap := w.Width() + w.Size; gap < from.Dist(to) {
		c.Line([]plane.Point{from, middle.Sub(half)}, false, pen)
		c.Line([]plane.Point{middle.Add(half), to}, false, pen)
	}
	for _, p := range []plane.Point{from, to} {
		c.Line([]plane.Point{p.Sub(out.Mul(arm)), p.Add(out.Mul(arm))}, false, pen)
	}
	w.At = middle.Sub(out.Mul(fonts.CapHeight * w.Size / 2))
	c.Word(w.Back(0.5))
}
