package report

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	geo "understructure/geometry/measure"
	"understructure/patterns/plan"
	"understructure/patterns/plantest"
)

// text writes a file and reads its words back with a program of another make.
func text(t *testing.T, pdf []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "x.pdf")
	if err := os.WriteFile(path, pdf, 0o644); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"qpdf", "pdftotext"} {
		if _, err := exec.LookPath(name); err != nil {
			t.Fatalf("%s is not installed; make test installs it (Debian: qpdf poppler-utils)", name)
		}
	}
	if out, err := exec.Command("qpdf", "--check", path).CombinedOutput(); err != nil {
		t.Fatalf("qpdf: %v\n%s", err, out)
	}
	out, err := exec.Command("pdftotext", "-raw", path, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(strings.Fields(string(out)), " ")
}

func record(t *testing.T, p plan.Plan) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Record(&b, p); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestRecordSaysWhatThePlanSays(t *testing.T) {
	p := plantest.Plan()
	got := text(t, record(t, p))
	want := []string{
		p.Object.Number, p.Object.Title, p.Object.Notice, p.Measured.By, p.Measured.On, "1052 mm", "padding over a form",
		"bust 1240 880 taken 15 865 800 862 18 under 0.1 %", "1 880 bust girth", "garment hip girth 930 1", "1 drawn: women of the same waist, ANSUR II (2012)",
		"shoulder slope 24.3°", "cotton jersey 1 m b", "b: wash hot without detergent before use", "7.4 kg", "at least 196 mm", "1 wadding 6 mm 6.0 mm 4 0.092 m²",
		"front", "side", "back", "made by", "Local rules",
	}
	for _, w := range p.Warnings {
		want = append(want, w.Message)
	}
	want = append(append(want, usual...), dressing(p)...)
	for _, l := range p.Levels {
		want = append(want, l.Name)
	}
	for _, q := range p.Pieces {
		head, _, _ := strings.Cut(q.ID, "-")
		want = append(want, head)
	}
	for _, w := range want {
		if !strings.Contains(got, strings.Join(strings.Fields(w), " ")) {
			t.Errorf("the record does not say %q", w)
		}
	}
	if !strings.Contains(got, "page 1 of ") || strings.Contains(got, "page 5 of") {
		t.Error("the record has more than four pages, or none")
	}
}

func TestTheRecordSaysHowSureTheFitIs(t *testing.T) {
	p := plantest.Plan()
	sd, ease := 8.4, 19.6
	p.Levels[2].ClearanceSD, p.Levels[2].EaseForOnePercent = &sd, &ease
	p.Doubt = plan.Doubt{ChanceAnywhere: 0.123, EaseForAll: 27.2, Remeasure: []plan.Remeasure{
		{Key: "garment.bodice.hip_girth", ChanceAfter: 0.061}, {Key: "garment.bodice.waist_girth", Taken: true, ChanceAfter: 0.08}}}
	p.Drawn["garment.bodice.hip_girth"] = plan.Value{Value: 930, Spread: 21.4, Source: "women of the same waist, ANSUR II (2012)"}
	got := text(t, record(t, p))
	for _, want := range []string{"862 18 8 under 0.1 % 20", "at one level or more is 12.3 %. An ease of 27 mm", "1 garment, hip girth, for the first time: 6.1 %", "2 garment, waist girth, again: 8.0 %", "garment hip girth 930 ± 21.4 1"} {
		if !strings.Contains(got, want) {
			t.Errorf("the record does not say %q", want)
		}
	}
}

func TestTheRecordSaysWhatMaterialsAreWorth(t *testing.T) {
	p := plantest.Plan()
	two, cost := 2.0, 61.5
	p.Materials = append(p.Materials, plan.Material{Name: "plank", Quantity: 1.62, Unit: "offcuts", Note: "told elsewhere", WithWaste: &two, MassKg: 2.016, Cost: &cost, Currency: "EUR", Asks: "inert; tested"},
		plan.Material{Name: "rod", Quantity: 1, Unit: "m", Note: "in one length", Asks: "tested"})
	got := text(t, record(t, p))
	for _, want := range []string{"kg cost EUR see", "plank 1.62 2 offcuts 2.016 61.50 c d", "rod 1 – m – – e d", "c: inert; d: tested; e: in one length"} {
		if !strings.Contains(got, want) {
			t.Errorf("the record does not say %q in: %s", want, got)
		}
	}
	if strings.Contains(got, "told elsewhere") {
		t.Error("how a material was laid is told twice in: " + got)
	}
}

func TestStrainIsSpelledOut(t *testing.T) {
	p := plantest.Plan()
	strain, sure := -12.0, 0.9996
	p.Levels[4].Clearance, p.Levels[4].StrainChance = &strain, &sure
	if got := text(t, record(t, p)); !strings.Contains(got, "strain −12 over 99.9 %") {
		t.Errorf("strain is not spelled out in: %s", got)
	}
}

func TestRecordTwice(t *testing.T) {
	if !bytes.Equal(record(t, plantest.Plan()), record(t, plantest.Plan())) {
		t.Error("the same plan gave other bytes the second time")
	}
}

func TestRecordOfNothing(t *testing.T) {
	if got := text(t, record(t, plan.Plan{})); !strings.Contains(got, "Mount record") {
		t.Errorf("an empty plan gives %q", got)
	}
}

// faults are those of words that stand on each other or leave the text area and its foot line.
func faults(s *setter) []string {
	page := s.frame.Grow(1)
	page.Lo.Y -= footDrop
	var all []string
	for i, draw := range s.pages {
		r := &plantest.Recorder{}
		for _, f := range draw {
			f(r)
		}
		for _, f := range r.Faults(page) {
			all = append(all, fmt.Sprintf("page %d: %s", i+1, f))
		}
	}
	return all
}

func TestNothingOverlaps(t *testing.T) {
	long := plantest.Plan()
	for _, s := range []*string{&long.Object.Number, &long.Object.Title, &long.Object.Wearer, &long.Object.Notice, &long.Measured.By, &long.Levels[2].Name, &long.Materials[0].Name, &long.Materials[0].Note} {
		*s = strings.Repeat("very long words of antidisestablishmentarianism ", 9)
	}
	for range 60 {
		long.Warnings = append(long.Warnings, long.Warnings[0])
	}
	for _, k := range append(append([]geo.Measure{}, geo.Keys...), geo.Skirt...) {
		long.Drawn["form.bodice."+string(k.Key)] = plan.Value{Value: 123456.7, Source: strings.Repeat("a source that is cited at length, ", 8)}
	}
	for _, p := range []plan.Plan{plantest.Plan(), dressed(), long, {}} {
		for _, f := range faults(setRecord(p)) {
			t.Error(f)
		}
	}
}

// A record that is full of remarks goes on over more pages, and says why; nothing is left out.
func TestARecordFullOfRemarks(t *testing.T) {
	p := plantest.Plan()
	p.Warnings = nil
	for i := range 200 {
		p.Warnings = append(p.Warnings, plan.Warning{Message: fmt.Sprintf("Remark %d: the waist, and the waist again, is %d mm off from what the other readings say of it.", i, i)})
	}
	got := text(t, record(t, p))
	for _, w := range p.Warnings {
		if !strings.Contains(got, w.Message) {
			t.Errorf("the record does not say %q", w.Message)
		}
	}
	if !strings.Contains(got, "There are 200 remarks, so this record is longer than usual.") || !strings.Contains(got, "page 5 of") {
		t.Error("a long record does not say why it is long")
	}
	for _, f := range faults(setRecord(p)) {
		t.Error(f)
	}
}

// No letters of the record are smaller than 6.5 points, those of running text than 7.5 (1 point = 0.3528 mm).
func TestLettersCanBeRead(t *testing.T) {
	const point = 25.4 / 72
	if bodySize < 7.5*point || tableSize < 6.5*point {
		t.Errorf("text %.1f points, tables %.1f points", bodySize/point, tableSize/point)
	}
	for _, p := range []plan.Plan{plantest.Plan(), dressed()} {
		for _, page := range setRecord(p).pages {
			for _, w := range recorded(page) {
				if w.Size < 6.5*point {
					t.Errorf("%q is set in %.1f points", w.Text, w.Size/point)
				}
			}
		}
	}
}

func TestNamesInOtherLanguages(t *testing.T) {
	p := plantest.Plan()
	p.Object.Title = "Straßenkleid aus weißem Musselin mit großen Ärmeln, für eine Señora aus A Coruña genäht, später geändert und wieder zusammengefügt"
	if got := text(t, record(t, p)); !strings.Contains(got, p.Object.Title) {
		t.Errorf("the title is not there whole")
	}
}

func TestMaterials(t *testing.T) {
	two, cost := 2.0, 61.5
	p := plan.Plan{Materials: []plan.Material{
		{Name: "wadding 6 mm, \"soft\"", Quantity: 1.25, Unit: "m²", Note: "two\nlines"},
		{Name: "=HYPERLINK(\"x\")", Quantity: 2, Unit: "+1", Note: "@SUM(A1)"},
		{Name: "-5", Quantity: 0.5, Unit: "\t", Note: ""},
		{Name: "plank", Quantity: 1.62, Unit: "planks", Note: "see cutting.pdf", WithWaste: &two, MassKg: 2.016, Cost: &cost, Currency: "=EUR", Asks: "inert"},
	}}
	var b bytes.Buffer
	if err := Materials(&b, p); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	want := [][]string{
		{"material", "quantity", "unit", "with waste", "weight_kg", "cost", "currency", "note"},
		{"wadding 6 mm, \"soft\"", "1.25", "m²", "", "", "", "", "two\nlines"},
		{"'=HYPERLINK(\"x\")", "2", "'+1", "", "", "", "", "'@SUM(A1)"},
		{"'-5", "0.5", "'\t", "", "", "", "", ""},
		{"plank", "1.62", "planks", "2", "2.016", "61.5", "'=EUR", "see cutting.pdf; asks: inert"},
	}
	if fmt.Sprint(rows) != fmt.Sprint(want) {
		t.Errorf("rows %q, want %q", rows, want)
	}
}

func FuzzRecord(f *testing.F) {
	for _, s := range []string{"", "silk", strings.Repeat("w", 4000), "\x00\u202e<&>", "漢字", "\xff"} {
		f.Add(s, 12.5)
	}
	f.Fuzz(func(t *testing.T, s string, v float64) {
		p := plantest.Plan()
		p.Object = plan.Object{Number: s, Title: s, Wearer: s, Notice: s}
		p.Levels[0].Name, p.Levels[1].Height, p.Levels[2].BuiltGirth = s, v, &v
		p.Warnings[0].Message = s
		p.Taken[s] = plan.Value{Value: v, Source: s}
		p.Materials[0] = plan.Material{Name: s, Quantity: v, Unit: s, Note: s}
		p.StandHeight = v
		var b bytes.Buffer
		if err := Record(&b, p); err != nil {
			t.Fatal(err)
		}
	})
}
