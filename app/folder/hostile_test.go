package folder

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/xml"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode"

	"understructure/patterns/plan"
	"understructure/patterns/plantest"
)

// hostile are words that would be something else in SVG, PDF, DXF, OBJ, CSV or as the name of a file.
var hostile = []string{
	`</title><script>alert(1)</script><svg onload="x">`, `(\) Tj ET endstream endobj %%EOF`, `=cmd|' /C calc'!A0`, `@SUM(A1)`,
	`../../../tmp/x`, "a\u202egnp.exe", "%%u %%% \\U+0041 ^J", "x\r\n  0\nEOF\nf 1 2 3", strings.Repeat("very long ", 400),
}

// dressed is a plan in which somebody wrote the same words wherever words are.
func dressed(words string) plan.Plan {
	p := plantest.Plan()
	p.Pieces = slices.Clone(p.Pieces[1:4])
	p.Object.Number, p.Object.Title, p.Object.Notice, p.Measured.By = words, words, words, words
	for i := range p.Pieces {
		p.Pieces[i].Name, p.Pieces[i].Material = words, words
	}
	for i := range p.Materials {
		p.Materials[i].Name, p.Materials[i].Note = words, words
	}
	for i := range p.Warnings {
		p.Warnings[i].Message = words
	}
	return p
}

func TestHostileWordsAreHarmlessInEveryFile(t *testing.T) {
	for _, words := range hostile {
		dir := filepath.Join(t.TempDir(), "out")
		if err := Write(context.Background(), dir, dressed(words), func(float64) {}); err != nil {
			t.Fatalf("%.40q: %v", words, err)
		}
		if around, _ := os.ReadDir(filepath.Dir(dir)); len(around) != 1 {
			t.Errorf("%.40q: %v is written beside the folder", words, around)
		}
		seen := map[string]int{}
		err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
			if err == nil && !d.IsDir() {
				seen[filepath.Ext(path)]++
				harmless(t, path)
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
		for ending, n := range map[string]int{".svg": 3, ".dxf": 3, ".pdf": 4, ".csv": 1, ".json": 1, ".stl": 1, ".obj": 1} {
			if seen[ending] != n {
				t.Errorf("%.40q: %d files end in %s, want %d", words, seen[ending], ending, n)
			}
		}
	}
}

// harmless fails where a file holds more than it should.
func harmless(t *testing.T, path string) {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	switch filepath.Ext(path) {
	case ".svg":
		onlyDrawn(t, path, text)
	case ".pdf":
		if out, err := exec.Command("qpdf", "--check", path).CombinedOutput(); err != nil {
			t.Errorf("%s: %v; make test installs qpdf\n%s", path, err, out)
		}
		for _, word := range []string{"/JavaScript", "/Launch", "/OpenAction << /S"} {
			if bytes.Contains(text, []byte(word)) {
				t.Errorf("%s holds %s", path, word)
			}
		}
	case ".dxf":
		if n := bytes.Count(text, []byte("\nEOF\n")); n != 1 || bytes.ContainsFunc(text, func(r rune) bool { return r > unicode.MaxASCII || r < ' ' && r != '\n' }) {
			t.Errorf("%s ends %d times, or is not plain ASCII", path, n)
		}
	case ".csv":
		rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
		if err != nil {
			t.Errorf("%s: %v", path, err)
		}
		for _, cell := range slices.Concat(rows...) {
			if strings.ContainsAny(cell[:min(1, len(cell))], "=+-@\t\r") {
				t.Errorf("%s: %.40q is a formula", path, cell)
			}
		}
	}
}

// onlyDrawn fails where an SVG holds anything but groups, paths and its title.
func onlyDrawn(t *testing.T, path string, text []byte) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(text))
	for {
		token, err := d.Token()
		if err == io.EOF {
			return
		}
		if err != nil {
			t.Errorf("%s: %v", path, err)
			return
		}
		if e, ok := token.(xml.StartElement); ok && !slices.Contains([]string{"svg", "title", "desc", "g", "path"}, e.Name.Local) {
			t.Errorf("%s holds <%s>", path, e.Name.Local)
		}
	}
}
