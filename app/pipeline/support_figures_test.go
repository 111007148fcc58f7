package pipeline_test

import (
	"math"
	"math/rand/v2"

	"understructure/app/record"
	"understructure/geometry/measure"
)

// dress adds a skirt and sleeves to some records, and what is to hold them. Sizes are from memory, wide on purpose.
func dress(g *rand.Rand, core measure.Sheet, r *record.Record) {
	long := core[measure.BackWaist] * within(g, [2]float64{1.2, 2.9})
	if g.IntN(3) > 0 {
		r.Garment.Skirt = skirtOf(g, core, long)
	}
	if g.IntN(3) > 0 {
		r.Garment.Sleeve = sleeveOf(g, core)
	}
	if g.IntN(3) == 0 {
		kg := within(g, [2]float64{0.3, 6})
		r.Garment.MassKg = &kg
	}
	m := &r.Mount
	m.Skirt.Support = pick(g, append(record.SkirtSupports, ""))
	m.Skirt.Hold = pick(g, append(record.Holds, ""))
	m.Skirt.Train = pick(g, append(record.Trains, ""))
	m.Skirt.Cut = pick(g, append(record.Cuts, ""))
	if g.IntN(2) == 0 {
		v := long * within(g, [2]float64{0.8, 1.05})
		m.Skirt.StandHeight = &v
	}
	if g.IntN(2) == 0 {
		v, n := within(g, [2]float64{0, 60}), float64(1+g.IntN(9))
		m.Skirt.FloorGap, m.Skirt.Steels = &v, &n
	}
	m.Sleeves.Support = pick(g, append(record.SleeveSupports, ""))
	if g.IntN(4) == 0 {
		v := within(g, [2]float64{5, 40})
		m.Pads = record.Pads{Shoulder: record.Pad{Asked: true}, Bust: record.Pad{Asked: true}, Hip: record.Pad{Asked: true, Projection: &v}, Fill: true}
	}
}

func pick(g *rand.Rand, words []string) string { return words[g.IntN(len(words))] }

// skirtOf is a skirt so long, with a train now and then; most of its readings are taken.
func skirtOf(g *rand.Rand, core measure.Sheet, long float64) measure.Sheet {
	back := long * within(g, [2]float64{0.98, 1.15})
	if g.IntN(4) == 0 {
		back += within(g, [2]float64{150, 900})
	}
	hip := core[measure.HipGirth] * within(g, [2]float64{0.95, 1.8})
	all := []struct {
		key   measure.Key
		value float64
	}{
		{measure.WaistGirth, core[measure.WaistGirth] + 10*g.NormFloat64()}, {measure.HipGirth, hip}, {measure.HemGirth, math.Max(hip, long*within(g, [2]float64{1, 5}))},
		{measure.FrontLength, long}, {measure.SideLength, long + (back-long)*within(g, [2]float64{0, 0.5})}, {measure.BackLength, back},
	}
	s := measure.Sheet{}
	for _, m := range all {
		if row, _ := measure.Find(measure.Skirt, m.key); g.Float64() < 0.75 && row.Possible(math.Round(m.value)) {
			s[m.key] = math.Round(m.value)
		}
	}
	return s
}

// sleeveOf is a sleeve of some length, full now and then.
func sleeveOf(g *rand.Rand, core measure.Sheet) measure.Sheet {
	bust := core[measure.BustGirth]
	upper := bust * within(g, [2]float64{0.3, 0.45})
	if g.IntN(4) == 0 {
		upper *= within(g, [2]float64{1.3, 2.5})
	}
	long := core[measure.BackWaist] * within(g, [2]float64{0.3, 1.5})
	all := []struct {
		key   measure.Key
		value float64
	}{
		{measure.UpperGirth, upper}, {measure.ElbowGirth, bust * within(g, [2]float64{0.26, 0.4})}, {measure.WristGirth, bust * within(g, [2]float64{0.19, 0.4})},
		{measure.SleeveLength, long}, {measure.UnderLength, long * within(g, [2]float64{0.6, 0.9})},
	}
	s := measure.Sheet{}
	for _, m := range all {
		if row, _ := measure.Find(measure.Sleeve, m.key); g.Float64() < 0.75 && row.Possible(math.Round(m.value)) {
			s[m.key] = math.Round(m.value)
		}
	}
	return s
}
