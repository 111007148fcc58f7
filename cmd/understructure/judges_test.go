package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"understructure/app/record"
	"understructure/geometry/plane"
	"understructure/patterns/judge"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
	"understructure/patterns/sheet"
	"understructure/patterns/vector"
)

// Programs of other makes read everything that is made of every demonstration, and of one that is bevelled.
func TestOthersReadWhatIsWritten(t *testing.T) {
	demos, _ := filepath.Glob("../../assets/demo-*.json")
	if len(demos) < 4 {
		t.Fatal(demos)
	}
	for _, path := range append(demos, bevelled(t)) {
		t.Run(strings.TrimSuffix(filepath.Base(path), ".json"), func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			if code, _, errors := truly("templates", path, "--to", dir); code != done {
				t.Fatalf("exit %d: %s", code, errors)
			}
			p := planIn(t, dir)
			papers(t, dir, p)
			rulesAndSeams(t, dir, p)
			pieces(t, dir, p)
			bodies(t, dir, p)
		})
	}
}

// bevelled is a demonstration of slices that are to be bevelled.
func bevelled(t *testing.T) string {
	t.Helper()
	r, err := record.Load("../../assets/demo-three-values.json")
	if err != nil {
		t.Fatal(err)
	}
	r.Mount.Build, r.Mount.Step = "slices", "bevel"
	path := filepath.Join(t.TempDir(), "bevelled.json")
	if err := record.Save(path, r); err != nil {
		t.Fatal(err)
	}
	return path
}

func planIn(t *testing.T, dir string) (p plan.Plan) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(dir, "plan.json"))
	if err == nil {
		err = json.Unmarshal(text, &p)
	}
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// papers are sound, an archive takes them, and every piece is found by its name.
func papers(t *testing.T, dir string, p plan.Plan) {
	t.Helper()
	for _, name := range []string{"record.pdf", "templates.pdf"} {
		path := filepath.Join(dir, name)
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		for _, fault := range judge.Archive(t, path, text) {
			t.Errorf("%s: %s", name, fault)
		}
	}
	words := strings.Fields(string(judge.Run(t, "pdftotext", filepath.Join(dir, "templates.pdf"), "-")))
	for _, pc := range p.Pieces {
		if !slices.Contains(words, pc.ID) {
			t.Errorf("%s is not found in the templates", pc.ID)
		}
	}
}

// rulesAndSeams are true: on the paper of the record, and on A4, where large pieces are cut into tiles.
func rulesAndSeams(t *testing.T, dir string, p plan.Plan) {
	t.Helper()
	own, err := sheet.Lay(context.Background(), p, sheet.Options{})
	if err != nil {
		t.Fatal(err)
	}
	high := own[0].Height
	if p.Paper.Roll { // plan.json is rounded, so that pieces may lie otherwise when they are laid anew, and the page end elsewhere
		high = wholeHeight(t, filepath.Join(dir, "templates.pdf"))
	}
	for _, by := range []string{"pdftoppm", "gs"} {
		rules(t, by+" on "+p.Paper.Name, own[0], judge.Corner(t, by, filepath.Join(dir, "templates.pdf"), 1, high))
	}
	p.Paper, _ = sheet.Named("A4")
	pages, err := sheet.Lay(context.Background(), p, sheet.Options{})
	if err != nil {
		t.Fatal(err)
	}
	s, found := judge.FirstSeam(pages)
	if !found {
		t.Fatal("no two tiles show the same edge")
	}
	var b bytes.Buffer
	if err := vector.PDF(&b, []sheet.Page{pages[s.Pages[0]], pages[s.Pages[1]]}, vector.Meta{Title: "tiles"}); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(dir, "tiles.pdf")
	if err := os.WriteFile(path, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, by := range judge.Renderers {
		var off [2]float64 // of the edge as drawn from the edge as it is meant
		for k := range s.Pages {
			drawn := judge.Render(t, by, path, k+1)
			rules(t, fmt.Sprint(by, " on tile ", k+1), pages[s.Pages[k]], drawn)
			meant := s.At[k].X
			if s.Sideways {
				meant = s.At[k].Y
			}
			off[k] = drawn.Middle(s.At[k], !s.Sideways) - meant
		}
		t.Logf("%s: seam of %s joins within %.3f mm", by, pages[s.Pages[0]].Items[0].Piece.ID, math.Abs(off[0]-off[1]))
		if d := math.Abs(off[0] - off[1]); !(d <= 0.1) || math.Abs(off[0]) > 0.1 {
			t.Errorf("%s: an edge of %s is %.3f mm off on one tile and %.3f on the next", by, pages[s.Pages[0]].Items[0].Piece.ID, off[0], off[1])
		}
	}
}

// wholeHeight is how high the first page of a file is, which on a roll is whole millimetres.
func wholeHeight(t *testing.T, pdf string) float64 {
	t.Helper()
	var wide, high float64
	_, size, _ := strings.Cut(string(judge.Run(t, "pdfinfo", pdf)), "Page size:")
	if _, err := fmt.Sscanf(strings.TrimSpace(size), "%g x %g pts", &wide, &high); err != nil {
		t.Fatal(err)
	}
	return math.Round(high / 72 * 25.4)
}

func rules(t *testing.T, by string, pg sheet.Page, drawn judge.Picture) {
	t.Helper()
	level, upright := judge.Rules(pg)
	across := drawn.Middle(level[1], true) - drawn.Middle(level[0], true)
	up := drawn.Middle(upright[1], false) - drawn.Middle(upright[0], false)
	if !(math.Abs(across-sheet.Rule) <= 0.05) || !(math.Abs(up-sheet.Rule) <= 0.05) {
		t.Errorf("%s: rules of %.3f and %.3f mm", by, across, up)
	}
}

// pieces are in DXF what they are in the plan, within 0.01 mm, with both outlines and the pins of a slice; and the same
// layers are in SVG.
func pieces(t *testing.T, dir string, p plan.Plan) {
	t.Helper()
	var paths []string
	for _, pc := range p.Pieces {
		paths = append(paths, filepath.Join(dir, "dxf", pc.ID+".dxf"))
	}
	for i, d := range judge.DXF(t, paths...) {
		pc := p.Pieces[i]
		lines := map[string][][]plane.Point{"CUT": {pc.CutLine()}}
		for _, h := range pc.Holes {
			lines["HOLES"] = append(lines["HOLES"], h)
		}
		if pc.Sewn() {
			lines["SEAMS"] = [][]plane.Point{pc.Outline}
		}
		svg, err := os.ReadFile(filepath.Join(dir, "svg", pc.ID+".svg"))
		if err != nil {
			t.Fatal(err)
		}
		pins := 0
		for _, m := range pc.Marks {
			switch m.Kind {
			case piece.InnerOutline:
				lines["SECOND"] = append(lines["SECOND"], m.Points)
			case piece.Pin:
				pins += len(m.Points)
			}
		}
		for layer, want := range lines {
			if far := apart(d.On(layer), want); !(far <= 0.01) {
				t.Errorf("%s: %s is %.4f mm off", pc.ID, layer, far)
			}
			if !bytes.Contains(svg, []byte(`<g id="`+strings.ToLower(layer)+`">`)) {
				t.Errorf("%s: no %s in SVG", pc.ID, layer)
			}
		}
		if len(d.Errors) > 0 || len(d.On("MARKS")) < 2*pins {
			t.Errorf("%s: %d lines for %d pins; faults %v", pc.ID, len(d.On("MARKS")), pins, d.Errors)
		}
	}
	if strings.Contains(t.Name(), "bevelled") && !slices.ContainsFunc(p.Pieces, func(pc piece.Piece) bool {
		return slices.ContainsFunc(pc.Marks, func(m piece.Mark) bool { return m.Kind == piece.InnerOutline })
	}) {
		t.Error("no slice has both its outlines")
	}
}

// apart is how far lines lie from others after a common move, point by point; NaN where their points do not match.
func apart(got []judge.Line, want [][]plane.Point) float64 {
	if len(got) != len(want) {
		return math.NaN()
	}
	far := 0.0
	for k, line := range want {
		if len(got[k].Points) != len(line) {
			return math.NaN()
		}
		at := func(i int) plane.Point { return plane.Point{X: got[k].Points[i][0], Y: got[k].Points[i][1]} }
		move := plane.Point{X: got[0].Points[0][0], Y: got[0].Points[0][1]}.Sub(want[0][0])
		for i, q := range line {
			far = math.Max(far, at(i).Dist(q.Add(move)))
		}
	}
	return far
}

// bodies have nothing to mend, and hold what the plan's outlines hold within half a per cent, each layer between two
// of them a frustum of heights h and faces A and B: h/3·(A+√(AB)+B) (Moscow Mathematical Papyrus, problem 14).
func bodies(t *testing.T, dir string, p plan.Plan) {
	t.Helper()
	space := func(heights []float64, rings []plane.Ring) (v float64) {
		for i := 1; i < len(heights); i++ {
			if a, b := rings[i-1].Area(), rings[i].Area(); a > 0 && b > 0 {
				v += (heights[i] - heights[i-1]) / 3 * (a + math.Sqrt(a*b) + b)
			}
		}
		return v
	}
	want := map[string]float64{"mount.stl": space(p.Surface.Heights, p.Surface.Built)}
	if p.Skirt != nil {
		want["skirt-support.stl"] = space(p.Skirt.Heights, p.Skirt.Support)
	}
	for name, volume := range want {
		found := judge.Mesh(t, filepath.Join(dir, name))
		for _, fault := range []string{"Degenerate facets", "Edges fixed", "Facets removed", "Facets added", "Facets reversed", "Backwards edges", "Normals fixed", "Total disconnected facets"} {
			if n, said := found[fault]; !said || n != 0 {
				t.Errorf("%s: %s: %v (said: %v)", name, fault, n, said)
			}
		}
		if got := found["Volume"]; math.Abs(got-volume) > 0.005*volume || found["Number of parts"] != 1 {
			t.Errorf("%s: %.0f mm³ in %v parts, want %.0f in one", name, got, found["Number of parts"], volume)
		}
	}
}

func TestTheTestPageIsOfItsPaper(t *testing.T) {
	path := filepath.Join(t.TempDir(), "page.pdf")
	if code, _, errors := truly("test-page", "--to", path, "--paper", "A3"); code != done {
		t.Fatalf("exit %d: %s", code, errors)
	}
	if info := string(judge.Run(t, "pdfinfo", path)); !strings.Contains(info, "(A3)") || !strings.Contains(info, "Pages:           1\n") {
		t.Error(info)
	}
}
