package skirt

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"understructure/geometry/measure"
)

// published reads testdata/skirts/published.csv: lines of years, what and number, in the file's order.
func published(t *testing.T) []string {
	t.Helper()
	file, err := os.ReadFile("../../testdata/skirts/published.csv")
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(file)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, r := range rows[1:] {
		n, err := strconv.ParseFloat(r[2], 64)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, fmt.Sprintf("%s %s %.1f", r[0], r[1], n))
	}
	slices.Sort(out)
	return out
}

// Every number of the table that says it was read stands in the published records, and the other way round.
func TestTableHasWhatWasRead(t *testing.T) {
	var got []string
	for _, r := range Silhouettes() {
		for _, e := range r.Evidence {
			if n := e.Value/10 + e.Count; e.Confidence == Read && n > 0 {
				got = append(got, fmt.Sprintf("%d-%d %s %.1f", r.From, r.To, e.What, n))
			}
		}
	}
	slices.Sort(got)
	want := published(t)
	if len(want) < 80 {
		t.Fatalf("only %d numbers", len(want))
	}
	for _, s := range got {
		if !slices.Contains(want, s) {
			t.Errorf("the table has %q, which no record has", s)
		}
	}
	for _, s := range want {
		if !slices.Contains(got, s) {
			t.Errorf("the table lacks %q", s)
		}
	}
}

// A range that says it was read goes from the least to the most of the row's own evidence.
func TestRangesFollowTheirEvidence(t *testing.T) {
	for _, r := range Silhouettes() {
		for what, g := range map[string]*Range{"hem": r.HemGirth, "back longer": r.BackLonger} {
			if g == nil || g.Confidence != Read {
				continue
			}
			least, most := math.Inf(1), math.Inf(-1)
			for _, e := range r.Evidence {
				if e.What == what && e.Confidence == Read {
					least, most = math.Min(least, e.Value), math.Max(most, e.Value)
				}
			}
			if g.Least != least || g.Most != most {
				t.Errorf("%s, %s: %g to %g, evidence %g to %g", r.Years(), what, g.Least, g.Most, least, most)
			}
		}
	}
}

// Women's rows follow one another from 1780 to 1930; men and children have theirs.
func TestTableCoversTheYears(t *testing.T) {
	rows := Silhouettes().Of(measure.Woman, "dress")
	if rows[0].From != 1780 || rows[len(rows)-1].To != 1930 {
		t.Errorf("from %d to %d", rows[0].From, rows[len(rows)-1].To)
	}
	for i := 1; i < len(rows); i++ {
		if rows[i].From != rows[i-1].To+1 {
			t.Errorf("%s is followed by %s", rows[i-1].Years(), rows[i].Years())
		}
	}
	for _, r := range Silhouettes() {
		if len(r.Evidence) == 0 || r.Source == "" || len(r.Hold) == 0 {
			t.Errorf("%s %s: evidence %d, source %q, hold %v", r.Garment, r.Years(), len(r.Evidence), r.Source, r.Hold)
		}
	}
	for w, garment := range map[measure.Wearer]string{measure.Man: "breeches", measure.Child: Worn(measure.Child)} {
		if len(Silhouettes().Of(w, garment)) == 0 {
			t.Errorf("no %s of a %s", garment, w)
		}
	}
}

// In the middle of its years a row speaks for itself; half way to the next both speak alike.
func TestYearsBlend(t *testing.T) {
	table := Silhouettes()
	sil, row, ok := table.At(measure.Woman, "dress", 1872)
	if !ok || row.From != 1869 || sil != row.Silhouette {
		t.Errorf("1872: %v %s", sil, row.Years())
	}
	a, b := table.Of(measure.Woman, "dress")[10], table.Of(measure.Woman, "dress")[11] // 1869–75, 1876–82
	middle := (a.MidYear() + b.MidYear()) / 2                                          // 1875.5
	for year, part := range map[int]float64{int(middle): (math.Floor(middle) - a.MidYear()) / (b.MidYear() - a.MidYear())} {
		sil, _, _ := table.At(measure.Woman, "dress", year)
		if want := a.Silhouette.Reach.Back + (b.Silhouette.Reach.Back-a.Silhouette.Reach.Back)*part; math.Abs(sil.Reach.Back-want) > 1e-12 {
			t.Errorf("%d: reach %.6f, want %.6f", year, sil.Reach.Back, want)
		}
		if math.Abs(sil.Back.Dome-(1-part)) > 1e-12 || math.Abs(sil.Back.Bell-part) > 1e-12 || sil.check("s") != nil {
			t.Errorf("%d: back %+v", year, sil.Back)
		}
	}
	early, _, _ := table.At(measure.Woman, "dress", 1500)
	late, _, _ := table.At(measure.Woman, "dress", 2020)
	rows := table.Of(measure.Woman, "dress")
	if early != rows[0].Silhouette || late != rows[len(rows)-1].Silhouette {
		t.Error("before and after the table its ends hold")
	}
	if _, _, ok := table.At(measure.Woman, "toga", 1872); ok {
		t.Error("a toga is in the table")
	}
	for year := 1780; year <= 1930; year++ { // never more than a tenth from one year to the next
		a, _, _ := table.At(measure.Woman, "dress", year)
		b, _, _ := table.At(measure.Woman, "dress", year+1)
		if math.Abs(a.Reach.Back-b.Reach.Back) > 0.15 || math.Abs(a.Spread-b.Spread) > 0.15 {
			t.Errorf("from %d to %d it jumps: %+v %+v", year, year+1, a, b)
		}
	}
}

// ours is a user's own table of one row, to be spoilt.
const ours = `{"unit": "in", "rows": [
  {"from": 1860, "to": 1862, "wearer": "woman", "garment": "riding habit", "front": "cone", "side": "cone", "back": "dome",
   "reach": [1, 1, 1.5], "spread": 0.5, "hem": {"least": 100, "most": 120, "source": "our register", "confidence": "read"},
   "hold": ["net"], "source": "our register", "confidence": "read",
   "evidence": [{"what": "hem", "value": 120, "source": "our register", "confidence": "read"}]}
]}`

func TestOnesOwnTable(t *testing.T) {
	table, err := Load([]byte(ours))
	if err != nil {
		t.Fatal(err)
	}
	if h := table[0].HemGirth; h == nil || math.Abs(h.Most-3048) > 1e-9 || math.Abs(table[0].Silhouette.Hem-110*25.4) > 1e-9 {
		t.Errorf("hem %+v", h)
	}
	for name, c := range map[string]struct{ from, to, says string }{
		"not JSON":     {`"unit"`, `unit`, "line 1"},
		"unknown key":  {`"spread"`, `"spred"`, `unknown field "spred"`},
		"a word":       {`"spread": 0.5`, `"spread": "half"`, "line 3"},
		"unit":         {`"in"`, `"ell"`, `unit: "ell", want "mm", "cm" or "in"`},
		"years":        {`"to": 1862`, `"to": 1859`, "rows[0].to: 1859, want a year from 1860"},
		"early":        {`"from": 1860`, `"from": 60`, "rows[0].from: 60"},
		"wearer":       {`"woman"`, `"lady"`, `rows[0].wearer: "lady"`},
		"garment":      {`"riding habit"`, `""`, "rows[0].garment: missing"},
		"profile":      {`"back": "dome"`, `"back": "onion"`, `rows[0].back: "onion", want "cone", "dome", "bell" or "shelf"`},
		"two reaches":  {`[1, 1, 1.5]`, `[1, 1]`, "rows[0].reach: 2 numbers"},
		"reach":        {`[1, 1, 1.5]`, `[1, -1, 1.5]`, "rows[0].reach[1]: -1, want 0.05 to 20"},
		"spread":       {`0.5, "hem"`, `1.5, "hem"`, "rows[0].spread: 1.5, want 0.05 to 1"},
		"hem":          {`"most": 120`, `"most": 90`, "rows[0].hem.most: 90, want 100"},
		"source":       {`"source": "our register", "confidence": "read",`, `"source": "", "confidence": "read",`, "rows[0].source: missing"},
		"confidence":   {`"confidence": "read"},`, `"confidence": "sure"},`, `rows[0].hem.confidence: "sure"`},
		"evidence":     {`"value": 120`, `"value": -1`, "rows[0].evidence[0].value: -1"},
		"hold":         {`["net"]`, `["net", "glue"]`, `rows[0].hold[1]: "glue"`},
		"two tables":   {"\n]}", "\n]} {}", "more than one table"},
		"no rows":      {ours, `{"unit": "cm", "rows": []}`, "rows: none"},
		"empty file":   {ours, ``, "line 1"},
		"overlapping":  {"\n]}", ", " + ours[strings.Index(ours, "{\"from\""):], "overlap"},
		"wrong holder": {ours, `[]`, "line 1"},
	} {
		if _, err := Load([]byte(strings.Replace(ours, c.from, c.to, 1))); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want it to say %q", name, err, c.says)
		}
	}
}

// Schema and decoder agree on our table, on a user's, and on what is refused.
func TestSchemaAgrees(t *testing.T) {
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("silhouettes.schema.json", doc); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile("silhouettes.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		file string
		good bool
	}{
		"ours":         {string(SilhouettesFile()), true},
		"a user's":     {ours, true},
		"no hem":       {strings.Replace(ours, `{"least": 100, "most": 120, "source": "our register", "confidence": "read"}`, "null", 1), true},
		"unknown key":  {strings.Replace(ours, `"spread"`, `"spred"`, 1), false},
		"profile":      {strings.Replace(ours, `"dome"`, `"onion"`, 1), false},
		"reach":        {strings.Replace(ours, `1.5]`, `150]`, 1), false},
		"no source":    {strings.Replace(ours, `"source": "our register", "confidence": "read",`, `"confidence": "read",`, 1), false},
		"a text":       {strings.Replace(ours, `0.5`, `"0.5"`, 1), false},
		"no rows":      {`{"unit": "cm", "rows": []}`, false},
		"unknown unit": {strings.Replace(ours, `"in"`, `"ft"`, 1), false},
	} {
		v, err := jsonschema.UnmarshalJSON(strings.NewReader(c.file))
		if err != nil {
			t.Fatal(err)
		}
		bySchema := schema.Validate(v) == nil
		_, err = Load([]byte(c.file))
		if bySchema != c.good || (err == nil) != c.good {
			t.Errorf("%s: schema %v, decoder %v, want %v", name, bySchema, err, c.good)
		}
	}
}

func FuzzLoad(f *testing.F) {
	f.Add([]byte(ours))
	f.Add([]byte(`{"unit": "cm", "rows": [{"reach": [1e400]}]}`))
	f.Add([]byte(`{"unit": "cm"`))
	f.Fuzz(func(t *testing.T, file []byte) {
		table, err := Load(file)
		if err != nil {
			return
		}
		for _, r := range table {
			if err := r.Silhouette.check("row"); err != nil {
				t.Errorf("loaded, but %v", err)
			}
			if _, err := json.Marshal(r); err != nil {
				t.Errorf("loaded, but %v", err)
			}
		}
	})
}
