package fit

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"understructure/geometry/space"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s = %.9g, want %.9g within %.2g", what, got, want, within)
	}
}

// IEC 60335-1: 159, 176, 194 mm for a centre at 0.9, 1.0, 1.1 m; IEC 62368-1: 195 mm at 1.5 m and above (all derived).
func TestRoundBase(t *testing.T) {
	for height, want := range map[float64]float64{900: 159, 1000: 176, 1100: 194} {
		b := Weighed([]Load{{Mass: 8, At: space.Point{Z: height}}}, 900)
		near(t, "radius", b.Round(), want, 0.7)
	}
	near(t, "pushed", Weighed([]Load{{Mass: 8, At: space.Point{Z: 1000}}}, 1700).Round(), 195, 1e-9)
	near(t, "a low one", Weighed([]Load{{Mass: 8, At: space.Point{Z: 300}}}, 1000).Round(), 130, 1e-9)
	near(t, "over 196 kg the push is 250 N", Weighed([]Load{{Mass: 500, At: space.Point{Z: 100}}}, 1500).Round(), 250/(500*9.80665)*1500, 1e-9)
}

// The old sum and the new one agree where nothing lies aside.
func TestBalanceAgreesWithStand(t *testing.T) {
	f := Stand([]Part{{4, 1100}, {2, 800}}, 1600)
	b := Weighed([]Load{{"mount", 4, space.Point{Z: 1100}}, {"garment", 2, space.Point{Z: 800}}}, 1600)
	near(t, "mass", b.Mass, f.Mass, 1e-12)
	near(t, "centre", b.At.Z, f.Centre, 1e-9)
	near(t, "radius", b.Round(), math.Max(f.Tilt, f.Push), 1e-9)
	near(t, "side", b.Square(), 2*b.Round(), 1e-9)
}

// A bustle of 1.5 kg that hangs 300 mm behind on a mount of 4.5 kg draws the centre back by 75 mm, and the base must reach as
// much farther.
func TestWeightBehind(t *testing.T) {
	b := Weighed([]Load{{"mount", 4.5, space.Point{Z: 1000}}, {"bustle", 1.5, space.Point{Y: -300, Z: 1000}}}, 1600)
	near(t, "aside", b.At.Y, -75, 1e-9)
	near(t, "radius", b.Round(), 75+195, 1e-9)
	near(t, "side", b.Square(), 2*(75+195), 1e-9)
	if u := b.Under(); u.Y != b.At.Y || u.X != 0 {
		t.Errorf("base goes to %v", u)
	}
	c := b.On(Base{Round: true, Size: 230})
	if c.Tilt || c.Push || math.Abs(c.ShortBy-40) > 1e-9 {
		t.Errorf("%+v", c)
	}
	near(t, "tips at", c.TipsAt, math.Atan((230-75)/1000.), 1e-12)
	near(t, "tips by", c.TipsBy, 155/1500., 1e-12)
}

// Ballast does what it says: with it the mount just passes, with a little less it does not.
func TestBallast(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 9))
	tried := 0
	for range 2000 {
		load := Load{"mount", 2 + 20*rng.Float64(), space.Point{X: 60 * rng.NormFloat64(), Y: 90 * rng.NormFloat64(), Z: 300 + 1100*rng.Float64()}}
		b := Weighed([]Load{load}, load.At.Z+300)
		base := Base{Round: rng.IntN(2) == 0, Size: 100 + 500*rng.Float64()}
		need := b.On(base).Ballast
		if need == 0 || math.IsInf(need, 1) || need > 100 {
			continue
		}
		tried++
		with := func(kg float64) Check {
			return Weighed([]Load{load, {"ballast", kg, space.Point{}}}, b.Top).On(base)
		}
		if c := with(need * (1 + 1e-9)); !c.Tilt || !c.Push {
			t.Fatalf("%+v with %.3f kg: %+v", load, need, c)
		}
		if c := with(need * 0.99); c.Tilt && c.Push {
			t.Fatalf("%+v stands with less than %.3f kg", load, need)
		}
	}
	if tried < 200 {
		t.Errorf("only %d tried", tried)
	}
}

// A base of the size asked for holds the plumb line from the centre of gravity on a floor that leans 10° in any direction;
// one a millimetre smaller does not in some.
func TestLeaningEveryWay(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 1))
	holds := func(b Balance, base Base) bool {
		for k := range 3600 {
			sin, cos := math.Sincos(2 * math.Pi * float64(k) / 3600)
			x, y := b.At.X+b.At.Z*math.Tan(tilt)*cos, b.At.Y+b.At.Z*math.Tan(tilt)*sin
			if base.Round && math.Hypot(x, y) > base.Size+1e-3 || !base.Round && math.Max(math.Abs(x), math.Abs(y)) > base.Size/2+1e-3 {
				return false
			}
		}
		return true
	}
	for range 200 {
		b := Weighed([]Load{{"all", 5, space.Point{X: 50 * rng.NormFloat64(), Y: 80 * rng.NormFloat64(), Z: 500 + 800*rng.Float64()}}}, 100) // low, so that the lean decides
		round, square := Base{true, b.Round()}, Base{false, b.Square()}
		if !holds(b, round) || !holds(b, square) {
			t.Fatalf("%+v falls on %v or %v", b, round, square)
		}
		round.Size, square.Size = round.Size-1, square.Size-2
		if holds(b, round) || holds(b, square) {
			t.Fatalf("%+v stands on less", b)
		}
	}
}

func TestWithoutMass(t *testing.T) {
	b := Weighed([]Load{{"air", 0, space.Point{Y: 900, Z: 3000}}}, 0)
	if b.Mass != 0 || b.Round() != 0 || !b.On(Base{Round: true}).Tilt {
		t.Errorf("%+v", b)
	}
}

func TestCautions(t *testing.T) {
	b := Weighed([]Load{{"mount", 15, space.Point{Z: 1000}}, {"garment", 6, space.Point{Y: -200, Z: 900}}}, 1600)
	said := map[string]string{}
	for _, n := range b.Cautions(Base{Round: true, Size: 200}, 6) {
		said[n.Code] = n.Message
	}
	for code, want := range map[string]string{
		"may-tip": "kg low in the middle", "off-balance": "behind", "heavy": "two people", "heavy-garment": "6.0 kg", "standing-self-check": "local rules",
	} {
		if !strings.Contains(said[code], want) {
			t.Errorf("%s: %q, want %q", code, said[code], want)
		}
	}
	if n := b.Cautions(Base{Round: true, Size: 900}, 1); n[len(n)-1].Code != "standing-self-check" {
		t.Error("the check is given as a promise")
	}
}

// A cubic metre of plank at 2.2 lb/ft³: 1 lb/ft³ is 16.02 kg/m³ (derived from the international pound and foot).
func TestStuff(t *testing.T) {
	near(t, "plank", Foam.OfVolume(1e9), 2.2*0.45359237/math.Pow(0.3048, 3), 0.3)
	near(t, "wadding 2.5 mm", Wadding.OfVolume(2.5e6), 0.14, 1e-12)
	near(t, "net", Net.OfArea(1e6), 0.02, 1e-12)
	for _, s := range []Stuff{Foam, Wadding, Net, Steel, Jersey, Cotton, Card} {
		if s.Source == "" || s.Name == "" || (s.Solid > 0) == (s.Sheet > 0) {
			t.Errorf("%+v", s)
		}
	}
}
