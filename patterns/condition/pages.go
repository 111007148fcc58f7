package condition

import (
	"fmt"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/leaf"
)

// pages draws the two pages of a sheet.
type pages struct {
	Subject
	views
}

// first is the page with the outlines and the words for damage.
func (p pages) first(c drawing.Canvas) {
	y := p.head(c)
	y = p.grades(c, y)
	y = p.outlines(c, y-1)
	p.terms(c, y-1)
}

func (p pages) head(c drawing.Canvas) float64 {
	title := p.Title
	if p.Number+title == "" {
		title = "Condition of a garment"
	}
	y := leaf.Heading(c, "Condition sheet", p.Number, title) - 6
	half := (leaf.Left + leaf.Right) / 2
	if p.Number+p.Title == "" {
		leaf.Field(c, "object number", "", leaf.Left, half-4, y)
		leaf.Field(c, "title", "", half, leaf.Right, y)
		y -= 8.5
	}
	leaf.Field(c, "examined by", "", leaf.Left, half-4, y)
	leaf.Field(c, "date", "", half, half+42, y)
	leaf.Field(c, "light, lux", "", half+46, leaf.Right, y)
	x := leaf.Ticks(c, "looked at", []string{"in store", "going out", "coming in", "before mounting", "after showing"}, "", leaf.Left, y-7.5)
	leaf.Field(c, "photographs", "", x, leaf.Right, y-7.8)
	return y - 12
}

// grades sets the four steps, two beside each other.
func (p pages) grades(c drawing.Canvas, y float64) float64 {
	y = leaf.Section(c, "On the whole", leaf.Left, leaf.Right, y)
	for i, g := range Grades {
		at := plane.Point{X: leaf.Left + float64(i/2)*(leaf.Right-leaf.Left)/2, Y: y - 3.4 - float64(i%2)*5}
		leaf.Ticks(c, fmt.Sprint(i+1), []string{g}, "", at.X, at.Y)
	}
	return y - 10
}

// outlines sets front and back beside each other.
func (p pages) outlines(c drawing.Canvas, y float64) float64 {
	y = leaf.Section(c, "Where: mark the outline, and write the square into the table", leaf.Left, leaf.Right, y)
	_, h := p.size()
	for i, v := range []struct {
		name  string
		ring  plane.Ring
		front bool
	}{{"F  front", p.flat.Front, true}, {"B  back", p.flat.Back, false}} {
		x := leaf.Left + float64(i)*(leaf.Right-leaf.Left+4)/2
		w := leaf.Word(v.name, leaf.Text, x+label, y-3)
		w.Bold = true
		c.Word(w)
		p.draw(c, v.ring, v.front, plane.Point{X: x, Y: y - 4})
	}
	y -= h + label + 12
	of := fmt.Sprintf("A square is %.0f mm of the garment as it lies flat (1 : %.0f). The outline is drawn from measurements; trimming is not shown.", p.cell, p.scale)
	if p.Invented {
		of = "The outline is only there to point at: draw in what is different."
	}
	return leaf.Lines(c, "F C4 is square C4 in front, B C4 behind; FI and BI inside, on the lining. "+of, leaf.Small, leaf.Left, leaf.Right, y)
}

// terms sets the words for damage in two columns.
func (p pages) terms(c drawing.Canvas, y float64) {
	y = leaf.Section(c, "What: one code to a line of the table", leaf.Left, leaf.Right, y)
	const pitch = 4.2
	half := (len(Terms) + 1) / 2
	for i, t := range Terms {
		x, at := leaf.Left+float64(i/half)*(leaf.Right-leaf.Left+3)/2, y-2.6-float64(i%half)*pitch
		code := leaf.Word(t.Code, leaf.Text, x, at)
		code.Bold = true
		c.Word(code)
		name := t.Name
		if t.Memory {
			name += " *"
		}
		w := leaf.Word(name+":", leaf.Text, x+7.5, at)
		c.Word(w)
		c.Word(leaf.Word(t.Meaning, leaf.Text, w.At.X+w.Width()+1, at))
	}
}

// rows is how many places a sheet has room for, and rowHeight enough for a pencil.
const (
	rows      = 18
	rowHeight = 9.0
)

var table = []leaf.Column{{Head: "no.", Width: 11}, {Head: "place", Width: 22}, {Head: "code", Width: 16}, {Head: "size, mm", Width: 24}, {Head: "moves?", Width: 14}, {Head: "note", Width: 62}, {Head: "date", Width: 26}}

// second is the page with the table and what to beware of.
func (p pages) second(c drawing.Canvas) {
	y := leaf.Heading(c, "Condition sheet", p.Number, "What was seen")
	lines := make([][]string, rows)
	for i := range lines {
		lines[i] = []string{fmt.Sprint(i + 1)}
	}
	foot := leaf.Table(c, table, lines, rowHeight, -1, leaf.Left, y)
	leaf.Cells(c, table, leaf.Left, foot+rows*rowHeight, foot)
	y = leaf.Lines(c, "Moves: tick where threads, beads or pieces move or come away when the cloth is lifted; such a place is not handled, and not under a fastening or a tape of the mount.", leaf.Small, leaf.Left, leaf.Right, foot-1.5)
	half := (leaf.Left + leaf.Right) / 2
	left := leaf.Items(c, looking, leaf.Small, leaf.Left, half-4, leaf.Section(c, "Looking", leaf.Left, half-4, y-1))
	right := leaf.Items(c, handling, leaf.Small, half+4, leaf.Right, leaf.Section(c, "Handling", half+4, leaf.Right, y-1))
	y = leaf.Lines(c, sources, leaf.Small, leaf.Left, leaf.Right, min(left, right)-1)
	leaf.Notes(c, y-1)
}

// Common practice, no published source.
var looking = []string{
	"From the top down, front then back, outside then inside; fastenings and seams last.",
	"Strong light only for minutes, from the side for creases and splits; 50 lux else (from memory).",
	"SH, EM, SP or WS where weight hangs: the garment is not mounted before a conservator has seen it.",
}

var handling = []string{
	"Old garments may carry pesticides, mercury or arsenic, and mould: ask first, wear gloves, a mask where there is dust, wash hands.",
	"Pencil, no ink; no rings, watches or lanyards. Turn it between two sheets, never by a corner.",
	"Two people turn what is heavy or long. Stop where it sheds.",
}

const sources = "Sources. Terms: Museum Textile Services, Textile Condition Terms (handout), with meanings in other words; those with * from memory. What a record holds: EN 16095:2012, Conservation of cultural property – Condition recording for movable cultural heritage."
