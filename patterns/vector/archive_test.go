package vector

import (
	"bytes"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/judge"
	"understructure/patterns/plantest"
	"understructure/patterns/sheet"
)

// paper is a page without layers, of words in both weights, a line, a dashed line and a field.
func paper(t *testing.T) []byte {
	t.Helper()
	b := NewBook(Meta{Title: "Paper (one) \\ <two> & ½", Subject: "words"})
	b.Page(210, 297)
	b.Word(drawing.Word{Text: "(ß) \\ ½ – ħ Ω 縫", At: plane.Point{X: 20, Y: 200}, Size: 4})
	b.Word(drawing.Word{Text: "bold", At: plane.Point{X: 20, Y: 180}, Size: 4, Bold: true, Turn: 1, Colour: drawing.Grey})
	b.Line([]plane.Point{{X: 20, Y: 20}, {X: 90, Y: 30}}, false, drawing.Pen{Width: 0.3, Dash: []float64{3, 1}, Colour: drawing.Pale})
	b.Fill([]plane.Point{{X: 20, Y: 20}, {X: 90, Y: 30}, {X: 50, Y: 50}}, drawing.Colour{R: 200, G: 10})
	var out bytes.Buffer
	if err := b.Write(&out); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func TestAnArchiveTakesPapersAndTemplates(t *testing.T) {
	pdf := paper(t)
	for _, fault := range judge.Archive(t, file(t, "paper.pdf", pdf), pdf) {
		t.Error(fault)
	}
	pdf = layered(t)
	for _, fault := range judge.Archive(t, file(t, "templates.pdf", pdf), pdf) {
		t.Error(fault)
	}
}

// layered are templates.
func layered(t *testing.T) []byte {
	t.Helper()
	_, path := templates(t, plantest.Plan(), "A4")
	pdf, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return pdf
}

// Templates ask to be printed at 100 %; papers need not.
func TestTemplatesAskForTheirSize(t *testing.T) {
	for name, c := range map[string]struct {
		pdf  []byte
		asks bool
	}{"paper": {paper(t), false}, "templates": {layered(t), true}} {
		open := judge.Run(t, "qpdf", "--qdf", "--object-streams=disable", file(t, name+".pdf", c.pdf), "-")
		if bytes.Contains(open, []byte("/PrintScaling /None")) != c.asks {
			t.Errorf("%s: want %v", name, c.asks)
		}
	}
}

// The judge is no judge unless it finds what is wrong. Every change keeps the length, so that the file stays sound.
func TestTheArchiveFindsWhatIsWrong(t *testing.T) {
	whole := paper(t)
	for clause, change := range map[string][2]string{
		"6.1.2":    {"%µ¶", "%abcd"},
		"6.1.3":    {"/ID [<", "/IX [<"},
		"6.2.3":    {"/GTS_PDFA1", "/GTS_PDFX1"},
		"6.2.11":   {"/FontName /UNDSTR+", "/FontName /UNDSTT+"},
		"6.2.11.5": {"/W [", "/V ["},
		"6.5":      {"/Lang (", "/AA   ("},
		"6.6.2":    {"<dc:title>", "<dc:other>"},
		"6.6.4":    {"<pdfaid:part>2", "<pdfaid:part>1"},
	} {
		pdf := bytes.ReplaceAll(whole, []byte(change[0]), []byte(change[1]))
		if clause == "6.6.2" {
			pdf = bytes.ReplaceAll(pdf, []byte("</dc:title>"), []byte("</dc:other>"))
		}
		if bytes.Equal(pdf, whole) || len(pdf) != len(whole) {
			t.Fatalf("%s: nothing is changed, or its length", clause)
		}
		if faults := strings.Join(judge.Archive(t, file(t, "wrong.pdf", pdf), pdf), "\n"); !strings.Contains(faults, clause+":") {
			t.Errorf("%s is not found in %q", clause, faults)
		}
	}
	pdf := bytes.Replace(layered(t), []byte("/D <</Name ("), []byte("/D <</Namf ("), 1)
	if faults := strings.Join(judge.Archive(t, file(t, "layers.pdf", pdf), pdf), "\n"); !strings.Contains(faults, "6.9:") {
		t.Errorf("layers without a name: %q", faults)
	}
}

// Whatever is drawn on a template belongs to a layer, so that all of it can be hidden.
func TestNothingIsDrawnBesideTheLayers(t *testing.T) {
	_, pdf := templates(t, plantest.Plan(), "A4")
	inside, drawn := false, 0
	for _, line := range strings.Split(string(judge.Run(t, "qpdf", "--qdf", "--object-streams=disable", "--normalize-content=y", pdf, "-")), "\n") {
		switch f := strings.Fields(line); {
		case len(f) == 0:
		case f[len(f)-1] == "BDC":
			inside = true
		case f[len(f)-1] == "EMC":
			inside = false
		case line == "s" || line == "S" || line == "f" || strings.Contains(line, "> Tj"):
			drawn++
			if !inside {
				t.Fatalf("%q is on no layer", line)
			}
		}
	}
	if drawn < 100 {
		t.Errorf("%d things are drawn", drawn)
	}
}

// Another program hides the layers one after the other: with each that the page uses it draws less, and in the end nothing.
func TestLayersAreHidden(t *testing.T) {
	pages, pdf := templates(t, plantest.Plan(), "A4")
	page := 1 + slices.IndexFunc(pages, func(pg sheet.Page) bool { return len(pg.Items) > 0 })
	args := []string{"draw", "-q", "-r", "60", "-c", "gray", "-F", "pgm", "-o", "-"}
	ink := func() (dark int) {
		pgm := judge.Run(t, "mutool", append(args, pdf, fmt.Sprint(page))...)
		var width, height int
		fmt.Sscanf(string(pgm), "P5\n%d %d", &width, &height)
		for _, b := range pgm[len(pgm)-width*height:] {
			dark += 255 - int(b)
		}
		return dark
	}
	used := 0
	before := ink()
	for k := range drawing.Layers {
		args = append(args, "-z", fmt.Sprint(k+1))
		now := ink()
		if now > before {
			t.Errorf("without %q more is drawn", drawing.Layers[k].Title())
		} else if now < before {
			used++
		}
		before = now
	}
	if before != 0 || used < 4 {
		t.Errorf("%d are left of a page without layers, %d of which were used", before, used)
	}
}
