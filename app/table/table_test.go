package table

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"understructure/app/record"
	"understructure/assets"
	"understructure/geometry/measure"
)

// samples are the measurements of every demonstration and published dress, as far as a table holds them.
func samples(t testing.TB) []Row {
	t.Helper()
	var rows []Row
	for _, from := range []fs.FS{assets.Demos, os.DirFS("../../testdata/published")} {
		names, err := fs.Glob(from, "*.json")
		if err != nil || len(names) == 0 {
			t.Fatal(names, err)
		}
		for _, n := range names {
			f, err := from.Open(n)
			if err != nil {
				t.Fatal(err)
			}
			r, err := record.DecodeDraft(f)
			f.Close()
			if err != nil {
				t.Fatal(n, err)
			}
			rows = append(rows, Row{strings.TrimSuffix(n, ".json"), kept(r)})
		}
	}
	return rows
}

// kept is what a table holds of a record: the mount is as a record without any says.
func kept(r record.Record) record.Record {
	out := record.Record{Unit: r.Unit, Object: r.Object, Taken: r.Taken, Garment: r.Garment, Mount: record.Mount{Build: "slices"}}
	if r.Form != nil {
		out.Form, out.Mount.Build = r.Form, "padded"
	}
	return out
}

func written(t testing.TB, rows []Row, c Comma) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, rows, c); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestWhatIsWrittenIsReadAgain(t *testing.T) {
	rows := samples(t)
	taken := 0
	for _, r := range rows {
		taken += len(r.Record.Garment.Bodice)
	}
	if len(rows) < 8 || taken < 40 {
		t.Fatalf("%d rows with %d measurements prove little", len(rows), taken)
	}
	for _, c := range []Comma{Point, DecimalComma} {
		got, err := Read(bytes.NewReader(written(t, rows, c)))
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(got, rows) {
			t.Errorf("decimal comma %v: read back as\n%+v\nwas\n%+v", c, got, rows)
		}
	}
	if !bytes.Equal(written(t, rows, Point), written(t, rows, Point)) {
		t.Error("the same records gave other bytes the second time")
	}
}

func TestSeveralReadingsStandInOneCell(t *testing.T) {
	rows := samples(t)[:1]
	rows[0].Record.Garment.Bodice[measure.WaistGirth] = 615
	rows[0].Record.Garment.Readings.Bodice = record.Readings{measure.WaistGirth: {620, 615}}
	text := written(t, rows, DecimalComma)
	if !bytes.Contains(text, []byte(";62 | 61,5;")) {
		t.Errorf("no two readings in\n%s", text)
	}
	if got, err := Read(bytes.NewReader(text)); err != nil || !reflect.DeepEqual(got, rows) {
		t.Errorf("%v, %+v", err, got)
	}
}

// Every way in which spreadsheets write the same small table.
func TestManyWaysToWriteATable(t *testing.T) {
	for name, text := range map[string]string{
		"commas and points":        "record,unit,garment.bodice.waist_girth\ndress,cm,61.5\n",
		"semicolons and commas":    "record;unit;garment.bodice.waist_girth\ndress;cm;61,5\n",
		"tabs and commas":          "record\tunit\tgarment.bodice.waist_girth\ndress\tcm\t61,5\n",
		"commas and quoted commas": "record,unit,garment.bodice.waist_girth\ndress,cm,\"61,5\"\n",
		"a byte order mark":        "\uFEFFrecord,unit,garment.bodice.waist_girth\ndress,cm,61.5\n",
		"carriage returns":         "record,unit,garment.bodice.waist_girth\r\ndress,cm,61.5\r\n",
		"no end of line":           "record,unit,garment.bodice.waist_girth\ndress,cm,61.5",
		"capitals and spaces":      " Record , UNIT ,Garment.Bodice.Waist_girth\n dress , cm , 61.5 \n",
		"columns in another order": "garment.bodice.waist_girth,record,unit\n61½,dress,cm\n",
		"empty rows and columns":   ",,,\nrecord,unit,garment.bodice.waist_girth,,form.label\n\n,,,,\ndress,cm,61.5,,\n,,\n",
		"remarks":                  "# mine\nrecord,unit,garment.bodice.waist_girth\n# what,to,write\ndress,cm,61.5\n",
		"quotation marks":          "\"record\",\"unit\",\"garment.bodice.waist_girth\"\n\"dress\",\"cm\",\"61.5\"\n",
	} {
		rows, err := Read(strings.NewReader(text))
		if err != nil || len(rows) != 1 {
			t.Errorf("%s: %d rows, %v", name, len(rows), err)
			continue
		}
		if r := rows[0]; r.Name != "dress" || r.Record.Unit != "cm" || r.Record.Garment.Bodice[measure.WaistGirth] != 615 || r.Record.Form != nil {
			t.Errorf("%s: %+v", name, r)
		}
	}
}

func TestFaultsSayWhereAndWhatIsAllowed(t *testing.T) {
	const heads = "record,unit,object.year,garment.bodice.waist_girth,garment.bodice.bust_girth\n"
	for text, want := range map[string]string{
		heads + "a,cm,1872,7,\n":                      `row 2, column D (garment.bodice.waist_girth): 7 cm is not possible; allowed 30–200 cm (300–2000 mm)`,
		heads + "\n\na,cm,,62,\nb,cm,,62,wide\n":      `row 5, column E (garment.bodice.bust_girth): "wide" is not a number; allowed 30–180 cm (300–1800 mm)`,
		heads + "a,cm,,1.234,\n":                      `row 2, column D (garment.bodice.waist_girth): 1.234 cm is not possible`,
		heads + "a,cm,,\"1,234.5\",\n":                `"1,234.5" is not a number`,
		heads + "a,cm,,62 | 7,\n":                     `row 2, column D (garment.bodice.waist_girth): 7 cm is not possible`,
		heads + "a,ell,,62,\n":                        `row 2, column B (unit): "ell" is not possible; allowed mm, cm, in`,
		heads + "a,,,62,\n":                           `row 2, column B (unit): must be given; allowed mm, cm, in`,
		heads + "a,cm,1872.5,62,\n":                   `row 2, column C (object.year): 1872.5 is not possible; allowed a whole year, 1000–2100`,
		heads + "a,cm,,62,\nA,cm,,63,\n":              `row 3: the record would be named A like that of row 2`,
		heads + "a,cm,,62,84,lost\n":                  `row 2, column F: "lost" stands in a column without a heading`,
		"record,waist\na,62\n":                        `row 1, column B: the heading "waist" is not known; allowed are the paths of values in a record`,
		"unit,record,Unit\ncm,a,cm\n":                 `row 1, column C: the heading "Unit" stands twice`,
		"":                                            `the table has no headings`,
		"# only a remark\n":                           `the table has no headings`,
		heads + "a,cm,\"18\"72,62,\n":                 `row 2: a quotation mark stands where none may`,
		"record,unit\n\xfcber,cm\n":                   `the file is not text in UTF-8`,
		"r\x00e\x00c\x00o\x00r\x00d\x00":              `the file is not text in UTF-8`,
		strings.Repeat("x", largest+1):                `the file is too large for a table of measurements; allowed 4 MiB`,
		heads + strings.Repeat("a,,,,\n", mostRows+1): `the table has too many rows; allowed 5000`,
		heads + "\"a\nb\",cm,,62,\nc,cm,,7,\n":        `row 3, column D`,
	} {
		rows, err := Read(strings.NewReader(text))
		var faults Faults
		if !errors.As(err, &faults) || !strings.Contains(err.Error(), want) || rows != nil {
			t.Errorf("%.80q: %d rows, %v; want %s", text, len(rows), err, want)
		}
	}
}

func TestEveryFaultIsNamedAtOnce(t *testing.T) {
	_, err := Read(strings.NewReader("record,unit,garment.bodice.waist_girth\na,cm,7\nb,cm,62\nc,cm,x\n"))
	var faults Faults
	if !errors.As(err, &faults) || len(faults) != 2 || faults[0].Row != 2 || faults[1].Row != 4 {
		t.Errorf("%v", err)
	}
}

func TestNamesOfRecords(t *testing.T) {
	rows, err := Read(strings.NewReader("record,object.number,unit\n../x/..,,cm\n,T 1,cm\n,,cm\nCON,,cm\n"))
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, r := range rows {
		got = append(got, r.Name)
	}
	if want := []string{"_x_", "T_1", "row-4", "_CON"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// What a spreadsheet would run is text to it, and the same text to us.
func TestNoTextIsAFormula(t *testing.T) {
	for _, text := range []string{"=1+1", "+1", "-1", "@SUM(A1)", "'quoted", "'=1", "''", "plain", "=cmd|' /C calc'!A0", `=HYPERLINK("x";"y")`, "＝1", "a=1", "|", "x\u202ey"} {
		rows := []Row{{"a", record.Record{Unit: "cm", Object: record.Object{Title: text, Wearer: measure.Woman}, Mount: record.Mount{Build: "slices"}}}}
		for _, c := range []Comma{Point, DecimalComma} {
			b := written(t, rows, c)
			for _, row := range cells(t, b, c) {
				for _, cell := range row {
					if cell != "" && strings.ContainsRune("=+-@\t\r＝＋－＠", []rune(cell)[0]) {
						t.Errorf("%q begins a formula", cell)
					}
				}
			}
			got, err := Read(bytes.NewReader(b))
			if err != nil || !reflect.DeepEqual(got, rows) {
				t.Errorf("%q is read back as %+v, %v", text, got, err)
			}
		}
	}
}

func cells(t *testing.T, b []byte, c Comma) [][]string {
	t.Helper()
	r := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(b, []byte(byteOrderMark))))
	r.Comma = c.between()
	all, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// A blank has every measurement, says of each where the tape goes and what is possible, and can be read as it is.
func TestBlank(t *testing.T) {
	for _, c := range []Comma{Point, DecimalComma} {
		var b bytes.Buffer
		if err := Blank(&b, c); err != nil {
			t.Fatal(err)
		}
		if rows, err := Read(bytes.NewReader(b.Bytes())); err != nil || len(rows) != 0 {
			t.Errorf("%d rows, %v", len(rows), err)
		}
		all := cells(t, b.Bytes(), c)
		for _, part := range []struct {
			path string
			keys []measure.Measure
		}{{"garment.bodice.", measure.Keys}, {"garment.skirt.", measure.Skirt}, {"garment.sleeve.", measure.Sleeve}, {"form.bodice.", measure.Keys}} {
			for _, m := range part.keys {
				i := slices.Index(all[0], part.path+string(m.Key))
				if i < 0 || !strings.HasSuffix(all[1][i], m.Label) || all[2][i] != m.Where || !strings.HasPrefix(all[3][i], fmt.Sprintf("%g–%g", m.Min, m.Max)) {
					t.Errorf("%s%s is not told", part.path, m.Key)
				}
			}
		}
	}
}

// A column for every value of a record that is no choice of the maker's: what a full record holds beside the mount.
func TestNothingMeasuredIsLeftOut(t *testing.T) {
	known := map[string]bool{"understructure": true}
	for _, c := range columns {
		if known[c.path] {
			t.Errorf("%s is there twice", c.path)
		}
		known[c.path] = true
	}
	for _, r := range samples(t) {
		values, err := flat(r.Record)
		if err != nil {
			t.Fatal(err)
		}
		for _, path := range slices.Sorted(maps.Keys(values)) {
			if !known[path] && !strings.HasPrefix(path, "mount.") {
				t.Errorf("%s: %s has no column", r.Name, path)
			}
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add([]byte("record,unit,garment.bodice.waist_girth\na,cm,61.5 | 62\n"))
	f.Add([]byte("\uFEFFrecord;unit;object.title\r\na;in;\"'=1\"\r\n"))
	f.Add([]byte("unit\tobject.number\n#\ncm\t\"x\ny\"\n"))
	f.Add([]byte(",,\n\"\"\n\xff"))
	f.Fuzz(func(t *testing.T, b []byte) {
		rows, err := Read(bytes.NewReader(b))
		if err != nil {
			return
		}
		again, err := Read(bytes.NewReader(written(t, rows, DecimalComma)))
		if err != nil || !reflect.DeepEqual(again, rows) && len(rows) > 0 {
			t.Errorf("%+v\nis read back as\n%+v, %v", rows, again, err)
		}
	})
}

func BenchmarkRead(b *testing.B) {
	rows := samples(b)
	var many []Row
	for i := range 1000 {
		r := rows[i%len(rows)]
		r.Name = fmt.Sprint(r.Name, i)
		many = append(many, r)
	}
	text := written(b, many, Point)
	for b.Loop() {
		if _, err := Read(bytes.NewReader(text)); err != nil {
			b.Fatal(err)
		}
	}
}
