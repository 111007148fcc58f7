package eyetest

import (
	"image/color"
	"math"
	"testing"
)

// Pairs from table 1 of Sharma, Wu and Dalal, 2005.
func TestDifference(t *testing.T) {
	for _, c := range []struct {
		p, q Lab
		want float64
	}{
		{Lab{50, 2.6772, -79.7751}, Lab{50, 0, -82.7485}, 2.0425},
		{Lab{50, 3.1571, -77.2803}, Lab{50, 0, -82.7485}, 2.8615},
		{Lab{50, 2.8361, -74.0200}, Lab{50, 0, -82.7485}, 3.4412},
		{Lab{50, -1.3802, -84.2814}, Lab{50, 0, -82.7485}, 1.0000},
		{Lab{50, 0, 0}, Lab{50, -1, 2}, 2.3669},
		{Lab{50, 2.5, 0}, Lab{50, 0, -2.5}, 4.3065},
		{Lab{50, 2.5, 0}, Lab{73, 25, -18}, 27.1492},
		{Lab{50, 2.5, 0}, Lab{61, -5, 29}, 22.8977},
		{Lab{50, 2.5, 0}, Lab{56, -27, -3}, 31.9030},
		{Lab{50, 2.5, 0}, Lab{58, 24, 15}, 19.4535},
	} {
		for _, got := range []float64{Difference(c.p, c.q), Difference(c.q, c.p)} {
			if math.Abs(got-c.want) > 1e-4 {
				t.Errorf("%v and %v differ by %.4f, want %.4f", c.p, c.q, got, c.want)
			}
		}
	}
}

// White and the primaries of sRGB in CIELAB, as the tables of sRGB converters have them; from memory.
func TestLab(t *testing.T) {
	for c, want := range map[color.NRGBA]Lab{
		{255, 255, 255, 255}: {100, 0, 0}, {255, 0, 0, 255}: {53.24, 80.09, 67.20}, {0, 0, 255, 255}: {32.30, 79.19, -107.86}, {}: {0, 0, 0},
	} {
		got := Sights[0].Sees(c)
		if math.Abs(got.L-want.L) > 0.05 || math.Abs(got.A-want.A) > 0.15 || math.Abs(got.B-want.B) > 0.15 {
			t.Errorf("%v is %.2f, want %.2f", c, got, want)
		}
	}
}

// Red and green of one lightness are alike to eyes without red or green, blue and yellow are not; grey
// keeps its colour whoever looks (the rows of the matrices add up to 1).
func TestSights(t *testing.T) {
	red, green := color.NRGBA{190, 90, 60, 255}, color.NRGBA{115, 125, 50, 255}
	for _, s := range Sights {
		d := Difference(s.Sees(red), s.Sees(green))
		if alike := d < 11; alike == (s.Name == "all colours" || s.Name == "no blue (tritanopia)") {
			t.Errorf("%s: red and green differ by %.1f", s.Name, d)
		}
		if g := s.Sees(color.NRGBA{128, 128, 128, 255}); math.Abs(g.L-53.6) > 0.1 || math.Hypot(g.A, g.B) > 0.1 {
			t.Errorf("%s: grey is seen as %.2f", s.Name, g)
		}
	}
}

func TestTooAlike(t *testing.T) {
	black, white, grey := color.NRGBA{A: 255}, color.NRGBA{255, 255, 255, 255}, color.NRGBA{128, 128, 128, 255}
	if got := TooAlike(black, white, grey); got != nil {
		t.Errorf("black, white and grey: %v", got)
	}
	if got := TooAlike(color.NRGBA{190, 90, 60, 255}, color.NRGBA{115, 125, 50, 255}); len(got) != 3 { // no red, no green, grey
		t.Errorf("red and green of one lightness: %v", got)
	}
}
