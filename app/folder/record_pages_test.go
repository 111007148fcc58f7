package folder

import (
	"bytes"
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"understructure/app/pipeline"
	"understructure/app/record"
	"understructure/assets"
	"understructure/patterns/judge"
	"understructure/patterns/plan"
	"understructure/patterns/report"
)

// mounted are the mounts whose records are looked at: every demonstration, one of them with bevelled slices and a long
// name in other languages, and the least that can be measured.
func mounted(t *testing.T) map[string]plan.Plan {
	t.Helper()
	names, err := fs.Glob(assets.Demos, "demo-*.json")
	if err != nil || len(names) < 4 {
		t.Fatalf("%d demonstrations: %v", len(names), err)
	}
	records := map[string]record.Record{}
	for _, name := range names {
		text, err := fs.ReadFile(assets.Demos, name)
		if err != nil {
			t.Fatal(err)
		}
		records[name] = decoded(t, text)
	}
	bevelled := records["demo-1834-full-sleeves.json"]
	bevelled.Mount.Step = "bevel"
	bevelled.Object.Title = "Straßenkleid aus weißem Musselin mit großen Ärmeln, für eine Señora aus A Coruña genäht, später geändert"
	records["bevelled"] = bevelled
	records["sparse"] = decoded(t, []byte(`{"understructure": 1, "unit": "cm", "object": {"number": "X"}, "garment": {"bodice": {"bust_girth": 92, "waist_girth": 68, "back_waist_length": 38}}}`))
	plans := map[string]plan.Plan{}
	for name, r := range records {
		p, err := pipeline.Run(context.Background(), r, nil)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		plans[name] = p
	}
	return plans
}

func decoded(t *testing.T, text []byte) record.Record {
	t.Helper()
	r, err := record.Decode(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// A mount record has one to four pages, says everything that must be known, cuts no word short, and is the same each time.
func TestTheMountRecordOfEveryDemonstration(t *testing.T) {
	for name, p := range mounted(t) {
		pdf := recordOf(t, p)
		if !bytes.Equal(pdf, recordOf(t, p)) {
			t.Errorf("%s: other bytes the second time", name)
		}
		path := filepath.Join(t.TempDir(), "record.pdf")
		if err := os.WriteFile(path, pdf, 0o644); err != nil {
			t.Fatal(err)
		}
		words := strings.Join(strings.Fields(string(judge.Run(t, "pdftotext", "-raw", path, "-"))), " ")
		if !strings.Contains(words, "page 1 of ") || strings.Contains(words, "page 5 of") {
			t.Errorf("%s: the record has more than four pages, or none", name)
		}
		for _, w := range said(p) {
			if !strings.Contains(words, strings.Join(strings.Fields(w), " ")) {
				t.Errorf("%s: the record does not say %q", name, w)
			}
		}
		allowed := 0 // only the foot line of a page may shorten a name that is longer than it
		if foot := "Mount record – " + p.Object.Number + " " + p.Object.Title; !strings.Contains(words, foot) {
			allowed = strings.Count(words, foot[:60])
		}
		if n := strings.Count(words, "…"); n > allowed {
			t.Errorf("%s: %d words are cut short, %d may be", name, n, allowed)
		}
	}
}

func recordOf(t *testing.T, p plan.Plan) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := report.Record(&b, p); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// said is what no record may leave out.
func said(p plan.Plan) []string {
	all := append([]string{p.Object.Title, p.Object.Number, p.Object.Notice, fmt.Sprintf("%.0f mm", p.StandHeight)}, p.Cautions...)
	for _, w := range p.Warnings {
		all = append(all, w.Message)
	}
	for _, l := range p.Levels {
		all = append(all, fmt.Sprintf("%s %.0f", l.Name, l.Height))
	}
	for _, q := range p.Pieces {
		number, _, _ := strings.Cut(q.ID, "-")
		all = append(all, number)
	}
	for _, l := range p.Layers {
		if !strings.HasPrefix(l.Material, "plank") {
			all = append(all, fmt.Sprintf("%d %s", l.Number, strings.Fields(l.Material)[0]))
		}
	}
	for _, m := range p.Materials {
		all = append(all, m.Name)
	}
	return all
}
