package report

import (
	"bytes"
	"strings"
	"testing"

	geo "understructure/geometry/measure"
	"understructure/patterns/plantest"
	"understructure/patterns/tapes"
)

// sheets are measuring sheets of every kind.
var sheets = map[string]Asked{
	"everything":  Everything,
	"bodice only": {},
	"with skirt":  {Skirt: true, Wearer: geo.Child, Unit: "in"},
	"with sleeve": {Sleeve: true, Wearer: geo.Man},
	"with form":   {Form: true},
	"all of it":   {Skirt: true, Sleeve: true, Form: true, Wearer: geo.Woman, Unit: "cm", Number: strings.Repeat("1872.", 40), Title: strings.Repeat("very long title ", 30)},
}

func sheet(t *testing.T, a Asked) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := MeasuringSheetFor(&b, a); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestMeasuringSheet(t *testing.T) {
	var b bytes.Buffer
	if err := MeasuringSheet(&b); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(b.Bytes(), sheet(t, Everything)) {
		t.Error("the sheet is not the same twice")
	}
	got := text(t, b.Bytes())
	for _, table := range [][]geo.Measure{geo.Keys, geo.Skirt, geo.Sleeve} {
		for _, m := range table {
			if !strings.Contains(got, m.Label) {
				t.Errorf("%q is not on the sheet", m.Label)
			}
		}
	}
	for _, want := range []string{"object number", "measured by", "date", "mm cm in", "inside outside", "woman man child", "garment bare form", "keep the smaller", "arsenic", "page 1 of 4", "page 4 of 4"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not on the sheet", want)
		}
	}
}

// A sheet for the garment at hand asks for what that has, and for nothing else.
func TestMeasuringSheetForTheGarmentAtHand(t *testing.T) {
	for name, a := range sheets {
		got := text(t, sheet(t, a))
		for _, part := range []struct {
			asked bool
			label string
		}{{true, "bust girth"}, {a.Skirt, "hem girth"}, {a.Sleeve, "elbow girth"}, {a.Form, "Bare form: girths"}} {
			if strings.Contains(got, part.label) != part.asked {
				t.Errorf("%s: %q is there %v, asked for %v", name, part.label, !part.asked, part.asked)
			}
		}
		want := len(geo.Keys)
		for _, more := range []struct {
			asked bool
			rows  int
		}{{a.Skirt, len(geo.Skirt)}, {a.Sleeve, len(geo.Sleeve)}, {a.Form, len(geo.Keys) - 1}} {
			if more.asked {
				want += more.rows
			}
		}
		if n, m := strings.Count(got, "first"), strings.Count(got, "second"); n != want || m != want {
			t.Errorf("%s: %d first and %d second readings, want %d", name, n, m, want)
		}
	}
}

func TestNothingOverlapsOnAMeasuringSheet(t *testing.T) {
	for name, a := range sheets {
		for _, f := range faults(setMeasuringSheet(a)) {
			t.Errorf("%s: %s", name, f)
		}
	}
}

// Every measurement stands beside its own drawing, with a tape, and two boxes that a pencil can write in.
func TestEveryQuestionHasItsDrawingAndTwoBoxes(t *testing.T) {
	s := setMeasuringSheet(Everything)
	drawn, boxes := 0, 0
	for _, page := range s.pages {
		for _, draw := range page {
			r := &plantest.Recorder{}
			draw(r)
			for _, l := range r.Lines {
				if l.Pen.Colour == tapes.Print.Tape && l.Pen.Width > 0.6 {
					drawn++
				}
				if len(l.Points) == 4 && l.Closed && l.Points[2].X-l.Points[0].X > 20 && l.Points[2].Y-l.Points[0].Y > 9 {
					boxes++
				}
			}
		}
	}
	if all := len(geo.Keys) + len(geo.Skirt) + len(geo.Sleeve); boxes != 2*all || drawn < all {
		t.Errorf("%d measurements, %d boxes, %d tapes", all, boxes, drawn)
	}
}

func BenchmarkMeasuringSheet(b *testing.B) {
	for b.Loop() {
		var out bytes.Buffer
		if err := MeasuringSheet(&out); err != nil {
			b.Fatal(err)
		}
	}
}
