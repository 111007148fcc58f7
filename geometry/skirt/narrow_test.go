package skirt

import (
	"math"
	"math/rand/v2"
	"testing"

	"understructure/geometry/measure"
)

// Skirts that are hardly wider than a stout body, whose waist may stand out beyond its hip, and stands that are too low:
// whatever can hang is finite, and no row takes more girth than the garment has or the body needs.
func TestNarrowSkirtsOnStoutBodies(t *testing.T) {
	c := chance{rand.New(rand.NewPCG(9, 1880))}
	hung := 0
	for range 400 {
		waist := Oval{c.between(130, 220), c.between(130, 220), c.between(110, 200), c.between(110, 180)}
		hip := Oval{waist.Right + c.between(-15, 40), waist.Left + c.between(-15, 40), waist.Front + c.between(-40, 15), waist.Back + c.between(-10, 40)}
		b := Body{Waist: waist.Section(), Hip: hip.Section(), HipDepth: c.between(100, 240)}
		round := b.Hip.Tape()
		g := Garment{Readings: measure.Sheet{measure.WaistGirth: b.Waist.Tape() + c.between(-5, 30), measure.FrontLength: c.between(400, 1100)}}
		g.Readings[measure.BackLength] = g.Readings[measure.FrontLength] + c.between(-20, 200)
		if c.IntN(3) > 0 {
			g.Readings[measure.HemGirth] = round * c.between(0.9, 1.6)
		}
		if c.IntN(2) == 0 {
			g.Readings[measure.HipGirth] = round * c.between(0.95, 1.2)
		}
		w := Wish{Gap: 10, Ease: c.between(0, 20), Train: []Train{ByLength, Level, OnFloor}[c.IntN(3)]}
		if c.IntN(2) == 0 {
			w.Stand = g.Readings[measure.FrontLength] * c.between(0.7, 1.1)
		}
		s, err := Hang(g, b, w)
		if err != nil {
			continue
		}
		hung++
		for _, row := range s.Cloth {
			for _, p := range row {
				if math.IsNaN(p.X+p.Y+p.Z) || math.IsInf(p.X+p.Y+p.Z, 0) {
					t.Fatalf("%+v in %+v: cloth at %v", g, w, p)
				}
			}
		}
		both := b.Waist // cloth falls straight from whichever stands out farther
		for j := range both {
			both[j] = math.Max(both[j], b.Hip[j])
		}
		wide := both.Tape()
		for _, girth := range s.Girths {
			if over := girth.Tape - math.Max(girth.Garment, wide); over > 2*readable {
				t.Errorf("%+v in %+v: %.2f mm wider than garment and body at %.0f", g, w, over, girth.Height)
			}
		}
	}
	if hung < 150 {
		t.Errorf("only %d of 400 hang", hung)
	}
}
