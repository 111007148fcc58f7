package pipeline_test

import (
	"math"
	"math/rand/v2"

	"understructure/app/record"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/torso"
)

// The figures below are drawn by chance, plausible but nobody's: a figure is made from a few
// sizes, measured all over by the walkers of this package's tests, and a record takes some of
// these readings with the error of a hand.

// hand is one standard deviation of a reading, mm: a tenth of it is rounding to the millimetre.
const hand = 2.0

// sizes are the ranges that figures are drawn from: girths of bust in mm, waist and hip as parts of it.
// From memory, wide on purpose.
var sizes = map[measure.Wearer]struct{ bust, waist, hip, back [2]float64 }{
	measure.Woman: {[2]float64{640, 1500}, [2]float64{0.64, 1}, [2]float64{1, 1.2}, [2]float64{340, 450}},
	measure.Man:   {[2]float64{750, 1500}, [2]float64{0.78, 1.08}, [2]float64{0.9, 1.08}, [2]float64{400, 510}},
	measure.Child: {[2]float64{450, 800}, [2]float64{0.84, 1.03}, [2]float64{0.96, 1.12}, [2]float64{0, 0}},
}

func within(g *rand.Rand, r [2]float64) float64 { return r[0] + (r[1]-r[0])*g.Float64() }

// randomRecord is record number n of the endless list with the given seed.
func randomRecord(seed, n uint64) record.Record {
	g := rand.New(rand.NewPCG(seed, n))
	w := []measure.Wearer{measure.Woman, measure.Woman, measure.Man, measure.Child}[g.IntN(4)]
	r := record.Record{
		Unit:    "mm",
		Object:  record.Object{Number: "R", Year: []int{0, 1750, 1805, 1872, 1890, 1915, 1955}[g.IntN(7)], Wearer: w, Notice: "invented by chance"},
		Taken:   record.Taken{Side: "inside"},
		Garment: record.Garment{Strength: []string{"sound", "fair", "weak"}[g.IntN(3)]},
	}
	core := coreSizes(g, w)
	share := []float64{0, 0.3, 0.7, 1}[g.IntN(4)]
	r.Garment.Bodice = some(g, readings(g, core, w, r.Object.Year), share)
	r.Mount = randomMount(g)
	if r.Mount.Build == "padded" {
		year := 2000
		form := measure.Sheet{}
		less := 1 - within(g, [2]float64{0.01, 0.12}) // of most girths
		for _, k := range order {                     // in order, so that chance is the same every time
			if v, ok := core[k]; ok {
				form[k] = v * less * (1 + 0.01*g.NormFloat64())
			}
		}
		form[measure.BackWaist] = core[measure.BackWaist] * (1 + 0.02*g.NormFloat64())
		r.Form = &record.Form{Label: "invented", Bodice: some(g, readings(g, form, w, year), share)}
	}
	dress(g, core, &r) // last, so that what chance gave before stays the same
	return r
}

func coreSizes(g *rand.Rand, w measure.Wearer) measure.Sheet {
	s := sizes[w]
	bust := within(g, s.bust)
	back := within(g, s.back)
	if w == measure.Child {
		back = bust * within(g, [2]float64{0.42, 0.5})
	}
	waist := bust * within(g, s.waist)
	hip := math.Max(bust*within(g, s.hip), waist*0.98)
	if w == measure.Woman {
		hip = math.Max(hip, waist*1.02)
	}
	return measure.Sheet{measure.BustGirth: bust, measure.WaistGirth: waist, measure.HipGirth: hip, measure.BackWaist: back}
}

// readings measures a figure of these sizes all over, each reading with a hand's error.
func readings(g *rand.Rand, core measure.Sheet, w measure.Wearer, year int) measure.Sheet {
	t, err := torso.Build(core, w, year, nil)
	if err != nil {
		panic(err) // the plain sizes must always make a figure
	}
	all := measured(t)
	all[measure.BustPointWidth] = 2 * t.BustPoint.X
	all[measure.ShoulderSlope] = math.Atan2(t.Neck.Z-t.Shoulder.Z, t.Shoulder.X-t.Neck.X) * 180 / math.Pi
	for _, k := range order {
		if v, ok := all[k]; ok {
			all[k] = math.Round(v + hand*g.NormFloat64())
		}
	}
	all[measure.ShoulderSlope] = math.Max(2, all[measure.ShoulderSlope])
	return all
}

// order is the order in which chance is asked, so that a record is the same every time.
var order = func() []measure.Key {
	var ks []measure.Key
	for _, m := range measure.Keys {
		ks = append(ks, m.Key)
	}
	return ks
}()

// measured takes girths, breadths, depths, arcs and lengths of a figure from its skin.
func measured(t torso.Torso) measure.Sheet {
	s := measure.Sheet{}
	for _, l := range []struct {
		at                                 measure.Level
		girth, breadth, depth, front, left measure.Key
	}{
		{measure.NeckBase, measure.NeckBaseGirth, "", "", "", ""},
		{measure.Bust, measure.BustGirth, measure.BustBreadth, measure.BustDepth, measure.BustFrontArc, measure.BustLeftArc},
		{measure.Underbust, measure.UnderbustGirth, "", "", "", ""},
		{measure.Waist, measure.WaistGirth, measure.WaistBreadth, measure.WaistDepth, measure.WaistFrontArc, measure.WaistLeftArc},
		{measure.HighHip, measure.HighHipGirth, "", "", "", ""},
		{measure.Hip, measure.HipGirth, measure.HipBreadth, measure.HipDepth, measure.HipFrontArc, measure.HipLeftArc},
	} {
		at := t.At(l.at).Section
		hull := at.Ring().Hull()
		s[l.girth] = hull.Perimeter()
		if l.breadth != "" {
			lo, hi := hull.Bounds()
			s[l.breadth], s[l.depth] = hi.X-lo.X, hi.Y-lo.Y
			s[l.front] = arcBefore(hull, (lo.Y+hi.Y)/2)
			s[l.left] = hull.Perimeter() / 2
		}
	}
	c := t.At(measure.AcrossChest).Section
	s[measure.AcrossFront], s[measure.AcrossBack] = across(c, 1), across(c, -1)
	s[measure.ShoulderLength] = math.Hypot(t.Shoulder.X-t.Neck.X, t.Shoulder.Z-t.Neck.Z)
	for k, v := range walked(t) {
		s[k] = v
	}
	return s
}

// arcBefore is the part of a convex outline's length that lies before y.
func arcBefore(hull plane.Ring, y float64) float64 {
	l := 0.0
	for i, a := range hull {
		b := hull[(i+1)%len(hull)]
		switch {
		case a.Y >= y && b.Y >= y:
			l += a.Dist(b)
		case (a.Y >= y) != (b.Y >= y):
			t := (y - a.Y) / (b.Y - a.Y)
			if a.Y >= y {
				l += t * a.Dist(b)
			} else {
				l += (1 - t) * a.Dist(b)
			}
		}
	}
	return l
}

// across is the length over the front (side 1) or back (−1) between the corners that the
// armscye cuts, which turn most.
func across(s section.Section, side float64) float64 {
	r := s.Ring()
	best, corner := 0.0, 0
	n := len(r)
	for i := range r {
		if r[i].X <= 0 || side*r[i].Y <= 0 {
			continue
		}
		u, v := r[i].Sub(r[(i+n-2)%n]), r[(i+2)%n].Sub(r[i])
		if turn := u.Cross(v) / (u.Norm() * v.Norm()); turn > best {
			best, corner = turn, i
		}
	}
	return 2 * r[corner].X
}

// some keeps the three values that every record needs and every other with a chance.
func some(g *rand.Rand, all measure.Sheet, share float64) measure.Sheet {
	s := measure.Sheet{}
	for _, k := range order {
		v, ok := all[k]
		if !ok {
			continue
		}
		need := k == measure.BustGirth || k == measure.WaistGirth || k == measure.BackWaist
		if keep := g.Float64() < share; keep || need {
			s[k] = v
		}
	}
	return s
}

func randomMount(g *rand.Rand) record.Mount {
	m := record.Mount{Build: []string{"padded", "slices"}[g.IntN(2)], Paper: record.Paper{Name: "A4"}}
	m.Step = []string{"", "inside", "flush", "bevel"}[g.IntN(4)]
	for _, t := range [][]float64{nil, {6}, {3, 6}, {4}, {10}, {2, 8}}[g.IntN(6)] {
		m.Wadding = append(m.Wadding, record.Wadding{Thickness: t})
	}
	if g.IntN(2) == 0 {
		v := []float64{0, 0.5, 1, 2}[g.IntN(4)]
		m.Cover = &v
	}
	if g.IntN(2) == 0 {
		v := []float64{0, 5, 10, 15, 30, 60}[g.IntN(6)]
		m.Ease.All = &v
	} else if g.IntN(2) == 0 {
		m.Ease.ByLevel = map[measure.Level]float64{measure.Waist: 8, measure.Bust: 40, measure.Hip: 25}
	}
	if g.IntN(2) == 0 {
		thick, pole := []float64{12.7, 25, 50, 75, 100}[g.IntN(5)], []float64{0, 20, 32, 42}[g.IntN(4)]
		m.Plank = &record.Plank{Thickness: &thick, Pole: &pole}
	}
	return m
}
