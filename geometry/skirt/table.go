package skirt

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"

	"understructure/geometry/measure"
	"understructure/geometry/unit"
)

// Confidence says how well a number is known.
type Confidence string

// The three degrees.
const (
	Read       Confidence = "read"        // in the record of the object itself
	Secondary  Confidence = "secondary"   // in what somebody says of such objects, or derived from a reading
	FromMemory Confidence = "from memory" // not looked up; not to be leaned on
)

// Table lists the silhouettes of the years, for whom and which garment. It is in order of
// wearer, garment and year. Lengths are millimetres.
type Table []Row

// Row is the silhouette of some years, with what is known of it.
type Row struct {
	From, To        int // first and last year
	Wearer          measure.Wearer
	Garment         string // "dress", "coat", "breeches", "frock"
	Waist, Shoulder string // in words
	Fullness        string // how it lies, in words
	Silhouette      Silhouette
	HemGirth        *Range // published or remembered hem girths
	BackLonger      *Range // by how much the back is longer than the front
	Cut             Cut    // how skirts were usually cut; "" where that varies
	Hold            []Hold // what holds it, from the inside out
	Source          string // of the silhouette's own numbers
	Confidence      Confidence
	Evidence        []Evidence
}

// Range is what a number was found or remembered to be.
type Range struct {
	Least, Most float64
	Confidence  Confidence
	Source      string
}

// Evidence is one thing known of an object of those years.
type Evidence struct {
	What       string
	Value      float64 // mm; 0 where it is a number of things or only words
	Count      float64 // 0 where it is a length or only words
	Source     string
	Confidence Confidence
}

// Hold names something that holds a skirt.
type Hold string

// What can hold a skirt.
const (
	Tube      Hold = "tube"      // a narrow boned petticoat in place of legs
	Legs      Hold = "legs"      // a boned tube in each leg
	Base      Hold = "petticoat" // a petticoat with two steels in its hem
	Hooped    Hold = "hoops"     // a petticoat with steels from the hip to the hem
	Netted    Hold = "net"       // tiers of gathered net
	Pad       Hold = "pad"       // a stuffed bustle or hip pad
	Framed    Hold = "frame"     // a bustle of half hoops on a back panel
	TrainHold Hold = "train"     // a support under the cloth on the floor
)

var holds = []Hold{Tube, Legs, Base, Hooped, Netted, Pad, Framed, TrainHold}

// MidYear is the year that the row stands for.
func (r Row) MidYear() float64 { return float64(r.From+r.To) / 2 }

// Years is the row's span in words: "1869–75".
func (r Row) Years() string {
	if r.From/100 == r.To/100 {
		return fmt.Sprintf("%d–%02d", r.From, r.To%100)
	}
	return fmt.Sprintf("%d–%d", r.From, r.To)
}

//go:embed silhouettes.json
var silhouettes []byte

// Schema is the JSON Schema of a table's file.
//
//go:embed silhouettes.schema.json
var Schema []byte

// Silhouettes is the table that comes with the program: women's dresses from 1780 to 1930, and
// men's coats and breeches and children's frocks where they want a support.
func Silhouettes() Table {
	t, err := Load(silhouettes)
	if err != nil {
		panic("skirt: the embedded table cannot be read: " + err.Error())
	}
	return t
}

// SilhouettesFile is that table's file, to begin one's own with.
func SilhouettesFile() []byte { return bytes.Clone(silhouettes) }

// Load reads a table from its file, the same as Schema describes. The error names the place, the value and
// what is allowed.
func Load(file []byte) (Table, error) {
	var f tableFile
	d := json.NewDecoder(bytes.NewReader(file))
	d.DisallowUnknownFields()
	if err := d.Decode(&f); err != nil {
		return nil, badFile(file, d.InputOffset(), err)
	}
	if d.More() {
		return nil, fmt.Errorf("skirt: silhouettes, line %d: more than one table", line(file, d.InputOffset()))
	}
	u, ok := unit.Named(f.Unit)
	if !ok {
		return nil, fmt.Errorf("skirt: silhouettes, unit: %q, want \"mm\", \"cm\" or \"in\"", f.Unit)
	}
	if len(f.Rows) == 0 {
		return nil, fmt.Errorf("skirt: silhouettes, rows: none, want at least one")
	}
	var t Table
	for i, r := range f.Rows {
		row, err := r.row(float64(u))
		if err != nil {
			return nil, fmt.Errorf("skirt: silhouettes, rows[%d]%w", i, err)
		}
		t = append(t, row)
	}
	slices.SortStableFunc(t, before)
	return t, t.apart()
}

// badFile says where a file is not what it should be.
func badFile(file []byte, offset int64, err error) error {
	var kind *json.UnmarshalTypeError
	var syntax *json.SyntaxError
	switch {
	case errors.As(err, &kind):
		return fmt.Errorf("skirt: silhouettes, line %d, %s: a %s, want a %s", line(file, kind.Offset), kind.Field, kind.Value, kind.Type)
	case errors.As(err, &syntax):
		return fmt.Errorf("skirt: silhouettes, line %d: %v", line(file, syntax.Offset), err)
	}
	return fmt.Errorf("skirt: silhouettes, line %d: %s", line(file, offset), strings.TrimPrefix(err.Error(), "json: "))
}

func line(file []byte, offset int64) int {
	return 1 + bytes.Count(file[:max(0, min(int(offset), len(file)))], []byte("\n"))
}

// before is the order of a table.
func before(a, b Row) int {
	if c := strings.Compare(string(a.Wearer), string(b.Wearer)); c != 0 {
		return c
	}
	if c := strings.Compare(a.Garment, b.Garment); c != 0 {
		return c
	}
	return a.From - b.From
}

// apart refuses rows that share a year.
func (t Table) apart() error {
	for i := 1; i < len(t); i++ {
		a, b := t[i-1], t[i]
		if a.Wearer == b.Wearer && a.Garment == b.Garment && b.From <= a.To {
			return fmt.Errorf("skirt: silhouettes: the rows of %s and %s for the same %s's %s overlap, want years that do not", a.Years(), b.Years(), a.Wearer, a.Garment)
		}
	}
	return nil
}
