package draft

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/skirt"
	"understructure/patterns/piece"
)

// small is an invented small woman's waist and hip.
var small = skirt.Body{
	Waist: skirt.Oval{Right: 105, Left: 105, Front: 95, Back: 90}.Section(),
	Hip:   skirt.Oval{Right: 160, Left: 160, Front: 110, Back: 130}.Section(), HipDepth: 190,
}

// worn hangs a skirt of a year on her: waist, hem and the lengths in front, at the side and behind, in cm.
func worn(t testing.TB, year int, train skirt.Train, cm ...float64) skirt.Skirt {
	t.Helper()
	sheet := measure.Sheet{}
	for i, k := range []measure.Key{measure.WaistGirth, measure.HemGirth, measure.FrontLength, measure.SideLength, measure.BackLength} {
		if i < len(cm) && cm[i] > 0 {
			sheet[k] = cm[i] * 10
		}
	}
	sil, _, _ := skirt.Silhouettes().At(measure.Woman, "dress", year)
	s, err := skirt.Hang(skirt.Garment{Readings: sheet, Cut: skirt.Straight}, small, skirt.Wish{Gap: 10, Train: train, Silhouette: sil})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

var everything = []skirt.Hold{skirt.Tube, skirt.Base, skirt.Hooped, skirt.Netted, skirt.Pad, skirt.Framed, skirt.TrainHold}

func supported(t testing.TB, s skirt.Skirt, o SkirtStock) Support {
	t.Helper()
	out, err := SkirtSupport(s, o)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// supports are those of skirts of many years.
func supports(t *testing.T) map[string]Support {
	return map[string]Support{
		"1840":            supported(t, worn(t, 1840, skirt.ByLength, 68, 356, 104), SkirtStock{Hold: everything}),
		"1858":            supported(t, worn(t, 1858, skirt.ByLength, 71, 376, 109.2, 0, 116.8), SkirtStock{Hold: everything}),
		"1866, train":     supported(t, worn(t, 1866, skirt.ByLength, 66, 518, 106.7, 0, 180.3), SkirtStock{Hold: everything}),
		"1872":            supported(t, worn(t, 1872, skirt.ByLength, 62, 243, 99.1, 0, 102.9), SkirtStock{Hold: everything}),
		"1885, bustle":    supported(t, worn(t, 1885, skirt.Level, 62, 240, 100, 101, 118), SkirtStock{Hold: everything}),
		"1905":            supported(t, worn(t, 1905, skirt.ByLength, 62, 437, 106.7, 0, 119), SkirtStock{Hold: everything}),
		"1925, no hoops":  supported(t, worn(t, 1925, skirt.ByLength, 97, 117, 70), SkirtStock{Hold: everything}),
		"child's, c.1850": supported(t, worn(t, 1850, skirt.ByLength, 62, 180, 35), SkirtStock{Hold: everything}),
	}
}

// Every seam has its counterpart, equally long, and the pieces can be cut.
func TestSkirtPiecesAreSewn(t *testing.T) {
	for name, s := range supports(t) {
		byID := map[string]piece.Piece{}
		for _, p := range s.Pieces {
			if _, twice := byID[p.ID]; twice {
				t.Errorf("%s: two pieces are called %s", name, p.ID)
			}
			byID[p.ID] = p
		}
		for _, p := range s.Pieces {
			if at, met := p.Outline.Crossing(); met || p.Outline.Area() <= 0 {
				t.Errorf("%s: %s has the area %.0f and crosses itself at %v", name, p.ID, p.Outline.Area(), at)
			}
			if p.Strain > 0.01 || p.Count < 1 || p.Name == "" || p.Material == "" {
				t.Errorf("%s: %s: strain %.4f, %q of %q, cut %d", name, p.ID, p.Strain, p.Name, p.Material, p.Count)
			}
			for _, seam := range p.Seams {
				other, ok := byID[seam.To]
				if !ok {
					t.Errorf("%s: %s is sewn to %s, which is none", name, p.ID, seam.To)
					continue
				}
				if !slices.ContainsFunc(other.Seams, func(o piece.Seam) bool { return o.To == p.ID && math.Abs(o.Length-seam.Length) <= 0.05 }) {
					t.Errorf("%s: %s to %s is %.3f mm; the other side has %v", name, p.ID, seam.To, seam.Length, lengthsTo(other, p.ID))
				}
			}
		}
	}
}

func lengthsTo(p piece.Piece, id string) (out []float64) {
	for _, s := range p.Seams {
		if s.To == id {
			out = append(out, s.Length)
		}
	}
	return out
}

// Cloth is cut outside its seam lines, notches point into the allowance, and every sewn piece has a grain.
func TestSkirtPiecesAreMarked(t *testing.T) {
	for name, s := range supports(t) {
		for _, p := range s.Pieces {
			if !p.Sewn() {
				t.Errorf("%s: %s has no allowance", name, p.ID)
			}
			cut := p.CutLine()
			if at, met := cut.Crossing(); met {
				t.Errorf("%s: %s is cut along a line that crosses itself at %v", name, p.ID, at)
			}
			arrows := 0
			for _, m := range p.Marks {
				switch m.Kind {
				case piece.Notch:
					if p.Outline.Contains(m.Points[1]) || !cut.Contains(m.Points[1]) {
						t.Errorf("%s: %s: the notch at %v points inward", name, p.ID, m.Points[0])
					}
				case piece.Up:
					arrows++
				}
			}
			if arrows != 1 {
				t.Errorf("%s: %s has %d arrows", name, p.ID, arrows)
			}
		}
	}
}

// Curved edges are drawn in sides that lie within a twentieth of a millimetre of them.
func TestSkirtEdgesAreFine(t *testing.T) {
	for name, s := range supports(t) {
		for _, p := range s.Pieces {
			if off := offCurve(p.Outline); off > 0.05 {
				t.Errorf("%s: %s lies %.3f mm off its curve", name, p.ID, off)
			}
		}
	}
}

// offCurve is how far a side lies within the circle through its ends and the next corner, where the outline turns by less than 15°.
func offCurve(r plane.Ring) float64 {
	most := 0.0
	for i, b := range r {
		a, c := r[(i+len(r)-1)%len(r)], r[(i+1)%len(r)]
		u, v := b.Sub(a), c.Sub(b)
		turn := math.Abs(math.Atan2(u.Cross(v), u.Dot(v)))
		if turn > math.Pi/12 || turn < 1e-9 {
			continue
		}
		most = math.Max(most, math.Min(u.Norm(), v.Norm())*turn/8)
	}
	return most
}

// row is the row of that name.
func row(t *testing.T, s Support, name string) Cut {
	t.Helper()
	for _, c := range s.Cuts {
		if strings.HasPrefix(c.Name, name) {
			return c
		}
	}
	t.Fatalf("no row %q", name)
	return Cut{}
}

// Interpret and Display Historic Dress, chapter 8: a steel is its circumference and 15 cm, the upper
// one 1 cm tighter; a waist tape is 1.75 m, each lower one slightly longer. Te Papa: a tube is as
// long as the shortest length and as wide as the padded hip.
func TestPetticoatRules(t *testing.T) {
	hung := worn(t, 1851, skirt.ByLength, 71, 366, 102.5, 103, 104)
	s := supported(t, hung, SkirtStock{Hold: []skirt.Hold{skirt.Tube, skirt.Base, skirt.Netted}, PaddedHip: 930})
	p, err := hung.Petticoat(1)
	if err != nil {
		t.Fatal(err)
	}
	around := p.Hem().Oval.Girth()
	if got := row(t, s, "hem steel").Length; math.Abs(got-(around+150)) > 1e-9 {
		t.Errorf("hem steel %.3f, want %.3f", got, around+150)
	}
	if got := row(t, s, "upper steel").Length; math.Abs(got-(around-10+150)) > 1e-9 {
		t.Errorf("upper steel %.3f, want %.3f", got, around+140)
	}
	net, base, tube := row(t, s, "waist tape, net"), row(t, s, "waist tape, base petticoat"), row(t, s, "waist tape, tube")
	if net.Length != 1750 || base.Length <= net.Length || tube.Length <= base.Length || net.Width < 10 || net.Width > 15 {
		t.Errorf("waist tapes %.0f, %.0f, %.0f mm, %.0f wide", net.Length, base.Length, tube.Length, net.Width)
	}
	lo, hi := s.Pieces[0].Outline.Bounds()
	if w, h := hi.X-lo.X, hi.Y-lo.Y; w != 930 || h != 1025 || !strings.HasPrefix(s.Pieces[0].ID, "P01-tube") {
		t.Errorf("%s is %.1f by %.1f, want 930 by 1025", s.Pieces[0].ID, w, h)
	}
}

// A petticoat is an inch shorter than its skirt (a school text of 1911), along the cloth.
func TestPetticoatIsShorter(t *testing.T) {
	hung := worn(t, 1863, skirt.ByLength, 71, 366, 102.5, 102.5, 102.5) // cones
	p, err := hung.Petticoat(1)
	if err != nil {
		t.Fatal(err)
	}
	front := hung.Cloth[len(hung.Cloth)-1][64] // the direction of the front
	steep := math.Hypot(front.Y-95, front.Z) / -front.Z
	if left := (p.Hem().Height - front.Z) * steep; math.Abs(left-25) > 0.5 {
		t.Errorf("%.2f mm shorter, want 25", left)
	}
}

// The hem is cut 3 cm outside its line, the rest 2 cm.
func TestPetticoatAllowances(t *testing.T) {
	s := supported(t, worn(t, 1863, skirt.ByLength, 71, 366, 102.5, 102.5, 102.5), SkirtStock{Hold: []skirt.Hold{skirt.Base}})
	for _, p := range s.Pieces {
		lo, hi := p.Outline.Bounds()
		cutLo, cutHi := plane.Ring(p.CutLine()).Bounds()
		if hem := lo.Y - cutLo.Y; hem < 29.5 || hem > 45 { // corners of a wide hem turn up
			t.Errorf("%s: hem %.2f mm", p.ID, hem)
		}
		if top := cutHi.Y - hi.Y; top < 20 || top > 30 {
			t.Errorf("%s: top %.2f mm", p.ID, top)
		}
	}
}

// A hooped petticoat: five steels with 20 cm of overlap, tapes in front, at both sides and behind between them.
func TestHoopTable(t *testing.T) {
	hung := worn(t, 1858, skirt.ByLength, 71, 376, 109.2, 0, 116.8)
	s := supported(t, hung, SkirtStock{Hold: []skirt.Hold{skirt.Hooped}})
	p, _ := hung.Petticoat(5)
	steels, tapes, before := 0, 0, 0.0
	for _, c := range s.Cuts {
		switch {
		case strings.HasPrefix(c.Name, "H"):
			if want := p.Steels()[steels].Oval.Girth() + 200; math.Abs(c.Length-want) > 1e-9 || c.Length < before {
				t.Errorf("%s: %.2f, want %.2f", c.Name, c.Length, want)
			}
			before = c.Length
			steels++
		case strings.HasPrefix(c.Name, "tape, "):
			tapes++
		}
	}
	if steels != 5 || tapes != 20 {
		t.Errorf("%d steels, %d tapes", steels, tapes)
	}
	down := 0.0
	for _, c := range s.Cuts {
		if strings.HasPrefix(c.Name, "tape, back") {
			down += c.Length - 40
		}
	}
	if hung.Back.Length-25 < down || down < 0.9*hung.Back.Length {
		t.Errorf("the tapes behind add up to %.1f mm, the skirt is %.1f", down, hung.Back.Length)
	}
	// A cage crinoline weighs 0.45 to 0.9 kg (Five Colleges museums); cloth and five steels no more.
	if s.MassKg < 0.2 || s.MassKg > 1.2 {
		t.Errorf("%.2f kg", s.MassKg)
	}
}

func TestSkirtCautions(t *testing.T) {
	all := supports(t)
	says := func(s Support, what string) bool { return strings.Contains(strings.Join(s.Cautions, " "), what) }
	if s := all["1866, train"]; !says(s, "cut steel") || !says(s, "two people") || !says(s, "where people step") || !says(s, "kg") {
		t.Errorf("%v", s.Cautions)
	}
	tube := supported(t, worn(t, 1925, skirt.ByLength, 97, 117, 70), SkirtStock{Hold: []skirt.Hold{skirt.Tube}, GarmentMassKg: 1.5})
	if says(tube, "cut steel") || says(tube, "two people") {
		t.Errorf("%v", tube.Cautions)
	}
	if heavy := supported(t, worn(t, 1925, skirt.ByLength, 97, 117, 70), SkirtStock{GarmentMassKg: 3}); !says(heavy, "two people") {
		t.Errorf("%v", heavy.Cautions)
	}
}

// What has no room is left out and said.
func TestSkirtLeftOut(t *testing.T) {
	s := supports(t)["1925, no hoops"]
	out := strings.Join(s.LeftOut, "\n")
	for _, what := range []string{"pad: ", "frame: ", "train: "} {
		if !strings.Contains(out, what) {
			t.Errorf("%q does not say %q", out, what)
		}
	}
	for _, p := range s.Pieces {
		if p.ID[0] == 'B' {
			t.Errorf("%s is there", p.ID)
		}
	}
}

// Every row of the table can be hung and held as it says, on garments of a usual size for its
// wearer: waist, hem and front length in cm, from memory.
func TestEveryRowCanBeHeld(t *testing.T) {
	usual := map[measure.Wearer][3]float64{measure.Woman: {66, 300, 103}, measure.Man: {86, 150, 60}, measure.Child: {56, 160, 45}}
	for _, r := range skirt.Silhouettes() {
		cm := usual[r.Wearer]
		hem := cm[1] * 10
		if r.HemGirth != nil {
			hem = r.Silhouette.Hem
		}
		body := small
		if r.Wearer != measure.Woman { // without hips
			body = skirt.Body{Waist: skirt.Round(cm[0]*10 - 15).Section()}
		}
		g := skirt.Garment{Readings: measure.Sheet{measure.WaistGirth: cm[0] * 10, measure.HemGirth: hem, measure.FrontLength: cm[2] * 10}, Cut: r.Cut}
		s, err := skirt.Hang(g, body, skirt.Wish{Gap: 10, Silhouette: r.Silhouette})
		if err != nil {
			t.Errorf("%s %s: %v", r.Garment, r.Years(), err)
			continue
		}
		out := supported(t, s, SkirtStock{Hold: r.Hold})
		for _, left := range out.LeftOut { // without a back length there is no train, and little room for a bustle
			if !strings.HasPrefix(left, "train: ") && !strings.HasPrefix(left, "pad: ") {
				t.Errorf("%s %s: %s", r.Garment, r.Years(), left)
			}
		}
		if len(out.Pieces) == 0 {
			t.Errorf("%s %s: nothing is cut", r.Garment, r.Years())
		}
	}
}

// The tape that carries the skirt is tied over a band that has no fastening.
func TestCarryingTape(t *testing.T) {
	s := worn(t, 1851, skirt.ByLength, 71, 366, 102.5)
	for fastens, says := range map[bool]string{false: "no fastening", true: "inside the skirt's band"} {
		c := row(t, supported(t, s, SkirtStock{Waist: 710, BandFastens: fastens}), "carrying tape")
		if c.Length != 1310 || !strings.Contains(c.Note, says) || !strings.Contains(c.Note, "common practice, no published source") {
			t.Errorf("fastens %v: %+v", fastens, c)
		}
	}
}

func TestSkirtSupportRefusals(t *testing.T) {
	s := worn(t, 1851, skirt.ByLength, 71, 366, 102.5)
	for name, c := range map[string]struct {
		s    skirt.Skirt
		o    SkirtStock
		says string
	}{
		"no skirt":      {skirt.Skirt{}, SkirtStock{}, "there is no skirt"},
		"unknown":       {s, SkirtStock{Hold: []skirt.Hold{"balloon"}}, `"balloon"`},
		"hip":           {s, SkirtStock{PaddedHip: math.NaN()}, "padded hip: NaN, want 0 to 3000"},
		"net width":     {s, SkirtStock{NetWidth: -1}, "net width: -1"},
		"mass":          {s, SkirtStock{GarmentMassKg: math.Inf(1)}, "garment mass: +Inf"},
		"hoops":         {s, SkirtStock{Hoops: -2}, "hoops: -2"},
		"pad thickness": {s, SkirtStock{PadThickness: 1e9}, "pad thickness"},
	} {
		if _, err := SkirtSupport(c.s, c.o); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want it to say %q", name, err, c.says)
		}
	}
}

// Skirts of years and lengths drawn by chance: nothing panics, every seam fits.
func TestSupportsByChance(t *testing.T) {
	g := rand.New(rand.NewPCG(4, 1872))
	for range 25 {
		year := 1780 + g.IntN(151)
		front := 40 + 75*g.Float64()
		sheet := []float64{66, 130 + 400*g.Float64(), front, 0, front + 12*g.Float64()}
		if g.IntN(4) == 0 {
			sheet[1], sheet[4] = sheet[1]+200, front+15+60*g.Float64()
		}
		s := supported(t, worn(t, year, skirt.ByLength, sheet...), SkirtStock{Hold: everything, Hoops: 1 + g.IntN(8)})
		length := map[[2]string]float64{}
		for _, p := range s.Pieces {
			for _, seam := range p.Seams {
				length[[2]string{p.ID, seam.To}] += seam.Length
			}
		}
		for ends, l := range length {
			if back := length[[2]string{ends[1], ends[0]}]; math.Abs(l-back) > 0.05 {
				t.Errorf("%d, %v cm: %v: %.4f and %.4f", year, sheet, ends, l, back)
			}
		}
	}
}

func BenchmarkSkirtSupport(b *testing.B) {
	s := worn(b, 1866, skirt.ByLength, 66, 518, 106.7, 0, 180.3)
	for b.Loop() {
		if _, err := SkirtSupport(s, SkirtStock{Hold: everything}); err != nil {
			b.Fatal(err)
		}
	}
}
