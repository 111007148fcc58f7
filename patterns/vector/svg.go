package vector

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"image/color"
	"io"
	"math"
	"sync"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/canvas/renderers/svg"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/piece"
	"understructure/patterns/sheet"
)

// SVG writes one piece at true size, in millimetres, with a group for each layer. Words are
// outlines, so that they look the same everywhere.
func SVG(w io.Writer, p piece.Piece, m Meta) error {
	it, width, height, err := sheet.Alone(p)
	if err != nil {
		return fmt.Errorf("vector: %w", err)
	}
	s := newPicture(width, height, m)
	it.Draw(s)
	return s.write(w)
}

// picture is one SVG file; a drawing.Canvas.
type picture struct {
	out   bytes.Buffer
	svg   *svg.SVG
	group drawing.Layer // that is open; "" for none
}

func newPicture(width, height float64, m Meta) *picture {
	s := &picture{}
	o := svg.DefaultOptions
	o.EmbedFonts = false
	s.svg = svg.New(&s.out, width, height, &o)
	s.out.WriteString("\n<title>")
	xml.EscapeText(&s.out, []byte(fonts.Readable(m.Title)))
	s.out.WriteString("</title>\n<desc>")
	xml.EscapeText(&s.out, []byte(fonts.Readable(m.Subject)))
	s.out.WriteString("</desc>\n")
	return s
}

// On is part of drawing.Canvas.
func (s *picture) On(l drawing.Layer) {
	s.close()
	fmt.Fprintf(&s.out, "<g id=\"%s\">\n<title>%s</title>\n", l, l.Title())
	s.group = l
}

func (s *picture) close() {
	if s.group != "" {
		s.out.WriteString("</g>\n")
	}
	s.group = ""
}

// Line is part of drawing.Canvas.
func (s *picture) Line(line []plane.Point, closed bool, pen drawing.Pen) {
	style := canvas.DefaultStyle
	style.Fill = canvas.Paint{}
	style.Stroke = paint(pen.Colour)
	style.StrokeWidth = pen.Width
	style.StrokeJoiner = canvas.RoundJoin
	style.StrokeCapper = canvas.RoundCap
	for _, d := range pen.Dash {
		style.StrokeCapper = canvas.ButtCap
		style.Dashes = append(style.Dashes, d/pen.Width) // the writer multiplies them by the width
	}
	s.path(polyline(line, closed), style)
}

// Fill is part of drawing.Canvas.
func (s *picture) Fill(line []plane.Point, c drawing.Colour) {
	style := canvas.DefaultStyle
	style.Fill = paint(c)
	s.path(polyline(line, true), style)
}

// Word is part of drawing.Canvas.
func (s *picture) Word(w drawing.Word) {
	outlines, _, err := face(w.Bold, w.Size).ToPath(fonts.Readable(w.Text))
	if err != nil || outlines.Empty() {
		return
	}
	m := canvas.Identity.Translate(w.At.X, w.At.Y).Rotate(w.Turn * 180 / math.Pi)
	style := canvas.DefaultStyle
	style.Fill = paint(w.Colour)
	s.path(outlines.Transform(m), style)
}

func (s *picture) path(p *canvas.Path, style canvas.Style) {
	s.svg.RenderPath(p, style, canvas.Identity)
	s.out.WriteByte('\n')
}

func (s *picture) write(w io.Writer) error {
	s.close()
	if err := s.svg.Close(); err != nil {
		return fmt.Errorf("vector: %w", err)
	}
	s.out.WriteByte('\n')
	if _, err := s.out.WriteTo(w); err != nil {
		return fmt.Errorf("vector: %w", err)
	}
	return nil
}

func polyline(line []plane.Point, closed bool) *canvas.Path {
	p := &canvas.Path{}
	for i, q := range line {
		if i == 0 {
			p.MoveTo(q.X, q.Y)
		} else {
			p.LineTo(q.X, q.Y)
		}
	}
	if closed {
		p.Close()
	}
	return p
}

func paint(c drawing.Colour) canvas.Paint {
	return canvas.Paint{Color: color.RGBA{c.R, c.G, c.B, 0xff}}
}

// letters reads the fonts once.
var letters = sync.OnceValue(func() *canvas.FontFamily {
	f := canvas.NewFontFamily("sans")
	for _, err := range []error{
		f.LoadFont(fonts.Regular.TTF, 0, canvas.FontRegular),
		f.LoadFont(fonts.Bold.TTF, 0, canvas.FontBold),
	} {
		if err != nil {
			panic("vector: the embedded fonts cannot be read")
		}
	}
	return f
})

// face gives the letters of a size in millimetres; the library counts in points.
func face(bold bool, size float64) *canvas.FontFace {
	style := canvas.FontRegular
	if bold {
		style = canvas.FontBold
	}
	return letters().Face(size*points, canvas.Black, style)
}
