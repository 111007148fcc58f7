package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"understructure/app/record"
	"understructure/patterns/plan"
)

// row is a level with every length given.
func row(name string, height, garment, ease, form, built, chance float64) plan.Level {
	target, clearance, enough := garment-ease, garment-built, 12.3
	return plan.Level{Name: name, Height: height, GarmentGirth: &garment, Taken: name != "hip", Ease: ease,
		TargetGirth: &target, FormGirth: &form, BuiltGirth: &built, Clearance: &clearance, StrainChance: &chance, EaseForOnePercent: &enough}
}

func padded() plan.Plan {
	return plan.Plan{
		Build: "padded", Object: plan.Object{Number: "1", Title: "Dress", Notice: "invented"},
		Levels: []plan.Level{
			{Name: "shoulder", Height: 1400, Ease: 30},
			row("bust", 1250, 840, 30, 780, 807.5, 0.00001),
			row("waist", 1030, 620, 15, 570, 604, 0.0123),
			row("hip", 850, 950, 30, 860, 919, 0),
		},
		Doubt: plan.Doubt{ChanceAnywhere: 0.0131, EaseForAll: 16.6, Remeasure: []plan.Remeasure{
			{Key: "garment.bodice.waist_girth", Taken: true, Share: 0.68}, {Key: "form.bodice.hip_girth", Share: 0.1}, {Key: "form.bodice.shoulder_slope_deg", Taken: true, Share: 0.05},
		}},
		Warnings: []plan.Warning{{Code: "b", Level: "waist", Message: "The waist is close."}, {Code: "a", Message: "Check the stand."}},
	}
}

func TestTable(t *testing.T) {
	var b bytes.Buffer
	table(&b, padded(), "cm")
	warn(&b, padded())
	const want = `1 · Dress · invented · padded
Lengths in cm. A girth marked ~ was not taken; it is drawn from statistics.

level     height  garment  ease  target  form  built  clearance  chance of strain  ease for 1 %
shoulder   140.0        –   3.0       –     –      –          –                 –             –
bust       125.0     84.0   3.0    81.0  78.0   80.8        3.2           < 0.1 %           1.2
waist      103.0     62.0   1.5    60.5  57.0   60.4        1.6             1.2 %           1.2
hip         85.0    ~95.0   3.0    92.0  86.0   91.9        3.1           < 0.1 %           1.2

Chance of strain at one level or more 1.3 %; with an ease of 1.7 cm everywhere it is 1 %.
Measure again first: waist_girth (68 % of the doubt), form shoulder_slope_deg (5 %).
Not measured yet: form hip_girth (10 % of the doubt).

waist: The waist is close.
Check the stand.
`
	if b.String() != want {
		t.Errorf("got\n%s\nwant\n%s", b.String(), want)
	}
}

func TestTableInOtherUnits(t *testing.T) {
	for word, want := range map[string]string{"mm": " 808 ", "in": " 31.79 "} {
		var b bytes.Buffer
		table(&b, padded(), word)
		if !strings.Contains(b.String(), want) {
			t.Errorf("%s: no %q in\n%s", word, want, b.String())
		}
	}
}

// try runs the program on a plan that is given, not computed.
func try(t *testing.T, p plan.Plan, args ...string) (code int, out, errors string) {
	t.Helper()
	var o, e bytes.Buffer
	compute := func(context.Context, record.Record, func(string, float64)) (plan.Plan, error) { return p, nil }
	shape := func(context.Context, record.Record) (plan.Plan, error) { return p, nil }
	code = run(args, surroundings{context.Background(), &o, &e, func(string, float64) {}, compute, shape})
	return code, o.String(), e.String()
}

const demo = "../../assets/demo-1872-bodice.json"

func TestExitCodes(t *testing.T) {
	t.Setenv("DISPLAY", "")
	t.Setenv("WAYLAND_DISPLAY", "")
	bad := filepath.Join(t.TempDir(), "bad.json")
	if err := os.WriteFile(bad, []byte(`{"understructure": 1, "unit": "cm", "garment": {"bodice": {"bust_girth": 7}}}`), 0o600); err != nil {
		t.Fatal(err)
	}
	strained := padded()
	strained.Levels[2] = row("waist", 1030, 620, 15, 650, 650, 1)
	for _, c := range []struct {
		name    string
		plan    plan.Plan
		args    string
		code    int
		out, on string // what stdout and stderr must contain
	}{
		{"a fit", padded(), "fit " + demo, 0, "clearance", ""},
		{"a strain", strained, "fit " + demo, 3, "-3.0", ""},
		{"a bad record", padded(), "fit " + bad, 2, "", "bad.json: garment.bodice.bust_girth: 7 cm is not possible; allowed 30–180 cm (300–1800 mm)"},
		{"no such record", padded(), "fit no.json", 2, "", "no.json"},
		{"no record", padded(), "fit", 2, "", "<record>"},
		{"no folder", padded(), "templates " + demo, 2, "", "--to"},
		{"an unknown flag", padded(), "fit --loud " + demo, 2, "", "--loud"},
		{"help", padded(), "--help", 0, "measuring-sheet", ""},
		{"help on a verb", padded(), "fit --help", 0, "exit status 3", ""},
		{"version", padded(), "version", 0, "understructure " + version, ""},
		{"no display", padded(), "", 1, "", "the verbs need none"},
		{"no forms", padded(), "match " + demo, 2, "", "--forms"},
		{"forms that are not there", padded(), "match " + demo + " --forms no.json", 2, "", "no.json"},
		{"a table of nothing", padded(), "measures", 2, "", "measures --help"},
		{"a table that is not there", padded(), "measures no.csv --to out", 2, "", "no.csv"},
		{"neither table nor folder", padded(), "measures " + demo + " --to out.txt", 2, "", "--to: out.txt is neither a table (.csv) nor a folder"},
		{"a part that is none", padded(), "measuring-sheet --parts hat --to x.pdf", 2, "", `--parts: "hat" is not a part; allowed bodice, skirt, sleeve, form`},
		{"a paper that is none", padded(), "test-page --paper A9 --to x.pdf", 2, "", `--paper: "A9" is not a paper; allowed A4, A3`},
		{"a wearer that is none", padded(), "measuring-sheet --wearer dog --to x.pdf", 2, "", "--wearer"},
	} {
		code, out, errors := try(t, c.plan, strings.Fields(c.args)...)
		if code != c.code || !strings.Contains(out, c.out) || !strings.Contains(errors, c.on) {
			t.Errorf("%s: exit %d, want %d\nstdout: %s\nstderr: %s", c.name, code, c.code, out, errors)
		}
		if lines := strings.Count(errors, "\n"); c.code != 0 && c.code != 3 && lines != 1 {
			t.Errorf("%s: %d lines on stderr: %s", c.name, lines, errors)
		}
	}
}

func TestTemplatesWritesEvenWhatStrains(t *testing.T) {
	p := padded()
	p.Levels[2] = row("waist", 1030, 620, 15, 650, 650, 1)
	p.Paper = plan.Paper{Name: "A4", Width: 210, Height: 297}
	dir := filepath.Join(t.TempDir(), "out")
	code, out, errors := try(t, p, "templates", demo, "--to", dir)
	if code != 0 || !strings.Contains(out, dir) || !strings.Contains(out, "The waist is close.") || errors != "" {
		t.Errorf("exit %d\n%s%s", code, out, errors)
	}
	if _, err := os.Stat(filepath.Join(dir, "plan.json")); err != nil {
		t.Error(err)
	}
}
