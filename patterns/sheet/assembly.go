package sheet

import (
	"fmt"
	"math"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/plan"
)

// Map shows how the tiles of one piece go together, and on which page each of them is.
type Map struct {
	Name string
	Grid *Grid
	as   lying
}

// The room for one map, and in it for the piece's name, in millimetres.
const mapWidth, mapHeight, mapName = 58.0, 66.0, 7.0

// How tiles are put together stands above the maps.
var instructions = []string{
	"How large pieces go together",
	"Check the 100 mm rules on a page of each batch before anything else.",
	"Trim one of two neighbours along the dotted line, lay it over the other so that the crosses meet, and tape it.",
	"Numbers are pages. Cut the heavy line when the whole piece lies together.",
}

const instructionSize = 3.2

// assembly makes the pages of maps for the tiled pieces on other pages, in their order.
func assembly(p plan.Plan, pages []Page) []Page {
	var maps []Map
	seen := map[*Grid]bool{}
	for _, pg := range pages {
		for _, it := range pg.Items {
			if it.Tile != nil && !seen[it.Tile.Grid] {
				seen[it.Tile.Grid] = true
				name := it.Piece.ID
				if it.Twin != "" {
					name += " = " + it.Twin
				}
				maps = append(maps, Map{name, it.Tile.Grid, laidDown(it.Piece, it.Turned)})
			}
		}
	}
	paper := p.Paper
	if paper.Roll {
		paper.Height = math.Min(paper.Height, math.Max(LeastHeight, paper.Width))
	}
	var out []Page
	for len(maps) > 0 {
		n := min(len(maps), mapsOn(paper.Width, paper.Height))
		out = append(out, Page{Width: paper.Width, Height: paper.Height, Maps: maps[:n], Title: Title{Piece: "how large pieces go together"}})
		maps = maps[n:]
	}
	return out
}

// mapRoom is the part of a page that maps stand on.
func mapRoom(width, height float64) drawing.Box {
	f := field(width, height)
	f.Hi.Y -= float64(len(instructions)+1) * instructionSize * leading
	return f
}

func mapsOn(width, height float64) int {
	columns, rows := mapGrid(width, height)
	return columns * rows
}

func mapGrid(width, height float64) (columns, rows int) {
	room := mapRoom(width, height)
	return max(1, int(room.Width()/mapWidth)), max(1, int(room.Height()/mapHeight))
}

// maps draws the instructions and the maps of a page.
func (pg Page) maps(c drawing.Canvas) {
	f, room := field(pg.Width, pg.Height), mapRoom(pg.Width, pg.Height)
	for i, line := range instructions {
		w := drawing.Word{Text: line, Size: instructionSize, Bold: i == 0}
		w.At = plane.Point{X: f.Lo.X, Y: f.Hi.Y - float64(i+1)*instructionSize*leading}
		c.Word(w.Fit(f.Width()))
	}
	columns, rows := mapGrid(pg.Width, pg.Height)
	w, h := room.Width()/float64(columns), room.Height()/float64(rows)
	for i, m := range pg.Maps {
		lo := plane.Point{X: room.Lo.X + w*float64(i%columns), Y: room.Hi.Y - h*float64(i/columns+1)}
		m.draw(c, drawing.Box{Lo: lo, Hi: lo.Add(plane.Point{X: w - 4, Y: h - 4})})
	}
}

// draw draws one map into a box, its name above it.
func (m Map) draw(c drawing.Canvas, box drawing.Box) {
	c.Word(drawing.Word{Text: m.Name, Size: 2.8, Bold: true, At: plane.Point{X: box.Lo.X, Y: box.Hi.Y - 3.2}}.Fit(box.Width()))
	box.Hi.Y -= mapName
	x, y := m.Grid.across, m.Grid.up
	lo := plane.Point{X: x[0], Y: y[0]}
	scale := math.Min(box.Width()/(x[len(x)-1]-x[0]), box.Height()/(y[len(y)-1]-y[0]))
	high := scale * (y[len(y)-1] - y[0])
	to := func(p plane.Point) plane.Point {
		return plane.Point{X: box.Lo.X, Y: box.Hi.Y - high}.Add(p.Sub(lo).Mul(scale))
	}
	c.Line(thinned(m.as.cloth.Map(to), 0.1), true, mapPen)
	for r := range m.Grid.Rows {
		for k := range m.Grid.Columns {
			if page := m.Grid.Pages[r][k]; page > 0 {
				up := m.Grid.Rows - 1 - r
				b := drawing.Box{Lo: to(plane.Point{X: x[k], Y: y[up]}), Hi: to(plane.Point{X: x[k+1], Y: y[up+1]})}
				c.Line(b.Corners(), true, thinPen)
				tileLabel(c, b, TileName(r, k), page)
			}
		}
	}
}

// tileLabel sets a tile's name and page in its cell of the map, as far as the cell has room for letters that can be read.
func tileLabel(c drawing.Canvas, b drawing.Box, name string, page int) {
	for _, text := range []string{fmt.Sprintf("%s  p. %d", name, page), fmt.Sprintf("%s %d", name, page), fmt.Sprint(page)} {
		word := drawing.Word{Text: text, Size: math.Min(2.4, 0.55*b.Height())}
		if word.Size < 1.4 || word.Width() > b.Width()*0.9 {
			continue
		}
		word.At = b.Centre().Sub(plane.Point{Y: fonts.CapHeight * word.Size / 2})
		c.Word(word.Back(0.5))
		return
	}
}
