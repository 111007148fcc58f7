package document

import (
	"math"
	"strings"
	"testing"
)

func TestParse(t *testing.T) {
	for _, c := range []struct {
		text, unit string
		want       float64 // millimetres
	}{
		{"58", "cm", 580}, {" 58,5 ", "cm", 585}, {"58.5", "mm", 58.5},
		{"22 1/2", "in", 571.5}, {"22½", "in", 571.5}, {"22 ½", "in", 571.5}, {"7/8", "in", 22.225}, {"-1⅛", "in", -28.575}, {"⅛", "in", 3.175},
		{"22 in", "cm", 558.8}, {`22"`, "cm", 558.8}, {"580 mm", "in", 580}, {"58CM", "mm", 580},
	} {
		v, err := Length.Parse(c.text, c.unit)
		if err != nil || v == nil || math.Abs(*v-c.want) > 1e-9 {
			t.Errorf("%q in %s: %v, %v; want %v mm", c.text, c.unit, v, err, c.want)
		}
	}
	if v, err := Length.Parse("  ", "cm"); v != nil || err != nil {
		t.Errorf("empty: %v, %v; want not taken", v, err)
	}
	if v, _ := Slope.Parse("22", "in"); v == nil || *v != 22 {
		t.Error("degrees have nothing to do with the unit of lengths")
	}
}

func TestParseRefuses(t *testing.T) {
	for _, text := range []string{"wide", "1/0", "/", "1 2", "1 2 3/4", "NaN", "inf", "0x10", "5/", "½½", "58 ells", "1_0"} {
		if v, err := Length.Parse(text, "cm"); err == nil {
			t.Errorf("%q was read as %v", text, *v)
		}
	}
	if _, err := Length.Parse("5", "ell"); err == nil {
		t.Error("an unknown unit was taken")
	}
}

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		mm   float64
		unit string
		want string
	}{{580, "cm", "58"}, {585, "cm", "58.5"}, {571.5, "in", "22½"}, {22.225, "in", "⅞"}, {574.675, "in", "22⅝"}, {575, "in", "22.638"}, {-3.175, "in", "-⅛"}, {-0.01, "mm", "0"}, {600, "mm", "600"}} {
		if got := Length.Format(c.mm, c.unit); got != c.want {
			t.Errorf("%v mm in %s: %q, want %q", c.mm, c.unit, got, c.want)
		}
	}
}

func TestReadSaysWhatIsPossible(t *testing.T) {
	waist := field(t, dress(), "garment.bodice.waist_girth")
	_, err := waist.Read("7", "cm")
	if err == nil || !strings.Contains(err.Error(), "30 to 200 cm") {
		t.Errorf("got %v; want the range in the unit of the record", err)
	}
}

func FuzzParse(f *testing.F) {
	for _, text := range []string{"58", "58,5", "22 1/2", "22½", `7/8"`, "", "-3", "1e9", "0x1p3", "½", "mm", "1/2/3"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		v, err := Length.Parse(text, "in")
		if err != nil || v == nil {
			return
		}
		if math.IsNaN(*v) || math.IsInf(*v, 0) {
			t.Fatalf("%q was read as %v", text, *v)
		}
	})
}
