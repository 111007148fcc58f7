package measure

import (
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// plausible is a sheet without contradictions, near the means of the smaller women of ANSUR II
// (Gordon and others, NATICK/TR-15/007, 2014).
func plausible() Sheet {
	return Sheet{
		NeckBaseGirth: 349, UnderarmGirth: 800, BustGirth: 813, UnderbustGirth: 740, WaistGirth: 687, HighHipGirth: 820, HipGirth: 898,
		BustFrontArc: 430, WaistFrontArc: 360, HipFrontArc: 450, BustLeftArc: 406, WaistLeftArc: 343, HipLeftArc: 449,
		BustBreadth: 245, BustDepth: 204, UnderbustBreadth: 240, UnderbustDepth: 175, WaistBreadth: 243, WaistDepth: 167,
		HighHipBreadth: 275, HighHipDepth: 185, HipBreadth: 312, HipDepth: 199,
		AcrossFront: 320, AcrossBack: 341, ShoulderLength: 133, ShoulderSlope: 24, ArmscyeGirth: 370,
		BackWaist: 400, FrontWaist: 340, NeckToBustPoint: 250, BustPointWidth: 180, SideLength: 200,
		WaistToHighHip: 80, WaistToHip: 170, WaistHeight: 1000, NapeToHem: 1400,
	}
}

func TestPlausibleSheetHasNoNotice(t *testing.T) {
	for _, w := range []Wearer{Woman, Man, Child} {
		if n := Check(plausible(), w); n != nil {
			t.Errorf("%s: %v", w, n)
		}
	}
	if got := Trusted(plausible()); !maps.Equal(got, plausible()) {
		t.Errorf("a sheet without contradictions is changed: %v", got)
	}
}

func TestContradictions(t *testing.T) {
	for _, c := range []struct {
		name   string
		change Sheet
		code   string
		key    Key
		amount float64
		trust  Sheet // what Trusted must give; a NaN stands for left out
	}{
		{"arc as long as the girth", Sheet{WaistFrontArc: 700}, "front-arc-not-below-girth", WaistFrontArc, 13, Sheet{WaistFrontArc: math.NaN()}},
		{"front arc a quarter", Sheet{BustGirth: 1000, BustBreadth: 300, BustDepth: 250, BustFrontArc: 250, BustLeftArc: 500}, "front-arc-share", BustFrontArc, 100, Sheet{BustFrontArc: 350}},
		{"left arc too long", Sheet{HipLeftArc: 600}, "left-arc-share", HipLeftArc, 61.2, Sheet{HipLeftArc: 538.8}},
		{"3-4-5 box round a smaller girth", Sheet{WaistBreadth: 300, WaistDepth: 400}, "girth-below-breadth-and-depth", WaistGirth, 313, Sheet{WaistBreadth: math.NaN(), WaistDepth: math.NaN()}},
		{"5-12-13 box round a smaller girth", Sheet{UnderbustBreadth: 120, UnderbustDepth: 500}, "girth-below-breadth-and-depth", UnderbustGirth, 288.4, Sheet{UnderbustBreadth: math.NaN(), UnderbustDepth: math.NaN()}},
		{"high hip box smaller than the girth", Sheet{HighHipBreadth: 200, HighHipDepth: 150}, "girth-above-breadth-and-depth", HighHipGirth, 120, Sheet{HighHipBreadth: math.NaN()}},
		{"box smaller than the girth", Sheet{HipBreadth: 250, HipDepth: 150}, "girth-above-breadth-and-depth", HipGirth, 98, Sheet{HipBreadth: math.NaN()}},
		{"hip smaller than waist", Sheet{HipGirth: 680, HighHipGirth: 670, HipFrontArc: 340, HipLeftArc: 340, HipBreadth: 220, HipDepth: 180}, "hip-below-waist", HipGirth, 7, Sheet{HipGirth: 680, WaistGirth: 687}},
		{"hip smaller than high hip", Sheet{HighHipGirth: 910}, "hip-below-high-hip", HipGirth, 12, Sheet{HighHipGirth: 910}},
		{"underbust larger than bust", Sheet{UnderbustGirth: 830}, "underbust-above-bust", BustGirth, 17, Sheet{UnderbustGirth: 830}},
		{"long front", Sheet{FrontWaist: 700}, "front-and-back-waist-lengths", FrontWaist, 100, Sheet{FrontWaist: 600}},
		{"long back", Sheet{BackWaist: 700}, "front-and-back-waist-lengths", BackWaist, 20, Sheet{BackWaist: 680}},
		{"bust below the waist", Sheet{NeckToBustPoint: 460}, "bust-point-below-waist", NeckToBustPoint, 20, Sheet{NeckToBustPoint: math.NaN()}},
		{"bust points wider than the bust", Sheet{BustPointWidth: 260}, "bust-points-too-wide", BustPointWidth, 15, Sheet{BustPointWidth: math.NaN()}},
		{"side as long as the back", Sheet{SideLength: 410}, "side-not-below-back-waist", SideLength, 10, Sheet{SideLength: math.NaN()}},
		{"high hip below hip", Sheet{WaistToHighHip: 180}, "high-hip-not-above-hip", WaistToHighHip, 10, Sheet{WaistToHighHip: math.NaN(), WaistToHip: 170}},
		{"hip below the floor", Sheet{WaistHeight: 150}, "hip-below-floor", WaistHeight, 20, Sheet{WaistHeight: math.NaN()}},
		{"shoulder as long as the back is wide", Sheet{ShoulderLength: 330}, "shoulder-not-below-across", ShoulderLength, 10, Sheet{ShoulderLength: math.NaN()}},
		{"across more than the bust", Sheet{AcrossFront: 430, AcrossBack: 420}, "across-not-below-bust", AcrossBack, 37, Sheet{AcrossBack: math.NaN()}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := plausible()
			maps.Copy(s, c.change)
			got := Check(s, Woman)
			if len(got) != 1 || got[0].Code != c.code || got[0].Key != c.key || math.Abs(got[0].Amount-c.amount) > 0.051 {
				t.Errorf("got %+v\nwant one %s of %s, %g mm", got, c.code, c.key, c.amount)
			}
			trusted := Trusted(s)
			for k, want := range c.trust {
				v, there := trusted[k]
				if there == math.IsNaN(want) || there && math.Abs(v-want) > 0.051 {
					t.Errorf("trusted %s is %g (%v), want %g", k, v, there, want)
				}
			}
		})
	}
}

func TestStoutManIsNoContradiction(t *testing.T) {
	s := Sheet{BustGirth: 1300, UnderbustGirth: 1350, WaistGirth: 1400, HipGirth: 1300}
	if n := Check(s, Man); n != nil {
		t.Errorf("%v", n)
	}
	if n := Check(s, Woman); len(n) != 2 {
		t.Errorf("want the hip and the underbust, got %v", n)
	}
}

// V&A O13837, dress of about 1845 (Victoria and Albert Museum collections record): nape to waist
// 33 cm, waist to hem 104 cm, nape to hem 134 cm. 33 + 104 - 134 = 3 cm.
func TestDressOf1845DisagreesByThreeCentimetres(t *testing.T) {
	bodice, skirt := Sheet{BackWaist: 330, NapeToHem: 1340, WaistGirth: 680}, Sheet{BackLength: 1040, WaistGirth: 680}
	n := CheckSkirt(bodice, skirt)
	if len(n) != 1 || n[0].Code != "lengths-disagree" || n[0].Amount != 30 {
		t.Fatalf("got %+v", n)
	}
	if _, s := TrustedSkirt(bodice, skirt); s[BackLength] != 1010 {
		t.Errorf("trusted back length %g, want 1010", s[BackLength])
	}
}

func TestSkirt(t *testing.T) {
	b, s := Sheet{WaistGirth: 543}, Sheet{WaistGirth: 552} // Museum of the City of New York 62.190.1
	if n := CheckSkirt(b, s); len(n) != 1 || n[0].Code != "waists-differ" || n[0].Amount != 9 {
		t.Errorf("got %+v", n)
	}
	if got, _ := TrustedSkirt(Sheet{WaistGirth: 560, HipGirth: 900}, Sheet{WaistGirth: 550, HipGirth: 3000}); got[WaistGirth] != 550 || got[HipGirth] != 900 {
		t.Errorf("trusted %v", got)
	}
	if n := CheckSkirt(nil, Sheet{WaistGirth: 600, HipGirth: 590}); len(n) != 1 || n[0].Code != "skirt-hip-below-waist" {
		t.Errorf("got %+v", n)
	}
	if n := CheckSkirt(Sheet{BackWaist: 400, NapeToHem: 1450}, Sheet{BackLength: 1000}); len(n) != 1 || n[0].Amount != 50 {
		t.Errorf("got %+v", n)
	}
}

func TestSleeve(t *testing.T) {
	s := Sheet{SleeveLength: 500, UnderLength: 510}
	if n := CheckSleeve(s); len(n) != 1 || n[0].Amount != 10 {
		t.Errorf("got %+v", n)
	}
	if _, there := TrustedSleeve(s)[UnderLength]; there {
		t.Error("the under-sleeve length is kept")
	}
}

// Whatever is typed within the possible ranges: what is trusted contradicts itself in nothing
// but the order of girths, no girth grows, and nothing is trusted that was not taken.
func TestTrustedIsAtPeace(t *testing.T) {
	r := rand.New(rand.NewPCG(1845, 1851))
	orders := []string{"hip-below-waist", "hip-below-high-hip", "underbust-above-bust"}
	for range 20000 {
		s := Sheet{}
		for _, m := range Keys {
			if r.IntN(3) > 0 {
				s[m.Key] = m.Min + r.Float64()*(m.Max-m.Min)
			}
		}
		trusted := Trusted(s)
		for _, n := range Check(trusted, Woman) {
			if !slices.Contains(orders, n.Code) {
				t.Fatalf("%v\nis trusted, yet: %+v", trusted, n)
			}
		}
		for k, v := range trusted {
			m, _ := Find(Keys, k)
			if taken, ok := s[k]; !ok || m.Group == "girths" && v != taken {
				t.Fatalf("%s: taken %g (%v), trusted %g", k, taken, ok, v)
			}
		}
	}
}

func TestTablesAreComplete(t *testing.T) {
	groups := []string{"girths", "arcs", "breadths and depths", "shoulder and neck", "lengths"}
	for name, table := range map[string][]Measure{"bodice": Keys, "skirt": Skirt, "sleeve": Sleeve} {
		seen := map[Key]bool{}
		for _, m := range table {
			if seen[m.Key] || m.Label == "" || m.Where == "" || !slices.Contains(groups, m.Group) || m.Min >= m.Max {
				t.Errorf("%s: row %+v", name, m)
			}
			seen[m.Key] = true
		}
	}
	if len(Keys) != 37 || len(Skirt) != 6 || len(Sleeve) != 5 {
		t.Errorf("tables of %d, %d and %d rows", len(Keys), len(Skirt), len(Sleeve))
	}
	for _, v := range []float64{math.NaN(), math.Inf(1), -1} {
		if Keys[0].Possible(v) {
			t.Errorf("%g is possible", v)
		}
	}
}
