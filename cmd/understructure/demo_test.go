package main

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"understructure/app/pipeline"
	"understructure/app/record"
	"understructure/geometry/measure"
	"understructure/patterns/plan"
)

// truly runs the program as it is shipped.
func truly(args ...string) (code int, out, errors string) {
	var o, e bytes.Buffer
	code = run(args, surroundings{context.Background(), &o, &e, func(string, float64) {}, pipeline.Whole, pipeline.Shape})
	return code, o.String(), e.String()
}

// planSchema is the published schema, compiled.
func planSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(plan.Schema))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("plan.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("plan.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Every demonstration and every published dress becomes a folder of templates whose plan is as the schema says.
func TestEveryRecordBecomesTemplates(t *testing.T) {
	demos, _ := filepath.Glob("../../assets/demo-*.json")
	dresses, _ := filepath.Glob("../../testdata/published/*.json")
	if len(demos) < 3 || len(dresses) < 5 {
		t.Fatal(demos, dresses)
	}
	schema := planSchema(t)
	for _, path := range append(demos, dresses...) {
		t.Run(filepath.Base(path), func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			if code, _, errors := truly("templates", path, "--to", dir); code != done {
				t.Fatalf("exit %d: %s", code, errors)
			}
			b, err := os.ReadFile(filepath.Join(dir, "plan.json"))
			if err != nil {
				t.Fatal(err)
			}
			v, err := jsonschema.UnmarshalJSON(bytes.NewReader(b))
			if err != nil {
				t.Fatal(err)
			}
			if err := schema.Validate(v); err != nil {
				t.Error(err)
			}
			complete(t, dir, b)
		})
	}
}

// complete fails unless every file is there, with a drawing for every piece, and nothing would strain.
func complete(t *testing.T, dir string, text []byte) {
	t.Helper()
	var p plan.Plan
	if err := json.Unmarshal(text, &p); err != nil {
		t.Fatal(err)
	}
	if len(p.Pieces) == 0 || p.Strains() {
		t.Errorf("%d pieces, strains: %v", len(p.Pieces), p.Strains())
	}
	names := []string{"templates.pdf", "record.pdf", "cutting.pdf", "materials.csv", "storage.pdf", "condition.pdf", "mount.stl", "mount.obj"}
	for _, pc := range p.Pieces {
		names = append(names, "svg/"+pc.ID+".svg", "dxf/"+pc.ID+".dxf")
	}
	for _, name := range names {
		if info, err := os.Stat(filepath.Join(dir, name)); err != nil || info.Size() == 0 {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Common practice, no published source: the mount must measure less than the garment, and a form
// that is a little too big is reduced at the shoulders and sides until the fronts meet without strain.
func TestAFormThatIsThreeCentimetresTooBigStrains(t *testing.T) {
	r, err := record.Load(demo)
	if err != nil {
		t.Fatal(err)
	}
	if code, out, errors := truly("fit", demo); code != done {
		t.Errorf("the demonstration itself: exit %d\n%s%s", code, out, errors)
	}
	for _, k := range []measure.Key{measure.BustBreadth, measure.BustDepth, measure.WaistBreadth, measure.WaistDepth, measure.HipBreadth, measure.HipDepth} {
		delete(r.Form.Bodice, k)
	}
	for k, girth := range r.Garment.Bodice {
		if _, onForm := r.Form.Bodice[k]; onForm && strings.HasSuffix(string(k), "_girth") {
			r.Form.Bodice[k] = girth + 30
		}
	}
	path := filepath.Join(t.TempDir(), "big.json")
	if err := record.Save(path, r); err != nil {
		t.Fatal(err)
	}
	code, out, errors := truly("fit", path)
	if code != wouldStrain {
		t.Errorf("exit %d\n%s%s", code, out, errors)
	}
	for _, word := range []string{"waist: ", "shoulder: ", "side"} {
		if !strings.Contains(out, word) {
			t.Errorf("%q is not said:\n%s", word, out)
		}
	}
}
