package skirt

import (
	"math"
	"math/rand/v2"
	"testing"

	"understructure/geometry/curve"
	"understructure/geometry/measure"
	"understructure/geometry/section"
)

// chance draws skirts, bodies and wishes that could be, and some that can hardly be.
type chance struct{ *rand.Rand }

func (c chance) between(lo, hi float64) float64 { return lo + (hi-lo)*c.Float64() }

func (c chance) profile() Profile {
	p := Profile{c.Float64(), c.Float64(), c.Float64(), c.Float64()}
	switch c.IntN(6) {
	case 0:
		return Profile{Cone: 1}
	case 1:
		return Profile{Dome: 1}
	case 2:
		return Profile{Bell: 1}
	case 3:
		return Profile{Shelf: 1}
	}
	sum := p.Cone + p.Dome + p.Bell + p.Shelf
	return Profile{p.Cone / sum, p.Dome / sum, p.Bell / sum, 1 - (p.Cone+p.Dome+p.Bell)/sum}
}

func (c chance) body() Body {
	waist := Oval{c.between(90, 150), c.between(90, 150), c.between(80, 130), c.between(80, 130)}
	b := Body{Waist: waist.Section()}
	for j := range b.Waist { // no body is an oval
		b.Waist[j] *= 1 + 0.01*math.Sin(3*float64(j)*2*math.Pi/section.Directions)
	}
	if c.IntN(3) > 0 {
		b.HipDepth = c.between(120, 240)
		b.Hip = Oval{waist.Right + c.between(10, 60), waist.Left + c.between(10, 60), waist.Front + c.between(0, 40), waist.Back + c.between(10, 60)}.Section()
	}
	return b
}

func (c chance) garment(b Body) Garment {
	g := Garment{Readings: measure.Sheet{measure.WaistGirth: math.Ceil(b.Waist.Tape()) + c.between(0, 40)}}
	front := c.between(400, 1150)
	g.Readings[measure.FrontLength] = front
	if c.IntN(3) > 0 {
		g.Readings[measure.SideLength] = front + c.between(-20, 60)
	}
	if c.IntN(3) > 0 {
		back := front + c.between(-20, 120)
		if c.IntN(4) == 0 {
			back = front + c.between(150, 900)
		}
		g.Readings[measure.BackLength] = back
	}
	g.Readings[measure.HemGirth] = c.between(1100, 5600)
	if c.IntN(2) == 0 {
		g.Readings[measure.HipGirth] = c.between(1000, 1000+g.Readings[measure.HemGirth])
	}
	if c.IntN(3) == 0 {
		g.Cut = Straight
	}
	return g
}

func (c chance) wish() Wish {
	w := Wish{Gap: c.between(0, 30), Ease: c.between(0, 15)}
	if c.IntN(5) > 0 {
		w.Silhouette = Silhouette{c.profile(), c.profile(), c.profile(), Reach{c.between(0.5, 1.2), c.between(0.7, 1.2), c.between(0.8, 1.8)}, c.between(0.3, 1), 0}
	}
	if c.IntN(3) == 0 {
		w.Silhouette.Side, w.Silhouette.Back = w.Silhouette.Front, w.Silhouette.Front
	}
	if c.IntN(3) == 0 {
		w.Stand = c.between(500, 1150)
	}
	return w
}

// many hangs skirts drawn by chance; those that are refused must be refused in words.
func many(t *testing.T, seed uint64, n int, look func(t *testing.T, g Garment, b Body, w Wish, s Skirt)) {
	t.Helper()
	c := chance{rand.New(rand.NewPCG(seed, 1860))}
	hung := 0
	for i := range n {
		b := c.body()
		g, w := c.garment(b), c.wish()
		s, err := Hang(g, b, w)
		if err != nil {
			if len(err.Error()) < 40 {
				t.Errorf("skirt %d: %v", i, err)
			}
			continue
		}
		hung++
		look(t, g, b, w, s)
		if t.Failed() {
			t.Fatalf("seed %d, skirt %d: %+v hung as %+v on the body of hip depth %.0f", seed, i, g, w, b.HipDepth)
		}
	}
	if hung < n*7/10 {
		t.Errorf("only %d of %d skirts hang", hung, n)
	}
}

// In every direction the cloth is as long as taken, to a millionth of a millimetre.
func TestEveryMeridianKeepsItsLength(t *testing.T) {
	many(t, 1, 60, func(t *testing.T, g Garment, b Body, w Wish, s Skirt) {
		for j := range section.Directions {
			l := 0.0
			for k := 1; k < len(s.Cloth); k++ {
				l += s.Cloth[k][j].Dist(s.Cloth[k-1][j])
			}
			if math.Abs(l-s.Length(j)) > 1e-6 {
				t.Errorf("direction %d is %.6f mm long, taken %.6f", j, l, s.Length(j))
			}
		}
		for k, at := range map[measure.Key][]int{measure.FrontLength: {section.Front}, measure.SideLength: {section.Right, section.Left}, measure.BackLength: {section.Back}} {
			for _, j := range at {
				if taken, ok := g.Readings[k]; ok && math.Abs(s.Length(j)-taken) > 1e-6 {
					t.Errorf("%s is %.6f mm, taken %.6f", k, s.Length(j), taken)
				}
			}
		}
	})
}

// Between two lengths taken no length passes both by more than one per cent, where the profile
// is the same all round; from one profile to another the cloth is up to six per cent longer or shorter.
func TestLengthsBetweenInventNothing(t *testing.T) {
	many(t, 2, 60, func(t *testing.T, g Garment, b Body, w Wish, s Skirt) {
		sil := s.Silhouette
		part := 0.01
		if sil.Front != sil.Side || sil.Side != sil.Back {
			part = 0.06
		}
		for _, q := range [][2]int{{section.Right, section.Front}, {section.Front, section.Left}, {section.Left, section.Back}, {section.Back, section.Directions}} {
			lo, hi := s.Length(q[0]), s.Length(q[1]%section.Directions)
			lo, hi = math.Min(lo, hi)*(1-part), math.Max(lo, hi)*(1+part)
			for j := q[0]; j < q[1]; j++ {
				if l := s.Length(j); l < lo || l > hi {
					t.Errorf("direction %d: %.2f mm leaves %.2f to %.2f", j, l, lo, hi)
				}
			}
		}
	})
}

// The tape round the skirt passes the garment's girth at no depth, the hem's least of all; only
// the body alone may, and then it is said.
func TestNeverWiderThanTheGarment(t *testing.T) {
	many(t, 3, 60, func(t *testing.T, g Garment, b Body, w Wish, s Skirt) {
		for k, girth := range s.Girths {
			tape := 0.0
			var ring section.Section
			for j, p := range s.Cloth[k+1] {
				ring[j] = math.Hypot(p.X, p.Y)
			}
			tape = ring.Tape()
			if math.Abs(tape-girth.Tape) > 1e-6 {
				t.Errorf("row %d: tape %.4f, said to be %.4f", k, tape, girth.Tape)
			}
			bare := b.at(-girth.Height)
			if tape > girth.Garment+1e-3 && tape > bare.Tape()+1 {
				t.Errorf("row %d: tape %.2f, garment %.2f, body %.2f", k, tape, girth.Garment, bare.Tape())
			}
		}
		if hem := s.Girths[len(s.Girths)-1]; hem.Tape > g.Readings[measure.HemGirth]-w.Ease+1e-3 {
			t.Errorf("hem %.2f mm, taken %.2f", hem.Tape, g.Readings[measure.HemGirth])
		}
	})
}

// The hem is level: it hangs at the gap, a little over it where it cannot do else, or goes down to the
// floor, and never through it. The cloth goes down and never up.
func TestHemsAreLevel(t *testing.T) {
	many(t, 4, 60, func(t *testing.T, g Garment, b Body, w Wish, s Skirt) {
		for j := range section.Directions {
			foot := s.Cloth[s.standing][j].Z + s.Stand
			if foot < -1e-4 {
				t.Errorf("direction %d goes %.4f mm through the floor", j, -foot)
			}
			if w.Stand == 0 && foot > w.Gap+unevenness+1e-3 {
				t.Errorf("direction %d hangs %.2f mm above the floor, wanted %.2f", j, foot, w.Gap)
			}
			for k := 1; k < len(s.Cloth); k++ {
				if s.Cloth[k][j].Z > s.Cloth[k-1][j].Z+1e-9 {
					t.Fatalf("direction %d rises at row %d", j, k)
				}
			}
		}
	})
}

// The skirt lies outside the body everywhere.
func TestSkirtsClearTheBody(t *testing.T) {
	many(t, 5, 40, func(t *testing.T, g Garment, b Body, w Wish, s Skirt) {
		surf := s.Surface(rising(s.Lowest(), 0, 20)...)
		for i, z := range surf.Z {
			if -z > s.body.HipDepth {
				continue
			}
			body := s.body.at(-z)
			for j, r := range surf.R[i] {
				if r < body[j]-0.5 {
					t.Fatalf("%.0f mm below the waist, direction %d: %.2f, body %.2f", -z, j, r, body[j])
				}
			}
		}
	})
}

func rising(lo, hi float64, n int) []float64 {
	var out []float64
	for i := range n + 1 {
		out = append(out, lo+(hi-lo)*float64(i)/float64(n))
	}
	return out
}

// Hoops lie inside the skirt, nest, and come closer together towards the waist or keep their distance.
func TestHoopsNest(t *testing.T) {
	many(t, 6, 40, func(t *testing.T, g Garment, b Body, w Wish, s Skirt) {
		p, err := s.Petticoat(5)
		if err != nil {
			return
		}
		steels := p.Steels()
		if len(steels) != 5 {
			t.Fatalf("%d steels", len(steels))
		}
		for i, h := range steels {
			at := s.Section(h.Height)
			if own := h.Oval.Section(); own.Tape() > at.Tape()+1e-6 {
				t.Errorf("hoop %d: %.2f mm round, the skirt %.2f", i, own.Tape(), at.Tape())
			}
			for j, r := range h.Oval.Section() {
				if r > at[j]+1e-6 {
					t.Fatalf("hoop %d leaves the skirt in direction %d: %.3f, %.3f", i, j, r, at[j])
				}
			}
			if i == 0 {
				continue
			}
			a := steels[i-1]
			if o := h.Oval; h.Height >= a.Height || o.Right < a.Oval.Right || o.Left < a.Oval.Left || o.Front < a.Oval.Front || o.Back < a.Oval.Back {
				t.Errorf("hoop %d does not nest in %d: %+v %+v", i-1, i, a, h)
			}
			if i > 1 && a.Height-h.Height < steels[i-2].Height-a.Height-1e-6 {
				t.Errorf("hoops %d and %d are closer together than those above", i-1, i)
			}
		}
		if p.Hem().Height < s.Lowest() {
			t.Errorf("the petticoat hangs lower than the skirt")
		}
	})
}

// The cloth between two hoops is nowhere wider than the skirt, and its pieces meet: both edges
// of every seam are equally long and the lower edges make the hoop.
func TestPetticoatPiecesMeet(t *testing.T) {
	many(t, 7, 20, func(t *testing.T, g Garment, b Body, w Wish, s Skirt) {
		p, err := s.Petticoat(3)
		if err != nil {
			return
		}
		for i := 1; i < len(p); i++ {
			round, seam := 0.0, [4][2]float64{}
			for q := range 4 {
				strip, err := p.Quarter(i, q)
				if err != nil {
					t.Fatal(err)
				}
				n := len(strip.Lower) - 1
				round += curve.Length(strip.Lower)
				seam[q] = [2]float64{strip.Lower[0].Dist(strip.Upper[0]), strip.Lower[n].Dist(strip.Upper[n])}
				if _, met := strip.Outline().Crossing(); met {
					t.Errorf("line %d, quarter %d crosses itself", i, q)
				}
			}
			if math.Abs(round-p[i].Oval.Girth()) > 0.2 {
				t.Errorf("line %d: pieces add up to %.3f, hoop %.3f", i, round, p[i].Oval.Girth())
			}
			for q := range 4 {
				if a, b := seam[q][1], seam[(q+1)%4][0]; math.Abs(a-b) > 1e-6 {
					t.Errorf("line %d: seam of %.6f and %.6f", i, a, b)
				}
			}
		}
	})
}

func BenchmarkHang(b *testing.B) {
	sil := Silhouette{Profile{Cone: 1}, Profile{Dome: 1}, Profile{Dome: 1}, Reach{0.8, 1, 1.2}, 0.6, 0}
	g := Garment{Readings: readings(71, 0, 366, 100, 101, 104), Cut: Straight}
	body := Body{Waist: Oval{105, 105, 95, 90}.Section(), Hip: Oval{160, 160, 110, 130}.Section(), HipDepth: 190}
	for b.Loop() {
		if _, err := Hang(g, body, Wish{Gap: 10, Silhouette: sil}); err != nil {
			b.Fatal(err)
		}
	}
}
