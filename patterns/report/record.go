package report

import (
	"fmt"
	"io"
	"strings"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/elevation"
	"understructure/patterns/plan"
	"understructure/patterns/vector"
)

// Record writes the mount record: what was made, from what, by which measurements, and how it is
// expected to fit. All lengths are in millimetres.
func Record(w io.Writer, p plan.Plan) error {
	title := strings.TrimSpace(p.Object.Number + " " + p.Object.Title)
	m := vector.Meta{Title: "Mount record – " + title, Subject: "Record of a costume mount"}
	return setRecord(p).book(m, m.Title).Write(w)
}

func setRecord(p plan.Plan) *setter {
	s := newSetter()
	s.title(p)
	s.elevations(p)
	s.fit(p.Levels)
	s.warnings(p.Warnings)
	s.sections(p)
	s.values(p)
	s.layers(p)
	s.skirt(p.Skirt)
	s.cuts(p.Cuts)
	s.materials(p)
	s.standing(p)
	s.cautions(p.Cautions)
	s.signature()
	return s
}

// title sets the object's name and the facts beside it.
func (s *setter) title(p plan.Plan) {
	top := s.room(6)
	s.draw(func(c drawing.Canvas) {
		c.Word(drawing.Word{Text: "Mount record", Size: textSize, Colour: drawing.Grey, At: top.Lo.Add(plane.Point{Y: 2})})
		c.Word(drawing.Word{Text: p.Object.Number, Size: textSize, Bold: true, At: plane.Point{X: top.Hi.X, Y: top.Lo.Y + 2}}.Fit(measure / 2).Back(1))
	})
	lines := fonts.Bold.Wrap(fonts.Readable(orDash(p.Object.Title)), titleSize, measure)
	if len(lines) > 2 {
		lines = append(lines[:1], fonts.Bold.Shorten(lines[1]+" …", titleSize, measure))
	}
	for _, line := range lines {
		b := s.room(titleSize * 1.25)
		s.draw(func(c drawing.Canvas) {
			c.Word(drawing.Word{Text: line, Size: titleSize, Bold: true, At: b.Lo.Add(plane.Point{Y: 1.6})})
		})
	}
	s.gap(2)
	s.facts([][2]string{
		{"Year", year(p.Object.Year)}, {"Measured by", p.Measured.By},
		{"Made for", p.Object.Wearer}, {"Measured on", p.Measured.On},
		{"Build", build[p.Build]}, {"Side of the cloth", p.Measured.Side},
		{"Stand height", signed(p.StandHeight) + " mm"}, {"Note", p.Object.Notice},
	})
}

var build = map[string]string{"padded": "padding over a form", "slices": "foam slices on a pole"}

func year(y int) string {
	if y == 0 {
		return ""
	}
	return fmt.Sprint(y)
}

func orDash(s string) string {
	if strings.TrimSpace(s) == "" {
		return "–"
	}
	return s
}

// facts sets names and values in two columns.
func (s *setter) facts(all [][2]string) {
	const pitch, label = 5.2, 30.0
	for i := 0; i < len(all); i += 2 {
		b := s.room(pitch)
		pair := all[i:min(i+2, len(all))]
		s.draw(func(c drawing.Canvas) {
			for k, f := range pair {
				at := b.Lo.Add(plane.Point{X: float64(k) * measure / 2, Y: 1.6})
				c.Word(drawing.Word{Text: f[0], Size: textSize, Colour: drawing.Grey, At: at})
				c.Word(drawing.Word{Text: orDash(f[1]), Size: textSize, At: at.Add(plane.Point{X: label})}.Fit(measure/2 - label - 4))
			}
		})
	}
}

// elevations draws the mount from the front and from the side.
func (s *setter) elevations(p plan.Plan) {
	if len(p.Surface.Heights) == 0 {
		return
	}
	const height = 98.0
	s.heading("Elevations", height+8)
	b := s.room(height)
	key := s.room(6)
	s.draw(func(c drawing.Canvas) {
		for k, side := range []string{elevation.Front, elevation.Side} {
			half := b
			half.Lo.X += float64(k) * (measure/2 + 2)
			half.Hi.X = half.Lo.X + measure/2 - 2
			title := drawing.Word{Text: side, Size: smallSize, Bold: true, At: plane.Point{X: half.Lo.X, Y: half.Hi.Y - 2.5}}
			c.Word(title)
			half.Hi.Y -= 5
			elevation.Draw(c, p, side, half)
		}
		elevation.Key(c, p, key.Lo.Add(plane.Point{Y: 2}))
	})
}

// fit sets the fit table; a level that strains is set in bold and says so.
func (s *setter) fit(levels []plan.Level) {
	s.heading("Fit", 25)
	columns := []column{
		{"level", 25, false}, {"height", 14, true}, {"garment inside", 17, true}, {"", 15, false}, {"ease", 12, true},
		{"wanted", 16, true}, {"form", 14, true}, {"built", 14, true}, {"clearance", 20, true}, {"chance of strain", 23, true},
	}
	var rows [][]cell
	for _, l := range levels {
		source := ""
		if l.GarmentGirth != nil {
			source = map[bool]string{true: "taken", false: "drawn"}[l.Taken]
		}
		strains := l.Clearance != nil && *l.Clearance < 0
		clearance := millimetres(l.Clearance)
		if strains {
			clearance = "strain " + clearance
		}
		ease := "–"
		if l.GarmentGirth != nil {
			ease = signed(l.Ease)
		}
		row := []cell{}
		for _, t := range []string{l.Name, signed(l.Height), millimetres(l.GarmentGirth), source, ease,
			millimetres(l.TargetGirth), millimetres(l.FormGirth), millimetres(l.BuiltGirth), clearance, chance(l.StrainChance)} {
			row = append(row, cell{t, strains})
		}
		rows = append(rows, row)
	}
	s.table(columns, rows)
	s.paragraph("Girths are taut tapes, in millimetres. Taken: from the record. Drawn: from published statistics of figures. Clearance is the garment's girth inside less what is built; a negative clearance is strain.", false)
}

func (s *setter) warnings(all []plan.Warning) {
	if len(all) == 0 {
		return
	}
	s.heading("Please note", 10)
	for _, w := range all {
		s.paragraph(w.Message, true)
	}
}

// sections draws the mount cut at every level that has one, five in a row.
func (s *setter) sections(p plan.Plan) {
	var names []string
	for _, l := range p.Levels {
		if _, ok := elevation.Nearest(p, l.Name); ok {
			names = append(names, l.Name)
		}
	}
	if len(names) == 0 {
		return
	}
	const height, across = 31.0, 5
	s.heading("Sections, seen from above", height+8)
	for i := 0; i < len(names); i += across {
		b := s.room(height)
		row := names[i:min(i+across, len(names))]
		s.draw(func(c drawing.Canvas) {
			for k, name := range row {
				w := measure / across
				cellBox := drawing.Box{Lo: plane.Point{X: b.Lo.X + float64(k)*w, Y: b.Lo.Y + 6}, Hi: plane.Point{X: b.Lo.X + float64(k+1)*w - 4, Y: b.Hi.Y}}
				elevation.Section(c, p, name, cellBox)
				c.Word(drawing.Word{Text: name, Size: smallSize, Bold: true, At: plane.Point{X: cellBox.Centre().X, Y: b.Lo.Y + 2.5}}.Fit(cellBox.Width()).Back(0.5))
			}
		})
	}
	key := s.room(6)
	s.draw(func(c drawing.Canvas) { elevation.Key(c, p, key.Lo.Add(plane.Point{Y: 2})) })
}
