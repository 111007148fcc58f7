package report

import (
	"fmt"
	"strings"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/plan"
)

// title sets the object's name, over as many lines as it needs, and the facts below it.
func (g *galley) title(p plan.Plan) {
	const most = 6 // lines, for a title that is no title
	g.add(5, func(c drawing.Canvas, b drawing.Box) {
		c.Word(drawing.Word{Text: "Mount record", Size: bodySize, Colour: drawing.Grey, At: b.Lo.Add(plane.Point{Y: 1.8})})
		c.Word(drawing.Word{Text: p.Object.Number, Size: bodySize, Bold: true, At: plane.Point{X: b.Hi.X, Y: b.Lo.Y + 1.8}}.Fit(b.Width() / 2).Back(1))
	})
	lines := fonts.Bold.Wrap(fonts.Readable(orDash(p.Object.Title)), titleSize, g.width)
	if len(lines) > most {
		lines = append(lines[:most-1], fonts.Bold.Shorten(lines[most-1]+" …", titleSize, g.width))
	}
	for _, line := range lines {
		g.add(titleSize*1.22, func(c drawing.Canvas, b drawing.Box) {
			c.Word(drawing.Word{Text: line, Size: titleSize, Bold: true, At: b.Lo.Add(plane.Point{Y: 1.6})})
		})
	}
	g.gap(1.5)
	g.facts([]fact{
		{"object number", p.Object.Number}, {"year", year(p.Object.Year)}, {"made for", p.Object.Wearer}, {"measured by", p.Measured.By}, {"measured on", p.Measured.On}, {"side of the cloth", p.Measured.Side},
		{"build", build[p.Build]}, {"stand height to the waist", millimetres(&p.StandHeight) + " mm"}, {"weight, dressed", weight(p.Standing.MassKg)}, {"templates", templates(p)}, {"cloth", cloth(p.Object)}, {"note", p.Object.Notice},
	})
}

var build = map[string]string{"padded": "padding over a form", "slices": "foam slices on a pole"}

func year(y int) string {
	if y == 0 {
		return ""
	}
	return fmt.Sprint(y)
}

// templates is how many pieces are to be cut.
func templates(p plan.Plan) string {
	n := 0
	for _, q := range p.Pieces {
		n += q.Count
	}
	if n == 0 {
		return ""
	}
	return strings.TrimSuffix(fmt.Sprintf("%d for %d pieces, %s", len(p.Pieces), n, p.Paper.Name), ", ")
}

// cloth is how strong the garment is, and its own weight.
func cloth(o plan.Object) string {
	if o.MassKg == nil {
		return o.Strength
	}
	return strings.TrimPrefix(o.Strength+", "+weight(*o.MassKg), ", ")
}

func weight(kg float64) string {
	if kg <= 0 {
		return ""
	}
	return fmt.Sprintf("%.1f kg", kg)
}

func orDash(s string) string {
	if strings.TrimSpace(s) == "" {
		return dash
	}
	return s
}

// fact is a thing to know, and its name.
type fact struct{ name, what string }

// facts sets names over what they name, six in a row.
func (g *galley) facts(all []fact) {
	const across, most = 6, 6
	for ; len(all) > 0; all = all[min(across, len(all)):] {
		row := all[:min(across, len(all))]
		lines, tallest := make([][]string, len(row)), 1
		wide := g.width / across
		for i, f := range row {
			lines[i] = fonts.Regular.Wrap(fonts.Readable(orDash(f.what)), bodySize, wide-3)
			if len(lines[i]) > most {
				lines[i] = append(lines[i][:most-1], fonts.Regular.Shorten(lines[i][most-1]+" …", bodySize, wide-3))
			}
			tallest = max(tallest, len(lines[i]))
		}
		g.add(tableSize*1.4+float64(tallest)*bodyLine+1, func(c drawing.Canvas, b drawing.Box) {
			for i, f := range row {
				at := plane.Point{X: b.Lo.X + float64(i)*wide, Y: b.Hi.Y - tableSize}
				c.Word(drawing.Word{Text: f.name, Size: tableSize, Colour: drawing.Grey, At: at})
				for n, line := range lines[i] {
					c.Word(drawing.Word{Text: line, Size: bodySize, At: plane.Point{X: at.X, Y: at.Y - float64(n)*bodyLine - tableSize*1.4}})
				}
			}
		})
	}
}
