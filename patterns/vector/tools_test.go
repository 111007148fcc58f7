package vector

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"testing"

	"understructure/patterns/plan"
	"understructure/patterns/plantest"
	"understructure/patterns/sheet"
)

// templates writes the made-up plan on a paper and returns its pages and the file.
func templates(t *testing.T, p plan.Plan, paper string) ([]sheet.Page, string) {
	t.Helper()
	p.Paper, _ = sheet.Named(paper)
	pages, err := sheet.Lay(context.Background(), p, sheet.Options{})
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

// small is the plan without its large panel.
func small() plan.Plan {
	p := plantest.Plan()
	p.Pieces = p.Pieces[1:]
	return p
}
