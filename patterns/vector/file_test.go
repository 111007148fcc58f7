package vector

import (
	"bytes"
	"context"
	"encoding/xml"
	"flag"
	"fmt"
	"image"
	_ "image/png" // to read what rsvg-convert writes
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/judge"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
	"understructure/patterns/plantest"
	"understructure/patterns/sheet"
)

var update = flag.Bool("update", false, "write the golden files anew")

// inked is the box of pixels that are not white.
func inked(t *testing.T, path string) drawing.Box {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	m, _, err := image.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	b := drawing.Empty()
	for y := m.Bounds().Min.Y; y < m.Bounds().Max.Y; y++ {
		for x := m.Bounds().Min.X; x < m.Bounds().Max.X; x++ {
			if r, _, _, _ := m.At(x, y).RGBA(); r < 0x8000 {
				b = b.Round(plane.Point{X: float64(x), Y: float64(y)}, plane.Point{X: float64(x + 1), Y: float64(y + 1)})
			}
		}
	}
	return b
}

func TestSameBytesTwice(t *testing.T) {
	pages, _ := templates(t, plantest.Plan(), "A3")
	var first, second, svg1, svg2 bytes.Buffer
	for _, b := range []*bytes.Buffer{&first, &second} {
		if err := PDF(b, pages, Meta{Title: "t"}); err != nil {
			t.Fatal(err)
		}
	}
	for _, b := range []*bytes.Buffer{&svg1, &svg2} {
		if err := SVG(b, plantest.Panel(), Meta{Title: "t"}); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(first.Bytes(), second.Bytes()) || !bytes.Equal(svg1.Bytes(), svg2.Bytes()) {
		t.Error("the same drawing gave other bytes the second time")
	}
}

// The file is sound, has its layers, its title and its language, and its fonts with it.
func TestWhatTheFileHolds(t *testing.T) {
	_, pdf := templates(t, plantest.Plan(), "A4")
	judge.Run(t, "qpdf", "--check", pdf)
	open := string(judge.Run(t, "qpdf", "--qdf", "--object-streams=disable", pdf, "-"))
	for _, l := range drawing.Layers {
		name := "<feff"
		for _, r := range l.Title() {
			name += fmt.Sprintf("%04x", r)
		}
		if !strings.Contains(open, "/Name "+name+">") {
			t.Errorf("no layer %q", l)
		}
	}
	if !strings.Contains(open, "/Lang (en)") {
		t.Error("no language")
	}
	if info := string(judge.Run(t, "pdfinfo", pdf)); !strings.Contains(info, "Day bodice of striped silk taffeta") {
		t.Errorf("title missing in\n%s", info)
	}
	for _, line := range strings.Split(string(judge.Run(t, "pdffonts", pdf)), "\n")[2:] {
		if f := strings.Fields(line); len(f) > 4 && f[len(f)-5] != "yes" {
			t.Errorf("font not embedded: %s", line)
		}
	}
}

func TestLettersOfManyLanguages(t *testing.T) {
	text := "ß œ Ÿ ñ ¿ zażółć jaźń kůň ďábel Ελλάς Жёлтый ½ ¼ ¾ ⅓ ⅔ ⅛ – … ×"
	p := small()
	p.Object.Title = text
	p.Pieces = p.Pieces[:1]
	_, pdf := templates(t, p, "A3")
	got := strings.Join(strings.Fields(string(judge.Run(t, "pdftotext", "-layout", pdf, "-"))), " ")
	if !strings.Contains(got, text) {
		t.Errorf("read back: %s", got)
	}
	for _, want := range []string{"W02-1", "layer 2 of 3, back, left", "wadding 6 mm, cut 1", "waist", "100 mm"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is missing in: %s", want, got)
		}
	}
}

func wellFormed(t *testing.T, svg []byte) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(svg))
	for {
		if _, err := d.Token(); err == io.EOF {
			return
		} else if err != nil {
			t.Fatalf("%v in\n%.300s", err, svg)
		}
	}
}

var hostile = []string{
	"", "plain", "\x00\x01\x1b[2J\x7f\u0085", "<script>alert('&')</script>]]>", `"quotes' & ampersands`, "(\\) endobj endstream %%EOF",
	"\u202eright to left\u202c \u05e9\u05de\u05dc\u05d4 \u0641\u0633\u062a\u0627\u0646", strings.Repeat("no end to it ", 2000), "\xff\xfe\xc3", "漢字 \U0001f457 \ufffe\uffff",
}

func FuzzTitles(f *testing.F) {
	for _, s := range hostile {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		pc := piece.Piece{ID: s, Name: s, Material: s, Count: 1, Outline: plane.Ring{{}, {X: 150}, {X: 150, Y: 100}, {Y: 90}},
			Marks: []piece.Mark{{Kind: piece.LevelLine, Label: s, Points: []plane.Point{{Y: 40}, {X: 150, Y: 44}}}}}
		var svg, pdf bytes.Buffer
		if err := SVG(&svg, pc, Meta{Title: s, Subject: s}); err != nil {
			t.Fatal(err)
		}
		wellFormed(t, svg.Bytes())
		pages, err := sheet.Lay(context.Background(), plan.Plan{Object: plan.Object{Number: s, Title: s}, Paper: sheet.Papers[0], Pieces: []piece.Piece{pc}}, sheet.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if err := PDF(&pdf, pages, Meta{Title: s, Subject: s}); err != nil {
			t.Fatal(err)
		}
	})
}

func TestHostileTitlesGiveSoundFiles(t *testing.T) {
	for _, s := range hostile {
		p := small()
		p.Object.Number, p.Object.Title = s, s
		p.Pieces = p.Pieces[:1]
		p.Pieces[0].Name = s
		_, path := templates(t, p, "A4")
		pdf, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		for _, fault := range judge.Archive(t, path, pdf) {
			t.Errorf("%q: %s", s, fault)
		}
	}
}

func TestRefusals(t *testing.T) {
	var b bytes.Buffer
	if err := PDF(&b, nil, Meta{}); err == nil || b.Len() > 0 {
		t.Errorf("a PDF without pages: %v, %d bytes", err, b.Len())
	}
	book := NewBook(Meta{})
	book.Page(210, 297)
	book.On(drawing.Cut)
	book.Line([]plane.Point{{}, {X: math.NaN()}}, false, drawing.Pen{Width: 1})
	if err := book.Write(&b); err == nil || b.Len() > 0 {
		t.Errorf("a line to nowhere: %v, %d bytes", err, b.Len())
	}
	if err := SVG(&b, piece.Piece{ID: "x"}, Meta{}); err == nil || b.Len() > 0 {
		t.Errorf("a piece without an outline: %v, %d bytes", err, b.Len())
	}
}

// A piece with one of every mark and no words, in a file that a person can read.
func TestGolden(t *testing.T) {
	pc := piece.Piece{
		Outline: plane.Ring{{}, {X: 80}, {X: 80, Y: 50}, {Y: 60}},
		Holes:   []plane.Ring{{{X: 60, Y: 30}, {X: 60, Y: 40}, {X: 70, Y: 40}, {X: 70, Y: 30}}},
		Marks: []piece.Mark{
			{Kind: piece.LevelLine, Points: []plane.Point{{Y: 20}, {X: 80, Y: 20}}},
			{Kind: piece.InnerOutline, Points: []plane.Point{{X: 5, Y: 5}, {X: 75, Y: 5}, {X: 75, Y: 45}, {X: 5, Y: 54}}},
			{Kind: piece.Dart, Points: []plane.Point{{X: 20}, {X: 25, Y: 15}, {X: 30}}},
			{Kind: piece.Pin, Points: []plane.Point{{X: 50, Y: 12}}},
		},
	}
	var b bytes.Buffer
	if err := SVG(&b, pc, Meta{Title: "every mark", Subject: "no words"}); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join("testdata", "marks.svg")
	if *update {
		if err := os.WriteFile(path, b.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(b.Bytes(), want) {
		os.WriteFile(filepath.Join("testdata", "marks.failed.svg"), b.Bytes(), 0o644)
		t.Error("the drawing differs from testdata/marks.svg; compare testdata/marks.failed.svg")
	}
}
