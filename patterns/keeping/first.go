package keeping

import (
	"fmt"
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/rest"
	"understructure/patterns/drawing"
	"understructure/patterns/leaf"
)

// first is the page of the box: drawings to one scale, boxes, and the places of the folds.
func (s *sheet) first(c drawing.Canvas) {
	y := leaf.Heading(c, "Storage sheet", s.Number, s.Title)
	y = leaf.Lines(c, s.facts(), leaf.Text, leaf.Left, leaf.Right, y)
	y = leaf.Lines(c, s.verdict+" "+s.carried(), leaf.Text, leaf.Left, leaf.Right, y) - 1
	y = s.drawings(c, y)
	y = s.boxes(c, y)
	s.places(c, y-3)
}

func (s *sheet) facts() string {
	words := fmt.Sprintf("Fastened and lying flat it measures %s × %s mm and is %s mm thick with tissue in it.", mm(s.flat.Breadth), mm(s.flat.Length), mm(s.cloth.Thickness))
	if s.Strength != "" {
		words += " Strength: " + s.Strength + "."
	}
	if s.MassKg != nil {
		words += fmt.Sprintf(" Weight: %.1f kg.", *s.MassKg)
	}
	if s.assumed != "" {
		words += " Assumed: " + s.assumed + "."
	}
	if len(s.garment.Skirt) > 0 {
		words += " Bodice and skirt are taken as one; if they are apart, the skirt lies below."
	}
	return words
}

func (s *sheet) carried() string {
	if s.MassKg != nil && *s.MassKg >= heavy || s.packed.Length > 1200 {
		return "Two people lift it, on a board or by the sheet under it."
	}
	return "Lift it by the sheet under it, not by its shoulders."
}

// drawings sets the garment flat and its box, from above and from the side, and returns where they end.
func (s *sheet) drawings(c drawing.Canvas, top float64) float64 {
	const room, high, gap = 84.0, 116.0, 14.0
	y := leaf.Section(c, "Flat, and in its box", leaf.Left, leaf.Right, top)
	p := s.packed
	scale := scaleFor(plane.Point{X: s.flat.Breadth, Y: s.flat.Length}, plane.Point{X: room - 12, Y: high})
	scale = math.Max(scale, scaleFor(plane.Point{X: math.Max(p.Breadth, p.Length), Y: p.Length + p.Height}, plane.Point{X: room - 8, Y: high - gap - 4}))
	foot := y - 6 - s.flat.Length/scale
	s.laid(c, plane.Point{X: leaf.Left + room/2 - 4, Y: foot}, scale)
	foot -= 6

	x := leaf.Left + room + 11
	view := "from above"
	if p.Across.Folds+p.Sides.Folds > 0 {
		view += ", folded by set " + names[0]
	}
	c.Word(leaf.Word(view, leaf.Small, x, y-leaf.Small))
	above := s.fromAbove(c, plane.Point{X: x, Y: y - 5}, scale)
	size := leaf.Word(mm(p.Breadth), leaf.Small, above.Centre().X, above.Lo.Y-3)
	c.Word(size.Back(0.5))
	long := leaf.Word(mm(p.Length), leaf.Small, above.Lo.X-1.2, above.Centre().Y)
	long.Turn = math.Pi / 2
	c.Word(long.Back(0.5))
	c.Word(leaf.Word("cut along its length", leaf.Small, x, above.Lo.Y-9))
	side := s.fromTheSide(c, plane.Point{X: x, Y: above.Lo.Y - 11}, scale)
	c.Word(leaf.Word(mm(p.Height), leaf.Small, side.Hi.X+1.2, side.Centre().Y-0.9))
	c.Word(leaf.Word(fmt.Sprintf("1 : %.0f, inside sizes in mm", scale), leaf.Small, x, side.Lo.Y-4))
	return math.Min(foot, side.Lo.Y-6) - 2
}

// common are lengths and breadths of boxes that stores often have, from memory.
var common = [][2]float64{{760, 460}, {1020, 460}, {1270, 610}, {1520, 760}, {1830, 760}}

// boxes is the table of boxes: with no fold, the one that is drawn, and common ones.
func (s *sheet) boxes(c drawing.Canvas, y float64) float64 {
	y = leaf.Section(c, "Boxes, inside sizes in mm", leaf.Left, leaf.Right, y)
	columns := []leaf.Column{{Head: "box", Width: 52}, {Head: "length", Width: 20, Number: true}, {Head: "breadth", Width: 20, Number: true},
		{Head: "folds across", Width: 23, Number: true}, {Head: "each side turned in", Width: 32, Number: true}, {Head: "height needed", Width: 28, Number: true}}
	rows := [][]string{row("without any fold", s.flat.Whole(s.cloth)), row("as drawn", s.packed)}
	for _, size := range common {
		p, err := s.flat.Into(size[0], size[1], s.cloth)
		if err != nil {
			rows = append(rows, []string{"common, too narrow for the bodice", mm(size[0]), mm(size[1]), "–", "–", "–"})
			continue
		}
		rows = append(rows, row("common (from memory)", p))
	}
	return leaf.Table(c, columns, rows, 5, 1, leaf.Left, y)
}

func row(name string, p rest.Packed) []string {
	times := func(n int) string {
		if n == 0 {
			return "none"
		}
		return fmt.Sprint(n)
	}
	return []string{name, mm(p.Length), mm(p.Breadth), times(p.Across.Folds), times(p.Sides.Folds), mm(math.Ceil(p.Height))}
}

// places is the table of where the folds lie, set by set, with room for when each was used.
func (s *sheet) places(c drawing.Canvas, y float64) {
	y = leaf.Section(c, "Folds, by another set each time", leaf.Left, leaf.Right, y)
	p := s.packed
	if p.Across.Folds == 0 && p.Sides.Folds == 0 {
		leaf.Lines(c, "It lies without a fold. Where sleeves bend or the skirt is heaped, a pad of tissue goes into the bend.", leaf.Text, leaf.Left, leaf.Right, y)
		return
	}
	columns := []leaf.Column{{Head: "set", Width: 13}, {Head: "across, mm above the lowest hem", Width: 47}, {Head: "sides, mm from the middle", Width: 25},
		{Head: "folded on, by", Width: 45}, {Head: "folded on, by", Width: 45}}
	var rows [][]string
	for set := range rest.Sets {
		across, sides := "–", "–"
		for k, at := range p.Across.Places(set) {
			if k == 0 {
				across = ""
			} else {
				across += ", "
			}
			across += mm(at)
		}
		if p.Sides.Folds > 0 {
			sides = mm(p.Sides.At[set])
		}
		rows = append(rows, []string{names[set], across, sides, "", ""})
	}
	y = leaf.Table(c, columns, rows, 8, -1, leaf.Left, y)
	leaf.Lines(c, fmt.Sprintf("Refold by the next set whenever it is taken out, and at least once a year. A pad %s mm thick goes into every fold, as long as the fold; tissue keeps what lies between two folds level.",
		mm(s.cloth.Pad)), leaf.Text, leaf.Left, leaf.Right, y-1.5)
}
