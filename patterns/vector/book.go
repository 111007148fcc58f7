// Package vector writes drawings as PDF and SVG files, true to size. The same drawing always
// gives the same bytes.
// It does not decide what is drawn, and it draws no curves of its own: every line is a polyline.
package vector

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/sheet"
)

// Meta is what a file says of itself.
type Meta struct {
	Title   string
	Subject string
}

// written is the date of creation in every file: a fixed one, so that the same record gives the same bytes.
var written = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

const (
	creator  = "Understructure"
	language = "en"
)

// points is the number of PDF units (1/72 inch) in a millimetre.
const points = 72 / 25.4

// Book is a PDF of pages of any sizes, written at the end by WriteTo. It is a drawing.Canvas for
// its last page.
type Book struct {
	pdf    *fpdf.Fpdf
	meta   Meta                  // fit to be read
	layers map[drawing.Layer]int // nil until something is drawn on one

	trueSize bool        // asks to be printed at 100 %
	height   float64     // of the page, in millimetres
	path     []byte      // buffer for one path
	origin   plane.Point // of that path, in grains
	err      error
}

// NewBook returns a book without pages.
func NewBook(m Meta) *Book {
	m.Title, m.Subject = fonts.Readable(m.Title), fonts.Readable(m.Subject)
	p := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: 210, Ht: 297}})
	p.SetCreationDate(written)
	p.SetModificationDate(written)
	p.SetCatalogSort(true)
	p.SetLang(language)
	p.SetTitle(m.Title, true)
	p.SetSubject(m.Subject, true)
	p.SetCreator(creator, true)
	p.SetProducer(creator, true)
	p.SetMargins(0, 0, 0)
	p.SetAutoPageBreak(false, 0)
	for _, f := range []*fonts.Face{fonts.Regular, fonts.Bold} {
		p.AddUTF8FontFromBytes(family(f), "", f.TTF)
	}
	return &Book{pdf: p, meta: m}
}

// Page begins a page of a size in millimetres.
func (b *Book) Page(width, height float64) {
	b.pdf.EndLayer()
	b.pdf.AddPageFormat("P", fpdf.SizeType{Wd: width, Ht: height})
	b.height = height
}

// TrueSize asks whoever prints the book to print it at 100 %; not every program heeds it.
func (b *Book) TrueSize() { b.trueSize = true }

// Sheet adds a page of templates, drawn larger where its printer wants that.
func (b *Book) Sheet(pg sheet.Page) {
	b.TrueSize()
	p := pg.Print()
	b.Page(p.Width, p.Height)
	if pg.Scale != (plane.Point{}) {
		b.pdf.RawWriteStr(fmt.Sprintf("%.8f 0 0 %.8f %.4f %.4f cm", p.Scale.X, p.Scale.Y, p.At.X*points, p.At.Y*points))
	}
	pg.Draw(b)
}

// On is part of drawing.Canvas.
func (b *Book) On(l drawing.Layer) {
	if b.layers == nil {
		b.layer()
	}
	b.pdf.EndLayer()
	b.pdf.BeginLayer(b.layers[l])
}

// layer lists all layers for the viewer, in their order.
func (b *Book) layer() {
	b.layers = map[drawing.Layer]int{}
	for _, l := range drawing.Layers {
		b.layers[l] = b.pdf.AddLayer(l.Title(), true)
	}
	b.pdf.OpenLayerPane()
}

// Line is part of drawing.Canvas.
func (b *Book) Line(line []plane.Point, closed bool, pen drawing.Pen) {
	if len(line) == 0 {
		return
	}
	b.begin(line[0])
	b.colour(pen.Colour, "RG")
	b.pen(pen)
	b.trace(line)
	if closed {
		b.end("s")
	} else {
		b.end("S")
	}
}

// Fill is part of drawing.Canvas.
func (b *Book) Fill(line []plane.Point, colour drawing.Colour) {
	if len(line) == 0 {
		return
	}
	b.begin(line[0])
	b.colour(colour, "rg")
	b.trace(line)
	b.end("f")
}

// Word is part of drawing.Canvas.
func (b *Book) Word(w drawing.Word) {
	w.Text = fonts.Readable(w.Text)
	if w.Text == "" {
		return
	}
	b.check(w.At)
	b.pdf.SetFont(family(fonts.Of(w.Bold)), "", w.Size*points)
	b.pdf.SetTextColor(int(w.Colour.R), int(w.Colour.G), int(w.Colour.B))
	x, y := w.At.X, b.height-w.At.Y
	if w.Turn == 0 {
		b.pdf.Text(x, y, w.Text)
		return
	}
	b.pdf.TransformBegin()
	b.pdf.TransformRotate(w.Turn*180/math.Pi, x, y)
	b.pdf.Text(x, y, w.Text)
	b.pdf.TransformEnd()
}

// Write ends the book and writes it. Nothing is written when anything drawn was not finite.
func (b *Book) Write(w io.Writer) error {
	b.pdf.EndLayer()
	if b.err != nil {
		return b.err
	}
	if b.pdf.PageCount() == 0 {
		return errors.New("vector: a PDF needs at least one page")
	}
	b.describe()
	var pdf bytes.Buffer
	if err := b.pdf.Output(&pdf); err != nil {
		return fmt.Errorf("vector: %w", err)
	}
	if _, err := w.Write(b.finished(pdf.Bytes())); err != nil {
		return fmt.Errorf("vector: %w", err)
	}
	return nil
}

func (b *Book) check(p plane.Point) {
	if s := p.X + p.Y; math.IsNaN(s) || math.IsInf(s, 0) {
		b.err = fmt.Errorf("vector: point (%g, %g) on page %d is not finite", p.X, p.Y, b.pdf.PageNo())
	}
}

// PDF writes pages at true size.
func PDF(w io.Writer, pages []sheet.Page, m Meta) error {
	b := NewBook(m)
	for _, pg := range pages {
		b.Sheet(pg)
	}
	return b.Write(w)
}
