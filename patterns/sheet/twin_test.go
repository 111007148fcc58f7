package sheet_test

import (
	"context"
	"errors"
	"reflect"
	"strings"
	"testing"

	"understructure/geometry/plane"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
	"understructure/patterns/plantest"
	"understructure/patterns/sheet"
)

// wing is a shape that is not its own mirror image.
func wing(id string, over bool, grown float64) piece.Piece {
	r := plane.Ring{{}, {X: 90 + grown}, {X: 60, Y: 40}, {X: 5, Y: 70}}
	if over {
		r = r.Map(func(p plane.Point) plane.Point { return plane.Point{X: 90 - p.X, Y: p.Y} }).Reverse()
	}
	return piece.Piece{ID: id, Name: "wing", Material: "wadding 6 mm", Thickness: 6, Count: 1, Layer: 1, Outline: r}
}

// A template serves for two pieces where one is the other turned over, to a twentieth of a millimetre; it names both.
func TestATemplateServesForItsMirrorImage(t *testing.T) {
	other := wing("left", true, 0)
	other.Material = "wadding 3 mm"
	begun := wing("left", true, 0)
	begun.Outline = append(begun.Outline[2:], begun.Outline[:2]...)
	for name, c := range map[string]struct {
		second piece.Piece
		shared bool
	}{
		"begun elsewhere":        {begun, true},
		"turned over":            {wing("left", true, 0), true},
		"0.04 mm longer":         {wing("left", true, 0.04), true},
		"0.2 mm longer":          {wing("left", true, 0.2), false},
		"the same, not turned":   {wing("left", false, 0), false},
		"of another material":    {other, false},
		"with one corner dented": {dented(wing("left", true, 0)), false},
	} {
		pages := laid(t, plan.Plan{Pieces: []piece.Piece{wing("right", false, 0), c.second}}, "A4")
		if got := len(pages[0].Items); (got == 1) != c.shared {
			t.Errorf("%s: %d templates", name, got)
		}
		var text strings.Builder
		for _, w := range drawn(pages[0]).Words {
			text.WriteString(w.Text + "\n")
		}
		for _, id := range []string{"right", "left"} {
			if !strings.Contains(text.String(), id) {
				t.Errorf("%s: nothing is said of %s", name, id)
			}
		}
	}
}

// Marks may have been drawn in another order and from the other end, but an arrow has a direction, and all lie where they should.
func TestMarksAndSeamsAreTurnedOverToo(t *testing.T) {
	level := piece.Mark{Kind: piece.LevelLine, Label: "waist", Points: []plane.Point{{X: 10, Y: 5}, {X: 60, Y: 8}}}
	up := piece.Mark{Kind: piece.Up, Points: []plane.Point{{X: 40, Y: 10}, {X: 40, Y: 30}}}
	over := func(m piece.Mark) piece.Mark {
		m.Points = plane.Ring(m.Points).Map(func(p plane.Point) plane.Point { return plane.Point{X: 90 - p.X, Y: p.Y} })
		return m
	}
	backward := func(m piece.Mark) piece.Mark { m.Points = plane.Ring(m.Points).Reverse(); return m }
	seam := piece.Seam{To: "middle", Kind: "sewn", Length: 90, Points: []plane.Point{{}, {X: 90}}}
	longer := seam
	longer.Length = 91
	right := wing("right", false, 0)
	right.Marks, right.Seams = []piece.Mark{level, up}, []piece.Seam{seam}
	for name, c := range map[string]struct {
		marks  []piece.Mark
		seam   piece.Seam
		shared bool
	}{
		"in order":             {[]piece.Mark{over(level), over(up)}, seam, true},
		"in another order":     {[]piece.Mark{over(up), backward(over(level))}, seam, true},
		"an arrow upside down": {[]piece.Mark{over(level), backward(over(up))}, seam, false},
		"a line not turned":    {[]piece.Mark{level, over(up)}, seam, false},
		"a longer seam":        {[]piece.Mark{over(level), over(up)}, longer, false},
	} {
		left := wing("left", true, 0)
		left.Marks, left.Seams = c.marks, []piece.Seam{c.seam}
		if got := len(laid(t, plan.Plan{Pieces: []piece.Piece{right, left}}, "A4")[0].Items); (got == 1) != c.shared {
			t.Errorf("%s: %d templates", name, got)
		}
	}
}

// Both pieces are cut with the one template, and it says so.
func TestATemplateForTwoSaysHowManyToCut(t *testing.T) {
	pages := laid(t, plan.Plan{Pieces: []piece.Piece{wing("right", false, 0), wing("left", true, 0)}}, "A4")
	var text strings.Builder
	for _, w := range drawn(pages[0]).Words {
		text.WriteString(w.Text + "\n")
	}
	for _, want := range []string{"wadding 6 mm, cut 2\n", "one turned over: left\n"} {
		if strings.Count(text.String(), want) < 1 {
			t.Errorf("%q is not said, but\n%s", want, text.String())
		}
	}
}

func dented(p piece.Piece) piece.Piece {
	p.Outline[2].Y -= 1
	return p
}

// Where pieces are tiled, the first page shows each of them, with the pages that its tiles lie on.
func TestMapsKnowThePages(t *testing.T) {
	pages := laid(t, plan.Plan{Pieces: []piece.Piece{plantest.Panel()}}, "A4")
	if len(pages[0].Panels) != 1 || len(pages[0].Panels[0].Maps) != 1 {
		t.Fatalf("the first page shows how pieces go together in %v", pages[0].Panels)
	}
	grid := pages[0].Panels[0].Maps[0].Grid
	found := 0
	for i, pg := range pages {
		for _, it := range pg.Items {
			if got := grid.Pages[it.Tile.Row][it.Tile.Column]; got != i+1 {
				t.Errorf("%s lies on page %d, and the map says %d", it.Name(), i+1, got)
			}
			found++
		}
	}
	if found != grid.Count() || found < 2 {
		t.Errorf("%d tiles are printed, the map counts %d", found, grid.Count())
	}
	if whole := laid(t, plan.Plan{Pieces: []piece.Piece{plantest.Panel()}}, "A0"); len(whole) != 1 || len(whole[0].Panels) != 0 {
		t.Errorf("a piece that fits takes %d pages, %d maps", len(whole), len(whole[0].Panels))
	}
}

// Both tiles of a seam have its crosses at the same places of the piece, so that nothing but the crosses is needed to join them.
func TestCrossesMeet(t *testing.T) {
	type side struct{ fromRow, fromColumn, toRow, toColumn int }
	for _, paper := range []string{"A4", "A3", "Letter"} {
		seen := map[side][2]plane.Point{}
		for _, pg := range laid(t, plan.Plan{Pieces: []piece.Piece{plantest.Panel()}}, paper) {
			for _, it := range pg.Items {
				if it.Tile == nil {
					continue
				}
				for _, s := range it.Tile.Seams {
					seen[side{it.Tile.Row, it.Tile.Column, s.Row, s.Column}] = [2]plane.Point{s.From.Sub(it.Offset), s.To.Sub(it.Offset)}
				}
			}
		}
		if len(seen) == 0 {
			t.Fatalf("%s: no seam", paper)
		}
		for k, a := range seen {
			b, ok := seen[side{k.toRow, k.toColumn, k.fromRow, k.fromColumn}]
			if !ok || a[0].Dist(b[1]) > 1e-9 || a[1].Dist(b[0]) > 1e-9 {
				t.Errorf("%s: seam %+v has crosses at %v, its neighbour at %v", paper, k, a, b)
			}
		}
	}
}

func TestTheSamePlanGivesTheSamePages(t *testing.T) {
	p := plantest.Plan()
	if a, b := laid(t, p, "A3"), laid(t, p, "A3"); !reflect.DeepEqual(a, b) {
		t.Error("two layouts of one plan differ")
	}
}

func TestLayingCanBeCalledOff(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	p := plantest.Plan()
	p.Paper, _ = sheet.Named("A4")
	if _, err := sheet.Lay(ctx, p, sheet.Options{}); !errors.Is(err, context.Canceled) {
		t.Errorf("after it was called off: %v", err)
	}
}

func TestLayingTellsHowFarItIs(t *testing.T) {
	p := plantest.Plan()
	p.Paper, _ = sheet.Named("A4")
	last := -1.0
	_, err := sheet.Lay(context.Background(), p, sheet.Options{Progress: func(done float64) {
		if done < last || done > 1 {
			t.Errorf("%g is done after %g", done, last)
		}
		last = done
	}})
	if err != nil || last <= 0 {
		t.Errorf("told up to %g, %v", last, err)
	}
}
