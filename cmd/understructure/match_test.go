package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"understructure/app/record"
)

// forms writes the demonstration's form, and it 25 mm smaller and 60 mm larger round, as a list.
func forms(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile(demo)
	if err != nil {
		t.Fatal(err)
	}
	var r struct {
		Form struct{ Bodice map[string]float64 }
	}
	if err := json.Unmarshal(text, &r); err != nil {
		t.Fatal(err)
	}
	var all []map[string]any
	for _, f := range []struct {
		label string
		more  float64
	}{{"small", -2.5}, {"own", 0}, {"large", 6}} {
		bodice := map[string]float64{}
		for k, v := range r.Form.Bodice {
			if strings.HasSuffix(k, "_breadth") || strings.HasSuffix(k, "_depth") {
				continue
			}
			if strings.HasSuffix(k, "_girth") {
				v += f.more
			}
			bodice[k] = v
		}
		all = append(all, map[string]any{"label": f.label, "bodice": bodice})
	}
	list, err := json.Marshal(map[string]any{"understructure": 1, "unit": "cm", "forms": all})
	if err != nil {
		t.Fatal(err)
	}
	return put(t, "forms.json", string(list))
}

func TestMatch(t *testing.T) {
	csv := filepath.Join(t.TempDir(), "pairs.csv")
	code, out, errs := truly("match", shelf(t, "a.json", "b.json"), "--forms", forms(t), "--csv", csv)
	if code != done || errs != "" {
		t.Fatalf("exit %d: %s", code, errs)
	}
	lines := strings.Split(out, "\n")
	// The two garments are the same: one gets the form that is nearest, the other the smaller one, none the large one.
	if a, b := strings.Fields(lines[1]), strings.Fields(lines[2]); a[1] == b[1] || a[3] != "own" || b[3] != "own" || strings.Contains(out, "large") {
		t.Errorf("%s", out)
	}
	text, err := os.ReadFile(csv)
	if err != nil || bytes.Count(text, []byte("\n")) != 1+2*3 || bytes.Count(text, []byte("large,no,no,no,,")) != 2 {
		t.Errorf("%v\n%s", err, text)
	}
}

func TestMatchLeavesNobodyInTheDark(t *testing.T) {
	in := shelf(t, "a.json", "b.json")
	if err := os.WriteFile(filepath.Join(in, "few.json"), []byte(`{"understructure": 1, "unit": "cm", "garment": {"bodice": {"waist_girth": 60}}}`), 0o600); err != nil {
		t.Fatal(err)
	}
	code, out, errs := truly("match", in, "--forms", demo)
	if code != refused || !strings.Contains(errs, "few.json: garment.bodice.bust_girth: must be given") || !strings.Contains(errs, "1 of 3 records failed") {
		t.Errorf("exit %d: %s", code, errs)
	}
	if !strings.Contains(out, ": every form that serves it serves another garment") {
		t.Errorf("%s", out)
	}
	r, err := record.Load(demo)
	if err != nil {
		t.Fatal(err)
	}
	for k := range r.Garment.Bodice {
		if strings.HasSuffix(string(k), "_girth") {
			r.Garment.Bodice[k] *= 0.9
		}
	}
	small := filepath.Join(t.TempDir(), "small.json")
	if err := record.Save(small, r); err != nil {
		t.Fatal(err)
	}
	code, out, errs = truly("match", small, "--forms", demo)
	if code != wouldStrain || !strings.Contains(out, "small: no form serves; Form 3 is least too big, by ") || !strings.Contains(errs, "1 of 1 garments are left without a form") {
		t.Errorf("exit %d\n%s%s", code, out, errs)
	}
}

// The same forms from records, from a list and from a table.
func TestFormsComeFromManyFiles(t *testing.T) {
	csv := filepath.Join(t.TempDir(), "forms.csv")
	if code, _, errs := truly("measures", demo, "--to", csv); code != done {
		t.Fatal(errs)
	}
	var first string
	for _, from := range []string{demo, csv, shelf(t, "a.json", "b.json")} {
		code, out, errs := truly("match", demo, "--forms", from)
		if code != done || !strings.Contains(out, "Form 3") {
			t.Errorf("%s: exit %d\n%s%s", from, code, out, errs)
		}
		if first == "" {
			first = out
		}
		if out != first {
			t.Errorf("%s says\n%s\nnot\n%s", from, out, first)
		}
	}
	none := put(t, "none.json", `{"understructure": 1, "unit": "cm"}`)
	if code, _, errs := truly("match", demo, "--forms", none); code != refused || !strings.Contains(errs, "--forms: no form is measured there") {
		t.Errorf("exit %d: %s", code, errs)
	}
}
