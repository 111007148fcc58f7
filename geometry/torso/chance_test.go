package torso_test

import (
	"math/rand/v2"
	"testing"

	"understructure/geometry/measure"
	"understructure/geometry/torso"
)

// person is a sheet by chance, for whom, and when.
type person struct {
	sheet  measure.Sheet
	wearer measure.Wearer
	year   int
}

func (p person) figure(t testing.TB, hand measure.Shape) torso.Torso {
	t.Helper()
	f, err := torso.Build(p.sheet, p.wearer, p.year, hand)
	if err != nil {
		t.Fatalf("%s %v, shaped %v: %v", p.wearer, p.sheet, hand, err)
	}
	return f
}

// people are women, men and children of all sizes, every reading beyond the needed three taken
// of every second, about a third of them crooked. The shares are of the bust girth, the waist girth or the
// back length, and span what the tables of package torso find usual, and some more (from memory).
func people(seed uint64, n int) []person {
	g := rand.New(rand.NewPCG(seed, 1872))
	within := func(lo, hi float64) float64 { return lo + (hi-lo)*g.Float64() }
	var all []person
	for i := range n {
		p := person{wearer: []measure.Wearer{measure.Woman, measure.Man, measure.Child}[i%3], year: []int{0, 1850, 2000, 1790}[i%4]}
		bust := within(700, 1200)
		if p.wearer == measure.Child {
			bust = within(480, 800)
		}
		waist, back := bust*within(0.65, 1), bust*within(0.38, 0.52)
		p.sheet = measure.Sheet{measure.BustGirth: bust, measure.WaistGirth: waist, measure.BackWaist: back}
		for _, r := range []struct {
			of, lo, hi float64
			keys       []measure.Key
		}{
			{bust, 0.95, 1.2, []measure.Key{measure.HipGirth}},
			{bust, 0.94, 1.02, []measure.Key{measure.UnderarmGirth}},
			{bust, 0.84, 0.95, []measure.Key{measure.UnderbustGirth}},
			{waist, 1.02, 1.15, []measure.Key{measure.HighHipGirth}},
			{bust, 0.38, 0.45, []measure.Key{measure.NeckBaseGirth}},
			{back, 0.8, 0.95, []measure.Key{measure.FrontWaist}},
			{back, 0.6, 0.75, []measure.Key{measure.NeckToBustPoint}},
			{back, 0.45, 0.6, []measure.Key{measure.SideLength}},
			{back, 0.4, 0.55, []measure.Key{measure.WaistToHip}},
			{back, 0.18, 0.25, []measure.Key{measure.WaistToHighHip}},
			{bust, 0.13, 0.17, []measure.Key{measure.ShoulderLength}},
			{1, 10, 35, []measure.Key{measure.ShoulderSlope}},
			{bust, 0.36, 0.4, []measure.Key{measure.AcrossBack, measure.AcrossFront}},
			{bust, 0.48, 0.55, []measure.Key{measure.BustFrontArc}},
			{waist, 0.48, 0.55, []measure.Key{measure.WaistFrontArc}},
			{bust, 0.19, 0.24, []measure.Key{measure.BustPointWidth}},
			{bust, 0.31, 0.34, []measure.Key{measure.BustBreadth}},
			{bust, 0.25, 0.28, []measure.Key{measure.BustDepth}},
			{waist, 0.34, 0.38, []measure.Key{measure.WaistBreadth}},
			{waist, 0.24, 0.28, []measure.Key{measure.WaistDepth}},
		} {
			for _, k := range r.keys {
				if v := r.of * within(r.lo, r.hi); g.IntN(2) == 0 {
					p.sheet[k] = v
				}
			}
		}
		if g.IntN(3) == 0 {
			p.sheet[measure.BustLeftArc], p.sheet[measure.WaistLeftArc] = bust*within(0.47, 0.53), waist*within(0.47, 0.53)
		}
		all = append(all, p)
	}
	return all
}

// parts are the lengths of an adjustment, and the readings that they ask for.
var parts = []struct {
	name string
	of   func(*measure.Adjustment) **float64
	got  func(torso.Level) float64
}{
	{"girth", func(a *measure.Adjustment) **float64 { return &a.Girth }, func(l torso.Level) float64 { return l.Reading.Girth }},
	{"breadth", func(a *measure.Adjustment) **float64 { return &a.Breadth }, func(l torso.Level) float64 { return l.Reading.Breadth }},
	{"depth", func(a *measure.Adjustment) **float64 { return &a.Depth }, func(l torso.Level) float64 { return l.Reading.Depth }},
	{"front arc", func(a *measure.Adjustment) **float64 { return &a.FrontArc }, func(l torso.Level) float64 { return l.Reading.FrontArc }},
	{"left arc", func(a *measure.Adjustment) **float64 { return &a.LeftArc }, func(l torso.Level) float64 { return l.Reading.LeftArc }},
}
