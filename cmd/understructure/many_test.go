package main

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"understructure/app/record"
	"understructure/patterns/plan"
	"understructure/patterns/sheet"
)

// shelf is a folder with the demonstration under the names given, and a file that is no record.
func shelf(t *testing.T, names ...string) string {
	t.Helper()
	dir := t.TempDir()
	text, err := os.ReadFile(demo)
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range names {
		if err := os.WriteFile(filepath.Join(dir, n), text, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// on gives the plan of a padded mount a paper to be drawn on.
func on(p plan.Plan) plan.Plan {
	p.Paper, _ = sheet.Named("A4")
	return p
}

func TestManyRecords(t *testing.T) {
	in := shelf(t, "a.json", "b.json", "new dress.json")
	if err := os.WriteFile(filepath.Join(in, "broken.json"), []byte(`{"understructure": 1}`), 0o600); err != nil {
		t.Fatal(err)
	}
	to := filepath.Join(t.TempDir(), "out")
	code, out, errs := try(t, on(padded()), "templates", in, "nowhere.json", "--to", to)
	if code != refused || strings.Count(errs, "\n") != 3 {
		t.Errorf("exit %d\n%s", code, errs)
	}
	for _, want := range []string{"broken.json: unit: must be given", "nowhere.json: no such file", "understructure: 2 of 5 records failed"} {
		if !strings.Contains(errs, want) {
			t.Errorf("%q is not said:\n%s", want, errs)
		}
	}
	for _, want := range []string{"record ", "written", "failed", "3 of 5 records written"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in the table:\n%s", want, out)
		}
	}
	for _, name := range []string{"a", "b", "new_dress"} {
		if _, err := os.Stat(filepath.Join(to, name, "plan.json")); err != nil {
			t.Error(err)
		}
	}
	if _, err := os.Stat(filepath.Join(to, "broken")); err == nil {
		t.Error("a folder is left for a record that failed")
	}
}

// A folder with one record in it is a folder: what is written has the record's name.
func TestAFolderOfOne(t *testing.T) {
	to := t.TempDir()
	if code, _, errs := try(t, on(padded()), "templates", shelf(t, "a.json"), "--to", to); code != done {
		t.Fatalf("exit %d: %s", code, errs)
	}
	if _, err := os.Stat(filepath.Join(to, "a", "plan.json")); err != nil {
		t.Error(err)
	}
}

func TestManyThatStrainAreWrittenAndSaid(t *testing.T) {
	p := on(padded())
	p.Levels[2] = row("waist", 1030, 620, 15, 650, 650, 1)
	code, out, errs := try(t, p, "templates", shelf(t, "a.json", "b.json"), "--to", t.TempDir())
	if code != done || strings.Count(out, "written; the garment would strain") != 2 {
		t.Errorf("exit %d\n%s%s", code, out, errs)
	}
}

// Whoever interrupts gets whole folders or none, and is told what is missing.
func TestStoppedAmongMany(t *testing.T) {
	in, to := shelf(t, "a.json", "b.json", "c.json", "d.json", "e.json", "f.json", "g.json", "h.json"), t.TempDir()
	ctx, cancel := context.WithCancel(context.Background())
	var out, errs bytes.Buffer
	compute := func(ctx context.Context, _ record.Record, _ func(string, float64)) (plan.Plan, error) {
		cancel()
		return on(padded()), ctx.Err()
	}
	code := run([]string{"templates", in, "--to", to}, surroundings{ctx, &out, &errs, func(string, float64) {}, compute, nil})
	if code != stopped || !strings.Contains(errs.String(), "understructure: stopped; 8 of 8 records were not written") {
		t.Errorf("exit %d\n%s", code, errs.String())
	}
	if left, _ := os.ReadDir(to); len(left) > 0 {
		t.Errorf("%v is left", left)
	}
}

func TestStoppedAlone(t *testing.T) {
	var out, errs bytes.Buffer
	compute := func(context.Context, record.Record, func(string, float64)) (plan.Plan, error) {
		return plan.Plan{}, context.Canceled
	}
	code := run([]string{"templates", demo, "--to", t.TempDir()}, surroundings{context.Background(), &out, &errs, func(string, float64) {}, compute, nil})
	if code != stopped || errs.String() != "understructure: stopped; nothing was written\n" {
		t.Errorf("exit %d: %s", code, errs.String())
	}
}

// What a record or a file's name says cannot take over the terminal.
func TestNothingPrintedIsObeyed(t *testing.T) {
	p := padded()
	p.Object.Title = "dress\x1b]0;x\x07\u009b2J \u202edesrever\u2069 Kleid, grün"
	p.Warnings[0].Message = "bell\a\xff"
	name := filepath.Join(t.TempDir(), "a\x1b[2J.json")
	if err := os.WriteFile(name, []byte("{"), 0o600); err != nil {
		t.Fatal(err)
	}
	_, out, _ := try(t, p, "fit", demo)
	_, _, errs := try(t, p, "fit", name)
	for _, text := range []string{out, errs} {
		if strings.ContainsAny(text, "\x1b\a\x07\u009b\u202e\u2069\r") || text == "" {
			t.Errorf("%q", text)
		}
	}
	if !strings.Contains(out, "Kleid, grün") {
		t.Errorf("plain words are lost:\n%s", out)
	}
	if n, err := (visible{failing{}}).Write([]byte("x")); n != 0 || err == nil {
		t.Errorf("%d, %v", n, err)
	}
}

type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, errors.New("closed") }
