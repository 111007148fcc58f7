package sheet_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
	"understructure/patterns/plantest"
	"understructure/patterns/sheet"
)

func laid(t *testing.T, p plan.Plan, paper string) []sheet.Page {
	t.Helper()
	p.Paper, _ = sheet.Named(paper)
	pages, err := sheet.Lay(context.Background(), p, sheet.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return pages
}

func drawn(pg sheet.Page) *plantest.Recorder {
	r := &plantest.Recorder{}
	pg.Draw(r)
	return r
}

// printable is the page less the margin that printers leave blank.
func printable(pg sheet.Page) drawing.Box {
	return drawing.Box{Hi: plane.Point{X: pg.Width, Y: pg.Height}}.Grow(-9)
}

var papers = []string{"A4", "A3", "A2", "A1", "A0", "Letter", "Tabloid", "roll-610", "roll-914", "roll-1067"}

func TestEveryPieceOnce(t *testing.T) {
	p := plantest.Plan()
	for _, paper := range papers {
		whole, tiled := map[string]int{}, map[string]int{}
		for _, pg := range laid(t, p, paper) {
			for _, it := range pg.Items {
				for _, id := range []string{it.Piece.ID, it.Twin} {
					if it.Tile == nil {
						whole[id]++
					} else {
						tiled[id]++
					}
				}
			}
		}
		for _, pc := range p.Pieces {
			if whole[pc.ID] != 1 && (whole[pc.ID] != 0 || tiled[pc.ID] < 2) {
				t.Errorf("%s: piece %s lies %d times whole and on %d tiles", paper, pc.ID, whole[pc.ID], tiled[pc.ID])
			}
		}
	}
}

func TestNothingOverlapsOrLeavesThePage(t *testing.T) {
	for _, paper := range papers {
		for i, pg := range laid(t, plantest.Plan(), paper) {
			r := drawn(pg)
			for _, f := range r.Faults(printable(pg)) {
				t.Errorf("%s page %d: %s", paper, i+1, f)
			}
			for _, l := range r.Lines {
				for _, q := range l.Points {
					if !printable(pg).Contains(q) {
						t.Fatalf("%s page %d: a line on layer %q leaves the page at %v", paper, i+1, l.Layer, q)
					}
				}
			}
		}
	}
}

// No word stands on a cut line.
func TestWordsKeepOffCutLines(t *testing.T) {
	for _, paper := range []string{"A4", "A1", "roll-914"} {
		for i, pg := range laid(t, plantest.Plan(), paper) {
			r := drawn(pg)
			for _, w := range r.Words {
				for _, l := range r.Lines {
					if l.Layer != drawing.Cut && l.Layer != drawing.Holes {
						continue
					}
					for k := 1; k < len(l.Points); k++ {
						if !plantest.Apart(w.Corners(), l.Points[k-1:k+1]) {
							t.Fatalf("%s page %d: %q stands on a cut line near %v", paper, i+1, w.Text, l.Points[k])
						}
					}
				}
			}
		}
	}
}

func TestRulesAndTitleOnEveryPage(t *testing.T) {
	for _, paper := range papers {
		for i, pg := range laid(t, plantest.Plan(), paper) {
			var level, upright bool
			r := drawn(pg)
			for _, l := range r.Lines {
				if l.Layer == drawing.Sheet && len(l.Points) == 2 {
					d := l.Points[1].Sub(l.Points[0])
					level = level || math.Abs(d.X-sheet.Rule) < 1e-9 && d.Y == 0
					upright = upright || math.Abs(d.Y-sheet.Rule) < 1e-9 && d.X == 0
				}
			}
			if !level || !upright {
				t.Errorf("%s page %d: rules level %v, upright %v", paper, i+1, level, upright)
			}
			text := ""
			for _, w := range r.Words {
				text += w.Text + "\n"
			}
			for _, want := range []string{"INV.1872.4", "100 mm", sheet.ScaleNote, fmt.Sprintf("page %d of ", i+1)} {
				if !strings.Contains(text, want) {
					t.Errorf("%s page %d does not say %q", paper, i+1, want)
				}
			}
		}
	}
}

// The cores of all tiles hold the whole outline, once; the overlap is 15 mm.
func TestTilesHoldTheOutlineOnce(t *testing.T) {
	panel := plantest.Panel()
	for _, paper := range []string{"A4", "A3", "Letter", "roll-610"} {
		total := 0.0
		for _, pg := range laid(t, plan.Plan{Pieces: []piece.Piece{panel}}, paper) {
			for _, it := range pg.Items {
				if it.Tile == nil {
					total += panel.Outline.Perimeter()
					continue
				}
				for _, run := range it.Tile.Core.Cut(panel.Outline.Map(it.OnPage), true) {
					for k := 1; k < len(run); k++ {
						total += run[k].Dist(run[k-1])
					}
				}
				if it.Tile.Column > 0 {
					if o := 2 * (it.Tile.Core.Lo.X - it.Clip.Lo.X); math.Abs(o-sheet.Overlap) > 1e-9 {
						t.Errorf("%s: overlap %g mm, want %g", paper, o, sheet.Overlap)
					}
				}
			}
		}
		if want := panel.Outline.Perimeter(); math.Abs(total-want) > 1e-6 {
			t.Errorf("%s: the tiles hold %.6f mm of an outline of %.6f", paper, total, want)
		}
	}
}

// A frame has nothing in its middle and an L nothing in one corner; such tiles are not printed.
func TestEmptyTilesAreLeftOut(t *testing.T) {
	square := func(lo, hi float64) plane.Ring {
		return plane.Ring{{X: lo, Y: lo}, {X: hi, Y: lo}, {X: hi, Y: hi}, {X: lo, Y: hi}}
	}
	frame := piece.Piece{ID: "frame", Outline: square(0, 1200), Holes: []plane.Ring{square(50, 1150).Reverse()}}
	var tiles []sheet.Item
	pages := laid(t, plan.Plan{Pieces: []piece.Piece{frame}}, "A4")
	for _, pg := range pages {
		tiles = append(tiles, pg.Items...)
	}
	grid := tiles[0].Tile.Grid
	for i, pg := range pages {
		if want := fmt.Sprintf("of %d", len(tiles)); len(pg.Items) == 1 && len(pg.Panels) == 0 && !strings.HasSuffix(pg.Title.Piece, want) {
			t.Errorf("page %d has the title %q, want tiles %q", i+1, pg.Title.Piece, want)
		}
	}
	if want := 2*grid.Rows + 2*grid.Columns - 4; len(tiles) != want || grid.Count() != want {
		t.Errorf("%d tiles of %d × %d, %d counted; want the %d of the border", len(tiles), grid.Rows, grid.Columns, grid.Count(), want)
	}
	for _, it := range tiles {
		var r plantest.Recorder
		if it.Draw(&r); r.Lines[0].Layer != drawing.Cut {
			t.Errorf("tile %s has no cut line", it.Name())
		}
	}
}

// A nose that full tiles would leave a sliver of is kept whole by cutting elsewhere.
func TestNoTileIsASliverWhereThatCanBeHelped(t *testing.T) {
	const full = 179 - sheet.Overlap/2                     // on A4 from a millimetre left of a piece to the first seam
	nosed := piece.Piece{ID: "nosed", Outline: plane.Ring{ // an arm that needs a second column, and a nose lower down
		{}, {X: 160}, {X: 160, Y: 90}, {X: full, Y: 100}, {X: 160, Y: 110}, {X: 160, Y: 300}, {X: 300, Y: 300}, {X: 300, Y: 400}, {Y: 400},
	}}
	for _, pg := range laid(t, plan.Plan{Pieces: []piece.Piece{nosed}}, "A4") {
		for _, it := range pg.Items {
			box := drawing.Empty()
			for _, run := range it.Tile.Core.Cut(it.Piece.Outline.Map(it.OnPage), true) {
				box = box.Round(run...)
			}
			if w := math.Min(box.Width(), box.Height()); w < 2 {
				t.Errorf("%s shows %.2f mm", it.Name(), w)
			}
		}
	}
}

func TestTurnedOnlyToSaveTiles(t *testing.T) {
	bar := func(w, h float64) piece.Piece {
		return piece.Piece{ID: "bar", Outline: plane.Ring{{}, {X: w}, {X: w, Y: h}, {Y: h}}}
	}
	for _, c := range []struct {
		w, h   float64
		turned bool
		pieces int
	}{{170, 240, false, 1}, {240, 170, true, 1}, {100, 60, false, 1}, {160, 160, false, 1}, {400, 400, false, 6}} {
		var items []sheet.Item
		for _, pg := range laid(t, plan.Plan{Pieces: []piece.Piece{bar(c.w, c.h)}}, "A4") {
			items = append(items, pg.Items...)
		}
		if len(items) != c.pieces || items[0].Turned != c.turned {
			t.Errorf("%g × %g: %d tiles, turned %v; want %d, %v", c.w, c.h, len(items), items[0].Turned, c.pieces, c.turned)
		}
	}
}

func TestRollEndsWithItsPieces(t *testing.T) {
	p := plantest.Plan()
	pages := laid(t, p, "roll-914")
	if len(pages) != 1 || pages[0].Width != 914 || pages[0].Height > 1000 {
		t.Errorf("%d pages, the first %g × %g mm", len(pages), pages[0].Width, pages[0].Height)
	}
	for range 4 {
		p.Pieces = append(p.Pieces, p.Pieces...)
	}
	for _, pg := range laid(t, p, "roll-914") {
		if pg.Height > sheet.Most {
			t.Errorf("a page of %g mm, want at most %d", pg.Height, sheet.Most)
		}
	}
}

// Hundreds of pieces of any size never lie nearer to each other than a hand with scissors needs, by the word of an
// independent library of polygons, and always inside the field.
func TestPackedPiecesLieApart(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 11))
	for round := range 8 {
		var p plan.Plan
		for i := range 60 {
			w, h := 8+rnd.Float64()*160, 8+rnd.Float64()*230
			p.Pieces = append(p.Pieces, piece.Piece{ID: fmt.Sprintf("P%02d", i), Name: "slip", Material: "card", Count: 1,
				Outline: plane.Ring{{}, {X: w}, {X: w * rnd.Float64(), Y: h}}})
		}
		for n, pg := range laid(t, p, papers[round%4]) {
			for i, a := range pg.Items {
				for _, b := range pg.Items[:i] {
					if d := apart(t, a, b); d < 6-1e-3 {
						t.Fatalf("round %d page %d: %s and %s lie %.4f mm apart", round, n+1, a.Name(), b.Name(), d)
					}
				}
			}
			for _, f := range drawn(pg).Faults(printable(pg)) {
				t.Errorf("round %d page %d: %s", round, n+1, f)
			}
		}
	}
}

// apart is the distance of what two items show of their pieces, as reckoned by simplefeatures (P. Stace, an implementation of
// the Simple Features standard, OGC 06-103r4, 2011).
func apart(t *testing.T, a, b sheet.Item) float64 {
	t.Helper()
	d, ok := geom.Distance(shown(t, a), shown(t, b))
	if !ok {
		t.Fatalf("%s or %s shows nothing", a.Name(), b.Name())
	}
	return d
}

func shown(t *testing.T, it sheet.Item) geom.Geometry {
	t.Helper()
	g := polygon(t, it.Piece.CutLine().Map(it.OnPage))
	if it.Tile == nil {
		return g
	}
	g, err := geom.Intersection(g, polygon(t, it.Clip.Corners()))
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func polygon(t *testing.T, r plane.Ring) geom.Geometry {
	t.Helper()
	var xy []float64
	for _, p := range append(r[:len(r):len(r)], r[0]) {
		xy = append(xy, p.X, p.Y)
	}
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(xy, geom.DimXY))}).AsGeometry()
}

func TestLayRefuses(t *testing.T) {
	p := plantest.Plan()
	p.Paper.Width = 90
	if _, err := sheet.Lay(context.Background(), p, sheet.Options{}); err == nil || !strings.Contains(err.Error(), "90") {
		t.Errorf("a paper of 90 mm: %v", err)
	}
	for name, ring := range map[string]plane.Ring{"empty": nil, "line": {{}, {X: 1}}, "nowhere": {{}, {X: 1}, {Y: math.NaN()}}, "endless": {{}, {X: 1}, {Y: 1e9}}} {
		p := plan.Plan{Paper: sheet.Papers[0], Pieces: []piece.Piece{{ID: name, Outline: ring}}}
		if _, err := sheet.Lay(context.Background(), p, sheet.Options{}); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s outline: %v", name, err)
		}
	}
}

// Whatever is written on a record, the words stay on the page and off each other.
func FuzzWords(f *testing.F) {
	for _, s := range []string{"", "Day bodice", strings.Repeat("taffeta ", 300), "\x00\x1b[2J\u202e\u2066", "<b>&\"'</b>", "שמלה فستان", "漢字\U0001f457", "\xff\xfe", "%PDF (\\) endobj", strings.Repeat("W", 500)} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		p := plantest.Plan()
		p.Pieces = p.Pieces[3:]
		p.Object.Number, p.Object.Title, p.Object.Notice = s, s, s
		for i := range p.Pieces {
			p.Pieces[i].ID, p.Pieces[i].Name, p.Pieces[i].Material = s, s, s
			for k := range p.Pieces[i].Marks {
				p.Pieces[i].Marks[k].Label = s
			}
		}
		p.Paper, _ = sheet.Named("A3")
		pages, err := sheet.Lay(context.Background(), p, sheet.Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, pg := range pages {
			for _, fault := range drawn(pg).Faults(printable(pg)) {
				t.Error(fault)
			}
		}
	})
}

func BenchmarkLay(b *testing.B) {
	p := plantest.Plan()
	for b.Loop() {
		if _, err := sheet.Lay(context.Background(), p, sheet.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
