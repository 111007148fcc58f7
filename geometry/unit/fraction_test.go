package unit

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestNumber(t *testing.T) {
	for text, want := range map[string]float64{
		"58": 58, " 58,5 ": 58.5, "58.5": 58.5, "+3": 3, "1e3": 1000, "1e-1": 0.1, "0": 0,
		"22 5/8": 22.625, "22⅝": 22.625, "22 ⅝": 22.625, "7/8": 0.875, "⅛": 0.125, "⅔": 2. / 3,
		"-1⅛": -1.125, "-1 1/8": -1.125, "−½": -0.5, "- 3": -3,
	} {
		if got, ok := Number(text); !ok || math.Abs(got-want) > 1e-12 {
			t.Errorf("%q: %v %v, want %v", text, got, ok, want)
		}
	}
	for _, text := range []string{"", "-", "wide", "1/0", "0/0", "/", "1 2", "1 2 3/4", "NaN", "inf", "0x10", "5/", "½½", "⅝ 22", "58 ells", "1_0", "--5", "-+5", "22 -1/2", "1e999", "1e308/1e-300"} {
		if got, ok := Number(text); ok {
			t.Errorf("%q was read as %v", text, got)
		}
	}
}

func TestEighths(t *testing.T) {
	for _, c := range []struct {
		inches float64
		want   string
	}{
		{22.625, "22⅝"}, {22.5, "22½"}, {0.875, "⅞"}, {22, "22"}, {0, "0"}, {-1.125, "-1⅛"}, {-0.25, "-¼"},
		{22.634, "22⅝"}, {22.616, "22⅝"}, {22.995, "23"}, {-0.004, "0"}, {7.991, "8"},
		{22.636, ""}, {22.614, ""}, {22.5625, ""}, {math.Inf(1), ""}, {math.NaN(), ""}, {1e300, ""},
	} {
		if got, ok := Eighths(Length(c.inches) * Inch); got != c.want || ok != (c.want != "") {
			t.Errorf("%g in: %q %v, want %q", c.inches, got, ok, c.want)
		}
	}
}

// Whatever is written in eighths is read back within a hundredth of an inch, and what is an
// eighth is read back as itself.
func TestEighthsAreReadBack(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 8))
	for range 20000 {
		x := (r.Float64() - 0.5) * 200
		if r.IntN(2) == 0 {
			x = math.Round(x*8) / 8
		}
		text, ok := Eighths(Length(x) * Inch)
		if !ok {
			if x*8 == math.Round(x*8) {
				t.Fatalf("%v in is an eighth and was not written as one", x)
			}
			continue
		}
		if got, ok := Number(text); !ok || math.Abs(got-x) > 0.01+1e-9 || x*8 == math.Round(x*8) && got != x {
			t.Fatalf("%v in is written %q and read %v %v", x, text, got, ok)
		}
	}
}

func FuzzNumber(f *testing.F) {
	for _, text := range []string{"58", "58,5", "22 1/2", "22½", "-⅛", "", "-3", "1e9", "0x1p3", "½", "1/2/3", "\xff"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if v, ok := Number(text); ok && (math.IsNaN(v) || math.IsInf(v, 0)) {
			t.Fatalf("%q was read as %v", text, v)
		}
	})
}
