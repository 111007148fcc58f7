package testpage

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/judge"
	"understructure/patterns/plan"
	"understructure/patterns/plantest"
	"understructure/patterns/sheet"
)

// every is every paper with a name, and the least one without.
var every = append(sheet.Papers[:len(sheet.Papers):len(sheet.Papers)], plan.Paper{Name: "least", Width: sheet.LeastWidth, Height: sheet.LeastHeight})

// On every paper the words keep off each other and inside the margins, and there are a rule across and one up that
// hold 100 mm.
func TestEveryPaperHasWordsAndRules(t *testing.T) {
	for _, p := range every {
		if p.Roll {
			p.Height = roll
		}
		var r plantest.Recorder
		draw(&r, p)
		page := drawing.Box{Hi: plane.Point{X: p.Width, Y: p.Height}}.Grow(-9)
		for _, f := range r.Faults(page) {
			t.Errorf("%s: %s", p.Name, f)
		}
		var across, up, crossed int
		for _, l := range r.Lines {
			for _, q := range l.Points {
				if !page.Contains(q) {
					t.Fatalf("%s: a line at %v", p.Name, q)
				}
			}
			switch d := l.Points[1].Sub(l.Points[0]); {
			case d.X >= 100 && d.Y == 0 && !l.Closed && l.Points[0].X == corner:
				across++
			case d.Y >= 100 && d.X == 0 && !l.Closed:
				up++
			case math.Abs(d.Norm()-141.421) < 0.001: // 100 mm times the root of 2 (Euclid, Elements I 47)
				crossed++
			}
		}
		if want := map[bool]int{true: 2}[p.Name != "least"]; across != 1 || up != 1 || crossed != want {
			t.Errorf("%s: %d rules across, %d up, %d diagonals", p.Name, across, up, crossed)
		}
	}
}

// A4 is drawn by three programs of other makes: every 100 mm is 100 mm within 0.05 mm, and the page says what to do.
func TestTheRulesAsDrawnByOthers(t *testing.T) {
	var b bytes.Buffer
	if err := Write(&b, sheet.Papers[0]); err != nil {
		t.Fatal(err)
	}
	pdf := filepath.Join(t.TempDir(), "test.pdf")
	if err := os.WriteFile(pdf, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	tick := func(x, y float64) plane.Point { return plane.Point{X: corner + x, Y: corner + y} }
	for _, name := range judge.Renderers {
		g := judge.Render(t, name, pdf, 1)
		for _, c := range []struct {
			from, to plane.Point
			across   bool
			length   float64
		}{
			{tick(0, -1), tick(100, -1), true, 100}, {tick(0, -1), tick(150, -1), true, 150},
			{tick(-1, 0), tick(-1, 100), false, 100}, {tick(-1, 0), tick(-1, 250), false, 250},
		} {
			got := g.Middle(c.to, c.across) - g.Middle(c.from, c.across)
			if math.Abs(got-c.length) > 0.05 {
				t.Errorf("%s: %.3f mm, want %g", name, got, c.length)
			}
		}
	}
	judge.Run(t, "qpdf", "--check", pdf)
	text := strings.Join(strings.Fields(string(judge.Run(t, "pdftotext", "-raw", pdf, "-"))), " ")
	for _, want := range []string{"Actual size", "mount.printer.x", "mount.printer.y", "98 to 102 mm", "100 mm", "150 mm", "200 mm", "250 mm", "cut line, 0.5 mm", "A4, 210 × 297 mm"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not said", want)
		}
	}
	for _, c := range grey(t, pdf) {
		if c[0] != c[1] || c[1] != c[2] {
			t.Errorf("a colour %v, which no black printer has", c)
		}
	}
}

// grey lists the colours of fills and strokes, as another program reads them.
func grey(t *testing.T, pdf string) (all [][]string) {
	for _, line := range strings.Split(string(judge.Run(t, "qpdf", "--qdf", "--object-streams=disable", pdf, "-")), "\n") {
		if f := strings.Fields(line); len(f) == 4 && (f[3] == "rg" || f[3] == "RG") {
			all = append(all, f[:3])
		}
	}
	if len(all) == 0 {
		t.Error("no greys are found")
	}
	return all
}

func TestTheSamePageTwiceAndRefusals(t *testing.T) {
	var one, two bytes.Buffer
	for _, b := range []*bytes.Buffer{&one, &two} {
		if err := Write(b, sheet.Papers[7]); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(one.Bytes(), two.Bytes()) {
		t.Error("the same paper gave other bytes the second time")
	}
	one.Reset()
	if err := Write(&one, plan.Paper{Width: 100, Height: math.NaN()}); err == nil || one.Len() > 0 {
		t.Errorf("a paper of no size: %v, %d bytes", err, one.Len())
	}
}
