package foam

import (
	"math"
	"testing"

	"understructure/geometry/section"
	"understructure/geometry/surface"
)

var stock = Stock{Plank: 50, Pole: 32, ThinFrom: 350}

// figure is a waisted oval, 0 to 430 mm high.
func figure() surface.Surface {
	s := surface.Surface{Z: surface.Rows(0, 430, 4)}
	for _, z := range s.Z {
		r := 140 - 35*math.Exp(-(z-180)*(z-180)/(2*70*70)) - 0.0004*(z-180)*(z-180)
		h := section.Halves{Right: r, Left: r, Front: 0.8 * r, Back: 0.7 * r, FrontFullness: 2.3, BackFullness: 2.3}
		s.R = append(s.R, section.Of(h.Ring()))
	}
	return s
}

func TestHeightsAddUpExactly(t *testing.T) {
	for _, c := range []struct{ lo, hi, plank float64 }{{0, 430, 50}, {-180.3, 384.4, 50}, {0, 300, 50}, {0, 301, 50}, {0, 12, 50}, {0, 100, 12.7}} {
		zs := Stock{Plank: c.plank, ThinFrom: c.lo + 0.7*(c.hi-c.lo)}.Heights(c.lo, c.hi)
		sum := 0.0
		for k := 1; k < len(zs); k++ {
			d := zs[k] - zs[k-1]
			if d <= 0 || d > c.plank+1e-9 {
				t.Errorf("%+v: slice of %g mm", c, d)
			}
			sum += d
		}
		if math.Abs(sum-(c.hi-c.lo)) > 1e-9 {
			t.Errorf("%+v: heights add up to %g", c, sum)
		}
	}
}

func TestSlicesStayInsideTheCore(t *testing.T) {
	core := figure()
	for _, step := range []Step{Inside, Flush, Bevel} {
		slices, err := stock.Cut(core, 0, 430, step)
		if err != nil {
			t.Fatal(err)
		}
		skin := Skin(slices, 2)
		for i, z := range skin.Z {
			at := core.At(z)
			for j := range at {
				if skin.R[i][j] > at[j]+1e-6 {
					t.Fatalf("%s: at %.1f mm direction %d stands %.4f mm out", step, z, j, skin.R[i][j]-at[j])
				}
			}
		}
	}
}

func TestPinsLieInsideBothNeighbours(t *testing.T) {
	slices, err := stock.Cut(figure(), 0, 430, Inside)
	if err != nil {
		t.Fatal(err)
	}
	for k, s := range slices {
		for _, p := range s.Pins {
			other := slices[max(0, k-1)]
			if p.Upper {
				other = slices[k+1]
			}
			for _, ring := range []section.Section{s.Cut(), other.Cut()} {
				if !ring.Ring().Contains(p.At) {
					t.Errorf("slice %d: pin at %v lies outside", s.Number, p.At)
				}
			}
			if s.Pole != nil && p.At.Dist(*s.Pole) < 16+5 {
				t.Errorf("slice %d: pin at %v meets the pole", s.Number, p.At)
			}
		}
	}
}

// Upright slices are prisms: the foam of the pieces is the volume of the stack.
func TestPrismsFillTheStack(t *testing.T) {
	slices, err := stock.Cut(figure(), 0, 430, Inside)
	if err != nil {
		t.Fatal(err)
	}
	pieces := 0.0
	for _, s := range slices {
		cut := s.Cut()
		pieces += cut.Area() * s.Thickness()
	}
	if got := Skin(slices, 5).Volume(0, 430); math.Abs(got/pieces-1) > 1e-3 {
		t.Errorf("stack of %.0f mm³ from pieces of %.0f mm³", got, pieces)
	}
}
