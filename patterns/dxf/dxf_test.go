package dxf

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/judge"
	"understructure/patterns/piece"
	"understructure/patterns/plantest"
	"understructure/patterns/sheet"
)

// The layers as a cutting program lists them.
const (
	Cut, Inner, Seam, Carve, Feather, Step, Dart, Mark, Text = "CUT", "HOLES", "SEAMS", "SECOND", "FEATHER", "STEPS", "DARTS", "MARKS", "TEXT"
)

// exact is how truly a line must be read back, in millimetres.
const exact = 0.01

// drawn is what another program found in a file.
type drawn judge.Drawing

// read has files read by another program.
func read(t *testing.T, files ...[]byte) (all []drawn) {
	t.Helper()
	dir := t.TempDir()
	var paths []string
	for i, b := range files {
		paths = append(paths, filepath.Join(dir, fmt.Sprintf("%d.dxf", i)))
		if err := os.WriteFile(paths[i], b, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for _, d := range judge.DXF(t, paths...) {
		all = append(all, drawn(d))
	}
	return all
}

// written is the file of a piece.
func written(t *testing.T, pc piece.Piece) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Piece(&b, pc); err != nil {
		t.Fatalf("%s: %v", pc.ID, err)
	}
	return b.Bytes()
}

// farthest is how far a line that was read lies from the one meant, point by point.
func farthest(got [][2]float64, want []plane.Point) float64 {
	if len(got) != len(want) {
		return math.Inf(1)
	}
	far := 0.0
	for i, p := range want {
		far = math.Max(far, p.Dist(plane.Point{X: got[i][0], Y: got[i][1]}))
	}
	return far
}

// wanted lists the lines of a piece by what they are for.
func wanted(pc piece.Piece) map[string][][]plane.Point {
	w := map[string][][]plane.Point{Cut: {pc.CutLine()}}
	for _, h := range pc.Holes {
		w[Inner] = append(w[Inner], h)
	}
	if pc.Sewn() {
		w[Seam] = [][]plane.Point{pc.Outline}
	}
	for _, m := range pc.Marks {
		layer, ok := map[piece.Kind]string{piece.InnerOutline: Carve, piece.Feather: Feather, piece.Step: Step, piece.Dart: Dart,
			piece.LevelLine: Mark, piece.Notch: Mark, piece.CentreFront: Mark, piece.CentreBack: Mark, piece.Side: Mark}[m.Kind]
		seam := pc.Sewn() && slices.Contains([]piece.Kind{piece.CentreFront, piece.CentreBack, piece.Side}, m.Kind)
		if ok && !seam {
			w[layer] = append(w[layer], m.Points)
		}
	}
	return w
}

// sewn is a panel with an allowance, a notch and a balance line that is a seam.
func sewn() piece.Piece {
	return piece.Piece{
		ID: "C01", Name: "cover, panel 1", Material: "jersey cover", Count: 2, Outline: plane.Ring{{}, {X: 100}, {X: 100, Y: 300}, {Y: 300}},
		Marks: []piece.Mark{
			{Kind: piece.Allowance, Points: []plane.Point{{X: -20, Y: -20}, {X: 120, Y: -20}, {X: 120, Y: 320}, {X: -20, Y: 320}}},
			{Kind: piece.Notch, Points: []plane.Point{{X: 100, Y: 150}, {X: 110, Y: 150}}},
			{Kind: piece.CentreFront, Points: []plane.Point{{}, {Y: 300}}},
			{Kind: piece.Step, Points: []plane.Point{{X: 0, Y: 300}, {X: 100, Y: 300}}},
		},
	}
}

func TestAnotherProgramReadsEveryLine(t *testing.T) {
	pieces := append(plantest.Pieces(), sewn())
	var files [][]byte
	for _, pc := range pieces {
		files = append(files, written(t, pc))
	}
	for i, d := range read(t, files...) {
		pc := pieces[i]
		it, width, height, err := sheet.Alone(pc)
		if err != nil {
			t.Fatal(err)
		}
		if d.Version != "AC1009" || len(d.Errors) > 0 {
			t.Errorf("%s: version %s, faults %v", pc.ID, d.Version, d.Errors)
		}
		if want := [2][2]float64{{0, 0}, {width, height}}; math.Abs(d.Extents[1][0]-want[1][0])+math.Abs(d.Extents[1][1]-want[1][1]) > exact || d.Extents[0] != want[0] {
			t.Errorf("%s: extents %v, want %v", pc.ID, d.Extents, want)
		}
		for layer, lines := range wanted(pc) {
			for _, points := range lines {
				if !d.holds(layer, points, it) {
					t.Errorf("%s: a line of %d points on %s is not found", pc.ID, len(points), layer)
				}
			}
		}
		if last := d.Lines[len(d.Lines)-1]; last.Layer != Cut || count(d, Cut) != 1 || len(pc.Holes) != count(d, Inner) {
			t.Errorf("%s: %d edges, %d holes, last a line on %s", pc.ID, count(d, Cut), count(d, Inner), last.Layer)
		}
		words(t, it, d)
	}
}

// holds reports whether a line of a piece was read, where the drawing has it.
func (d drawn) holds(layer string, points []plane.Point, it sheet.Item) bool {
	moved := make([]plane.Point, len(points))
	for k, p := range points {
		moved[k] = it.OnPage(p)
	}
	closed := slices.Contains([]string{Cut, Inner, Seam, Carve}, layer)
	return slices.ContainsFunc(d.Lines, func(l judge.Line) bool {
		return l.Layer == layer && l.Closed == closed && farthest(l.Points, moved) <= exact
	})
}

func count(d drawn, layer string) int {
	n := 0
	for _, l := range d.Lines {
		if l.Layer == layer {
			n++
		}
	}
	return n
}

func words(t *testing.T, it sheet.Item, d drawn) {
	t.Helper()
	if len(d.Words) != len(it.Label.Words) || len(d.Words) == 0 {
		t.Errorf("%s: %d words, want %d", it.Piece.ID, len(d.Words), len(it.Label.Words))
		return
	}
	for i, w := range it.Label.Words {
		at, got := it.OnPage(w.At), d.Words[i]
		if got.Layer != Text || got.Text != w.Text || at.Dist(plane.Point{X: got.X, Y: got.Y}) > exact ||
			math.Abs(got.Height-w.Size*fonts.CapHeight) > exact || math.Abs(got.Turn-w.Turn*180/math.Pi) > 0.001 {
			t.Errorf("%s: %+v, want %+v", it.Piece.ID, got, w)
		}
	}
}

func TestEveryLayerIsInTheTable(t *testing.T) {
	d := read(t, written(t, sewn()))[0]
	for _, l := range drawing.Layers {
		if there := slices.Contains(d.Layers, strings.ToUpper(string(l))); there != (l != drawing.Sheet) {
			t.Errorf("layer %s: %v in %v", l, there, d.Layers)
		}
	}
}

func TestHostileWordsStayWords(t *testing.T) {
	for text, want := range map[string]string{
		"hem 2 % wider, 45°":       "hem 2 % wider, 45°",
		"%%u %%%d":                 "% %u % % %d",
		`\U+0041 \P {x}`:           `\U+0041 \P {x}`,
		"a^Jb ^ c":                 "a^Jb ^ c",
		"x\r\n  0\nEOF\n":          "x 0 EOF",
		"ß Ł Ω Ж ½":                "ß Ł Ω Ж ½",
		"\x00\u202e\u0085 evening": "evening",
		strings.Repeat("°", 37*2):  strings.Repeat("°", 36),
	} {
		pc := piece.Piece{ID: "A", Outline: plane.Ring{{}, {X: 400}, {X: 400, Y: 300}, {Y: 300}}}
		it, _, _, err := sheet.Alone(pc)
		if err != nil {
			t.Fatal(err)
		}
		it.Label.Words[0].Text = text
		f := &file{item: it}
		f.head(400, 300)
		f.pair(0, "SECTION")
		f.pair(2, "ENTITIES")
		f.entities()
		f.pair(0, "ENDSEC")
		f.pair(0, "EOF")
		if d := read(t, f.out.Bytes())[0]; len(d.Words) != 1 || d.Words[0].Text != want || len(d.Lines) != 1 {
			t.Errorf("%q is read as %+v and %d lines", text, d.Words, len(d.Lines))
		}
	}
}

func FuzzText(f *testing.F) {
	for _, s := range []string{"", "%%%", `\U+`, "^", "\r\n0\nEOF", "漢字 \U0001f457"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		e := escaped(s)
		if len(e) > longest || strings.Contains(e, "%%") || strings.ContainsFunc(e, func(r rune) bool { return r < ' ' || r > '~' }) || !utf8.ValidString(e) {
			t.Errorf("%q is written %q", s, e)
		}
	})
}

func TestTheSamePieceTwice(t *testing.T) {
	if !bytes.Equal(written(t, plantest.Panel()), written(t, plantest.Panel())) {
		t.Error("the same piece gave other bytes the second time")
	}
}

func TestAPieceWithoutAnOutlineIsRefused(t *testing.T) {
	var b bytes.Buffer
	for _, pc := range []piece.Piece{{ID: "x"}, {ID: "x", Outline: plane.Ring{{}, {X: math.NaN()}, {Y: 1}}}} {
		if err := Piece(&b, pc); err == nil || b.Len() > 0 {
			t.Errorf("%v: %v, %d bytes", pc.Outline, err, b.Len())
		}
	}
}

func BenchmarkPanel(b *testing.B) {
	for b.Loop() {
		var out bytes.Buffer
		if err := Piece(&out, plantest.Panel()); err != nil {
			b.Fatal(err)
		}
	}
}
