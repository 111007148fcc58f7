package sheet

import (
	"fmt"
	"math"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/nest"
)

// Panel is a part of a page that shows how large pieces go together.
type Panel struct {
	Box  drawing.Box // on the page
	Maps []Map
}

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

const (
	instructionSize  = 3.2
	instructionLine  = instructionSize * leading
	instructionsHigh = 22.0 // all of them and a line's room below
)

// assembly makes the panels of maps for the pieces that are tiled, in their order: as many on a panel as the field holds.
func assembly(parts []part, f drawing.Box) []part {
	var maps []Map
	for _, p := range parts {
		if t := p.item.Tile; t != nil && (len(maps) == 0 || maps[len(maps)-1].Grid != t.Grid) {
			maps = append(maps, Map{p.item.served(), t.Grid, laidDown(p.item.Piece, p.item.Turned)})
		}
	}
	columns := max(1, int(f.Width()/mapWidth))
	rows := max(1, int((f.Height()-instructionsHigh)/mapHeight))
	var panels []part
	for len(maps) > 0 {
		n := min(len(maps), columns*rows)
		panels = append(panels, panelPart(maps[:n], f, columns))
		maps = maps[n:]
	}
	return panels
}

// panelPart is a panel about as wide as it is high, as large as the instructions and its maps need.
func panelPart(maps []Map, f drawing.Box, most int) part {
	n := float64(len(maps))
	columns := math.Ceil(math.Sqrt(n * mapHeight / mapWidth))
	columns = math.Max(math.Min(3, float64(most)), math.Min(columns, float64(most)))
	high := instructionsHigh + math.Ceil(n/columns)*mapHeight
	if high > f.Height() {
		columns = float64(most)
		high = math.Min(f.Height(), instructionsHigh+math.Ceil(n/columns)*mapHeight)
	}
	box := drawing.Box{Hi: plane.Point{X: math.Min(columns*mapWidth, f.Width()), Y: high}}
	return part{panel: &Panel{box, maps}, keeps: nest.Piece{ID: "maps", Count: 1, Outline: box.Corners()}}
}

// raised is a page with nothing but a panel at its foot, which is read from the top.
func (pg Page) raised() Page {
	if len(pg.Items) == 0 && len(pg.Panels) == 1 {
		b := pg.Panels[0].Box
		up := plane.Point{Y: field(pg.Width, pg.Height).Hi.Y - b.Hi.Y}
		pg.Panels = []Panel{{b.Move(up), pg.Panels[0].Maps}}
	}
	return pg
}

// served names all pieces that a template serves.
func (it Item) served() string {
	if it.Twin == "" {
		return it.Piece.ID
	}
	return it.Piece.ID + " = " + it.Twin
}

// draw draws the instructions and the maps below them.
func (p Panel) draw(c drawing.Canvas) {
	for i, line := range instructions {
		w := drawing.Word{Text: line, Size: instructionSize, Bold: i == 0}
		w.At = plane.Point{X: p.Box.Lo.X, Y: p.Box.Hi.Y - float64(i+1)*instructionLine}
		c.Word(w.Fit(p.Box.Width()))
	}
	columns := max(1, int(p.Box.Width()/mapWidth+1e-9))
	rows := (len(p.Maps) + columns - 1) / columns
	w, h := p.Box.Width()/float64(columns), (p.Box.Height()-instructionsHigh)/float64(rows)
	for i, m := range p.Maps {
		lo := plane.Point{X: p.Box.Lo.X + w*float64(i%columns), Y: p.Box.Hi.Y - instructionsHigh - h*float64(i/columns+1)}
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
