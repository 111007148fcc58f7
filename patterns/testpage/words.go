package testpage

import (
	"fmt"
	"math"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/plan"
	"understructure/patterns/sheet"
)

// askew is how much the diagonals may differ, in millimetres: of a page that runs askew by 0.2 degrees, which moves its
// top by 1 mm on A4, they differ by 0.5 mm (derived).
const askew = 0.5

// steps are what the page asks for.
func steps() []string {
	return []string{
		"Print this page at 100 % (“Actual size”, never “Fit to page”), on the printer and the paper that the templates will be printed on. Let it lie flat until it is dry.",
		"With a steel rule measure both rules, across and up, from the first tick to the one marked 100 mm, to a fifth of a millimetre. A longer rule is read more truly: divide what it measures by what it is marked, and multiply by 100.",
		fmt.Sprintf("If both measure 100 mm, all is well. If not, write what they measure into the record, in its unit: mount.printer.x is the rule across, mount.printer.y the rule up; in mm such as  \"printer\": { \"x\": 99.6, \"y\": 100.2 }.  Allowed are %g to %g mm; anything else was not printed at 100 %%.", sheet.LeastRule, sheet.MostRule),
		fmt.Sprintf("Measure both diagonals of the square. If they differ by more than %g mm the paper runs askew, which no number mends: lay it straight and print again.", askew),
		"Templates that are drawn for this printer say so at their foot, and are true on no other. This page is never corrected.",
	}
}

// words sets the title and the steps, and returns how high the page is still free.
func words(c drawing.Canvas, p plan.Paper) float64 {
	const title = 4.6
	right := math.Min(p.Width-margin, inner+widest)
	size := 2.9
	if p.Height < 240 || p.Width < 180 {
		size = 2.3
	}
	y := math.Min(p.Height-margin, top) - title
	c.Word(drawing.Word{Text: "Test page: does this printer print true to size?", Size: title, Bold: true, At: plane.Point{X: inner, Y: y}}.Fit(right - inner))
	y -= 1.6 * size
	c.Word(drawing.Word{Text: fmt.Sprintf("%s, %g × %g mm", p.Name, p.Width, p.Height), Size: size, At: plane.Point{X: inner, Y: y}})
	for i, step := range steps() {
		y -= 0.6 * size
		for k, line := range fonts.Regular.Wrap(step, size, right-inner-2*size) {
			y -= 1.35 * size
			if k == 0 {
				c.Word(drawing.Word{Text: fmt.Sprintf("%d.", i+1), Size: size, At: plane.Point{X: inner, Y: y}})
			}
			c.Word(drawing.Word{Text: line, Size: size, At: plane.Point{X: inner + 2*size, Y: y}})
		}
	}
	return y
}
