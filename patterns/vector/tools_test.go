package vector

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"understructure/patterns/plan"
	"understructure/patterns/plantest"
	"understructure/patterns/sheet"
)

// run calls a program of another make that reads our files. make test installs them all.
func run(t *testing.T, name string, args ...string) []byte {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		t.Fatalf("%s is not installed; make test installs it (Debian: poppler-utils mupdf-tools ghostscript qpdf librsvg2-bin)", name)
	}
	var out, errs bytes.Buffer
	c := exec.Command(name, args...)
	c.Stdout, c.Stderr = &out, &errs
	if err := c.Run(); err != nil {
		t.Fatalf("%s %v: %v\n%s", name, args, err, errs.Bytes())
	}
	return out.Bytes()
}

// templates writes the made-up plan on a paper and returns its pages and the file.
func templates(t *testing.T, p plan.Plan, paper string) ([]sheet.Page, string) {
	t.Helper()
	p.Paper, _ = sheet.Named(paper)
	pages, err := sheet.Lay(p)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := PDF(&b, pages, Meta{Title: p.Object.Title, Subject: "Templates"}); err != nil {
		t.Fatal(err)
	}
	return pages, file(t, paper+".pdf", b.Bytes())
}

func file(t *testing.T, name string, content []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, content, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// grey is a picture as other programs make it: one byte a pixel, 0 is black.
type grey struct {
	width, height int
	pixels        []byte
}

func (g grey) ink(x, y int) float64 { return 255 - float64(g.pixels[y*g.width+x]) }

func pgm(t *testing.T, path string) grey {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var g grey
	var most int
	r := bytes.NewReader(skipComments(b))
	if _, err := fmt.Fscanf(r, "P5\n%d %d\n%d\n", &g.width, &g.height, &most); err != nil {
		t.Fatalf("%s: not a grey picture: %v", path, err)
	}
	g.pixels = make([]byte, g.width*g.height)
	if n, _ := r.Read(g.pixels); n != len(g.pixels) {
		t.Fatalf("%s: %d of %d pixels", path, n, len(g.pixels))
	}
	return g
}

// skipComments drops the lines that ghostscript writes after the first.
func skipComments(b []byte) []byte {
	if i := bytes.Index(b, []byte("\n#")); i == 2 {
		end := bytes.IndexByte(b[i+1:], '\n')
		return append([]byte("P5"), b[i+1+end:]...)
	}
	return b
}

// small is the plan without its large panel.
func small() plan.Plan {
	p := plantest.Plan()
	p.Pieces = p.Pieces[1:]
	return p
}
