package vector

import (
	"bytes"
	"encoding/xml"
	"math"
	"os"
	"path/filepath"
	"strconv"
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

// The rule of 100 mm is 100 mm within 0.05 mm as drawn by three programs of other makes.
func TestRuleAsDrawnByOthers(t *testing.T) {
	pages, pdf := templates(t, small(), "A4")
	level, upright := judge.Rules(pages[0])
	for _, name := range judge.Renderers {
		g := judge.Render(t, name, pdf, 1)
		for _, r := range []struct {
			name string
			got  float64
		}{
			{"level", g.Middle(level[1], true) - g.Middle(level[0], true)},
			{"upright", g.Middle(upright[1], false) - g.Middle(upright[0], false)},
		} {
			t.Logf("%s: %s rule %.3f mm", name, r.name, r.got)
			if math.Abs(r.got-100) > 0.05 {
				t.Errorf("%s: %s rule measures %.3f mm, want 100 within 0.05", name, r.name, r.got)
			}
		}
	}
}

// traced is what mutool says of one page: every stroked path, in millimetres from the lower left.
type traced struct {
	lines [][]plane.Point
	width []float64 // of the pen, in millimetres
}

func trace(t *testing.T, pdf string) []traced {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(judge.Run(t, "mutool", "trace", pdf)))
	d.Strict = false
	var pages []traced
	var height float64
	var m [6]float64
	for {
		tok, err := d.Token()
		if err != nil {
			break
		}
		e, ok := tok.(xml.StartElement)
		if !ok {
			continue
		}
		a := map[string]string{}
		for _, k := range e.Attr {
			a[k.Name.Local] = k.Value
		}
		number := func(name string) float64 { v, _ := strconv.ParseFloat(a[name], 64); return v }
		switch e.Name.Local {
		case "page":
			box := strings.Fields(a["mediabox"])
			height, _ = strconv.ParseFloat(box[3], 64)
			pages = append(pages, traced{})
		case "stroke_path":
			for i, f := range strings.Fields(a["transform"]) {
				m[i], _ = strconv.ParseFloat(f, 64)
			}
			pg := &pages[len(pages)-1]
			pg.lines = append(pg.lines, nil)
			pg.width = append(pg.width, number("linewidth")*m[0]/points)
		case "moveto", "lineto":
			pg := &pages[len(pages)-1]
			if len(pg.lines) == 0 {
				continue
			}
			x, y := number("x"), number("y")
			p := plane.Point{X: (m[0]*x + m[2]*y + m[4]) / points, Y: (height - (m[1]*x + m[3]*y + m[5])) / points}
			last := len(pg.lines) - 1
			pg.lines[last] = append(pg.lines[last], p)
		}
	}
	return pages
}

// Read back by another program and brought back to the piece, every tile's cut line lies on the
// outline, and the parts between the seams add up to it: the seams join.
func TestSeamsJoin(t *testing.T) {
	panel := plantest.Panel()
	for _, paper := range []string{"A4", "Letter", "roll-610"} {
		pages, pdf := templates(t, plan.Plan{Pieces: []piece.Piece{panel}}, paper)
		read := trace(t, pdf)
		if len(read) != len(pages) {
			t.Fatalf("%s: %d pages read, %d written", paper, len(read), len(pages))
		}
		total, worst := 0.0, 0.0
		for i, pg := range pages {
			for k, l := range read[i].lines {
				if math.Abs(read[i].width[k]-0.5) > 1e-3 {
					continue
				}
				it := itemAt(t, pg, l[len(l)/2])
				outline, hole := panel.Outline.Map(it.OnPage), panel.Holes[0].Map(it.OnPage)
				for _, p := range l {
					worst = math.Max(worst, math.Min(away(p, outline), away(p, hole)))
				}
				if away(l[0], outline) < 0.05 {
					for _, run := range coreOf(it).Cut(l, false) {
						for j := 1; j < len(run); j++ {
							total += run[j].Dist(run[j-1])
						}
					}
				}
			}
		}
		want := panel.Outline.Perimeter()
		t.Logf("%s: %d pages, farthest from the outline %.4f mm, length %.3f of %.3f mm", paper, len(pages), worst, total, want)
		if worst > 0.05 || math.Abs(total-want) > 0.1 {
			t.Errorf("%s: farthest from the outline %.4f mm, length %.3f of %.3f mm", paper, worst, total, want)
		}
	}
}

// itemAt is the tile whose outline or hole a place on a page lies nearest to.
func itemAt(t *testing.T, pg sheet.Page, at plane.Point) sheet.Item {
	t.Helper()
	var best sheet.Item
	least := math.Inf(1)
	for _, it := range pg.Items {
		for _, r := range append([]plane.Ring{it.Piece.Outline}, it.Piece.Holes...) {
			if d := away(at, r.Map(it.OnPage)); d < least {
				best, least = it, d
			}
		}
	}
	if math.IsInf(least, 1) {
		t.Fatalf("a cut line at %v on a page without pieces", at)
	}
	return best
}

func coreOf(it sheet.Item) drawing.Box {
	if it.Tile == nil {
		return it.Clip
	}
	return it.Tile.Core
}

// away is the distance of a point from a closed line.
func away(p plane.Point, ring plane.Ring) float64 {
	best := math.Inf(1)
	for i, a := range ring {
		d := ring[(i+1)%len(ring)].Sub(a)
		s := math.Max(0, math.Min(1, p.Sub(a).Dot(d)/d.Dot(d)))
		best = math.Min(best, p.Dist(a.Add(d.Mul(s))))
	}
	return best
}

// The page sizes read back are those of the paper, up to the longest roll.
func TestPageSizes(t *testing.T) {
	for _, paper := range []string{"A4", "A0", "Tabloid", "roll-1067"} {
		p := plantest.Plan()
		if paper == "roll-1067" {
			for range 4 {
				p.Pieces = append(p.Pieces, p.Pieces...)
			}
		}
		pages, pdf := templates(t, p, paper)
		info := string(judge.Run(t, "pdfinfo", "-box", "-f", "1", "-l", "1", pdf)) // the size itself is told to six digits only
		_, box, _ := strings.Cut(info, "MediaBox:")
		f := strings.Fields(box)
		w, _ := strconv.ParseFloat(f[2], 64)
		h, _ := strconv.ParseFloat(f[3], 64)
		if math.Abs(w/points-pages[0].Width) > 0.01 || math.Abs(h/points-pages[0].Height) > 0.01 {
			t.Errorf("%s: %g × %g points, want %g × %g mm", paper, w, h, pages[0].Width, pages[0].Height)
		}
	}
}

// Drawn at 20 pixels to the millimetre by another program, the cut line of a slice is as large as
// the slice.
func TestSVGSize(t *testing.T) {
	slice := plantest.Pieces()[5]
	slice.Marks = nil
	var b bytes.Buffer
	if err := SVG(&b, slice, Meta{Title: "slice"}); err != nil {
		t.Fatal(err)
	}
	out := filepath.Join(t.TempDir(), "slice.png")
	judge.Run(t, "rsvg-convert", "-d", "508", "-p", "508", "-b", "white", "-o", out, file(t, "slice.svg", b.Bytes()))
	lo, hi := slice.Outline.Bounds()
	box := inked(t, out)
	t.Logf("inked %.3f × %.3f mm", box.Width()/20, box.Height()/20)
	if w, h := box.Width()/20, box.Height()/20; math.Abs(w-(hi.X-lo.X+0.5)) > 0.11 || math.Abs(h-(hi.Y-lo.Y+0.5)) > 0.11 {
		t.Errorf("%.3f × %.3f mm of ink, want %.3f × %.3f", w, h, hi.X-lo.X+0.5, hi.Y-lo.Y+0.5)
	}
	if _, err := os.Stat(out); err != nil {
		t.Fatal(err)
	}
}
