package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"understructure/app/record"
	"understructure/geometry/measure"
	"understructure/patterns/plan"
)

// put writes a file and returns its path.
func put(t *testing.T, name, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// From records to a table and back: the demonstrations keep all their measurements.
func TestMeasuresThereAndBack(t *testing.T) {
	dir := t.TempDir()
	csv, back := filepath.Join(dir, "all.csv"), filepath.Join(dir, "back")
	for _, args := range [][]string{{"measures", "../../assets/demo-1872-bodice.json", "../../assets/demo-boy-1895.json", "--to", csv, "--decimal", "comma"}, {"measures", csv, "--to", back}} {
		if code, out, errs := try(t, plan.Plan{}, args...); code != done || !strings.Contains(out, "2 records written") {
			t.Fatalf("%v: exit %d\n%s%s", args, code, out, errs)
		}
	}
	want, err := record.Load(demo)
	if err != nil {
		t.Fatal(err)
	}
	got, err := record.LoadDraft(filepath.Join(back, "demo-1872-bodice.json"))
	if err != nil {
		t.Fatal(err)
	}
	if got.Garment.Bodice[measure.NeckBaseGirth] != want.Garment.Bodice[measure.NeckBaseGirth] || len(got.Form.Bodice) != len(want.Form.Bodice) || got.Object != want.Object {
		t.Errorf("%+v", got)
	}
	// A second time nothing is overwritten.
	code, _, errs := try(t, plan.Plan{}, "measures", csv, "--to", back)
	if code != refused || !strings.Contains(errs, "demo-1872-bodice.json is there already and is left alone; nothing was written") {
		t.Errorf("exit %d: %s", code, errs)
	}
}

func TestAFaultyTableWritesNothingAndNamesEveryFault(t *testing.T) {
	csv := put(t, "t.csv", "record,unit,garment.bodice.waist_girth\na,cm,62\nb,cm,7\nc,cm,wide\n")
	to := filepath.Join(t.TempDir(), "out")
	code, _, errs := try(t, plan.Plan{}, "measures", csv, "--to", to)
	if code != refused || strings.Count(errs, "\n") != 2 {
		t.Errorf("exit %d: %s", code, errs)
	}
	for _, want := range []string{
		"t.csv: row 3, column C (garment.bodice.waist_girth): 7 cm is not possible; allowed 30–200 cm",
		`t.csv: row 4, column C (garment.bodice.waist_girth): "wide" is not a number; allowed 30–200 cm`,
	} {
		if !strings.Contains(errs, want) {
			t.Errorf("%q is not said:\n%s", want, errs)
		}
	}
	if _, err := os.Stat(to); err == nil {
		t.Error("a folder is made")
	}
	many := put(t, "m.csv", "record,unit\n"+strings.Repeat("a,ell\n", 100))
	if _, _, errs := try(t, plan.Plan{}, "measures", many, "--to", to); strings.Count(errs, "\n") != mostFaults+1 || !strings.Contains(errs, "more") {
		t.Errorf("%d lines", strings.Count(errs, "\n"))
	}
}

// A table of records that cannot all be read holds the others.
func TestATableOfRecordsOneOfWhichIsBroken(t *testing.T) {
	bad, csv := put(t, "bad.json", "{"), filepath.Join(t.TempDir(), "t.csv")
	code, out, errs := try(t, plan.Plan{}, "measures", demo, bad, "--to", csv)
	if code != refused || !strings.Contains(out, "1 records written") || !strings.Contains(errs, "bad.json") || !strings.Contains(errs, "1 of 2 records failed") {
		t.Errorf("exit %d\n%s%s", code, out, errs)
	}
	if text, err := os.ReadFile(csv); err != nil || bytes.Count(text, []byte("\n")) != 2 {
		t.Errorf("%v\n%s", err, text)
	}
	if code, _, _ := try(t, plan.Plan{}, "measures", bad, "--to", filepath.Join(t.TempDir(), "t.csv")); code != refused {
		t.Errorf("exit %d where no record can be read", code)
	}
}

func TestABlankTable(t *testing.T) {
	path := filepath.Join(t.TempDir(), "blank.csv")
	if code, _, errs := try(t, plan.Plan{}, "measures", "--blank", path); code != done {
		t.Fatal(errs)
	}
	if text, err := os.ReadFile(path); err != nil || !bytes.Contains(text, []byte("garment.bodice.waist_girth")) {
		t.Error(err)
	}
	if code, _, errs := try(t, plan.Plan{}, "measures", "--blank", path); code != refused || !strings.Contains(errs, "blank.csv is there already and is left alone") {
		t.Errorf("exit %d: %s", code, errs)
	}
	if code, _, errs := try(t, plan.Plan{}, "measures", demo, "--blank", path); code != refused || !strings.Contains(errs, "--blank alone") {
		t.Errorf("exit %d: %s", code, errs)
	}
}

// A measuring sheet for a record has its number, title, wearer and unit on it; what is asked for on the line goes before.
func TestMeasuringSheet(t *testing.T) {
	pdf := func(args ...string) []byte {
		t.Helper()
		path := filepath.Join(t.TempDir(), "sheet.pdf")
		if code, _, errs := try(t, plan.Plan{}, append([]string{"measuring-sheet", "--to", path}, args...)...); code != done {
			t.Fatal(errs)
		}
		b, err := os.ReadFile(path)
		if err != nil || !bytes.HasPrefix(b, []byte("%PDF")) {
			t.Fatalf("%v, %d bytes", err, len(b))
		}
		return b
	}
	draft := put(t, "draft.json", `{"understructure": 1, "unit": "in", "object": {"number": "T.1", "title": "Dress", "wearer": "child"}}`)
	blank, few := pdf(), pdf("--parts", "bodice")
	if !bytes.Equal(blank, pdf("--parts", "bodice,skirt,sleeve")) || len(few) >= len(blank) || len(pdf("--parts", "bodice,skirt,sleeve,form")) <= len(blank) {
		t.Error("the parts asked for make no difference")
	}
	filled := pdf(draft)
	for name, other := range map[string][]byte{"nothing": blank, "another wearer": pdf(draft, "--wearer", "man"), "another unit": pdf(draft, "--unit", "mm")} {
		if bytes.Equal(filled, other) {
			t.Errorf("a record fills in the same as %s", name)
		}
	}
	if !bytes.Equal(filled, pdf(draft, "--wearer", "child", "--unit", "in")) {
		t.Error("the record's wearer and unit are not taken")
	}
}
