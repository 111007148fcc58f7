package torso

import (
	"math"

	"understructure/geometry/curve"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/section"
)

// lengthTolerance is how closely a length along the skin is met, mm: a fiftieth of what a
// tape can be read to.
const lengthTolerance = 0.02

// step is the least distance between two levels: closer, and a tape could not tell them apart.
func (d *draft) step() float64 { return 0.03 * d.sheet[measure.BackWaist] }

// startHeights places the levels where statistics expect them for the back length.
func (d *draft) startHeights() {
	d.fixed = map[measure.Level]float64{}
	for _, l := range []measure.Level{measure.Underarm, measure.Bust, measure.HighHip, measure.Hip} {
		if h := d.hand[l].Height; h != nil {
			d.fixed[l] = *h
		}
	}
	d.place(0.97 * d.sheet[measure.BackWaist])
}

// place puts the nape at a height, every level that a length along the skin has fixed
// where that put it, and every other in its usual place.
func (d *draft) place(nape float64) {
	s := d.stats.heights
	if h := d.hand[measure.NeckBase].Height; h != nil {
		nape = d.neckRoom().Clamp(*h) / (1 + s.neckAbove)
	}
	d.z = heights{nape: nape, level: map[measure.Level]float64{measure.Waist: 0}}
	d.z.level[measure.HighHip] = d.fixedOr(measure.HighHip, -s.highHip*nape)
	d.z.level[measure.Hip] = d.fixedOr(measure.Hip, -s.hip*nape)
	d.z.level[measure.Bust] = d.fixedOr(measure.Bust, s.bust*nape)
	d.z.level[measure.Underarm] = d.fixedOr(measure.Underarm, math.Max(s.underarm*nape, d.z.level[measure.Bust]+d.step()))
	d.z.neckFront = d.fixedOr(measure.NeckBase, nape-s.pitBelow*nape)
	d.order()
}

func (d *draft) fixedOr(l measure.Level, usual float64) float64 {
	if h, ok := d.fixed[l]; ok {
		return h
	}
	return usual
}

// order keeps the levels above one another while lengths are being tried: from the nape
// down, each at least a step below the one before.
func (d *draft) order() {
	z, step := &d.z, d.step()
	z.neck = z.nape * (1 + d.stats.heights.neckAbove)
	fall := d.upper.shoulderLength * math.Sin(d.upper.slope)
	z.shoulder = z.neck - math.Min(math.Max(fall, step), z.neck/3)
	if h := d.hand[measure.Shoulder].Height; h != nil {
		z.shoulder = d.shoulderRoom().Clamp(*h)
		d.upper.slope = math.Asin((z.neck - z.shoulder) / d.upper.shoulderLength)
	}
	atMost := func(l measure.Level, most float64) { z.level[l] = math.Min(z.level[l], most) }
	atMost(measure.Underarm, z.shoulder-2*step)
	atMost(measure.Bust, z.level[measure.Underarm]-step/2)
	z.level[measure.Underbust] = z.level[measure.Bust] * d.stats.heights.underbust
	z.level[measure.AcrossChest] = z.level[measure.Underarm] + d.stats.heights.acrossChest*(z.shoulder-z.level[measure.Underarm])
	z.level[measure.NeckBase], z.level[measure.Shoulder] = z.neck, z.shoulder
	atMost(measure.Hip, -2*step)
	atMost(measure.HighHip, -step)
	z.level[measure.HighHip] = math.Max(z.level[measure.HighHip], z.level[measure.Hip]+step)
	for _, r := range d.ladders() {
		if d.moved(r) {
			d.pin(r)
			d.makeRoom(r)
		}
	}
	z.neckFront = math.Min(math.Max(z.neckFront, z.level[measure.AcrossChest]+step/2), z.neck)
}

// mostRounds is how often the lengths are gone through; real sheets settle in three or four.
const mostRounds = 12

// solveHeights moves the levels until every length along the skin comes out as taken. The
// lengths hang together only weakly, so a few rounds of one after the other settle them.
func (d *draft) solveHeights() {
	d.place(d.z.nape)
	d.bendUpper()
	back := d.sheet[measure.BackWaist]
	for range mostRounds {
		before := d.z
		d.solve(measure.BackWaist, 0.6*back, 1.001*back, d.place)
		for i := range d.below() {
			l := d.below()[i] // its range depends on the levels settled so far
			d.solve(l.key, l.lo, l.hi, func(h float64) {
				d.fixed[l.level] = h
				d.place(d.z.nape)
			})
		}
		d.bendUpper()
		if d.settled(before) {
			break
		}
	}
	d.reportLengths()
}

// settled reports whether the lengths that were solved for first are still met; where the hand
// has overruled the one that tells, whether nothing has moved.
func (d *draft) settled(before heights) bool {
	if _, moved := d.movedBy(measure.BackWaist); !moved {
		return math.Abs(d.length(measure.BackWaist)-d.sheet[measure.BackWaist]) < lengthTolerance
	}
	most := math.Abs(d.z.neckFront - before.neckFront)
	for l, h := range d.z.level {
		most = math.Max(most, math.Abs(h-before.level[l]))
	}
	return most < lengthTolerance
}

// movable is a level that a length along the skin settles, and the range it may move in.
type movable struct {
	key    measure.Key
	level  measure.Level // the neck base stands for the centre front of the neck
	lo, hi float64
}

// below lists the lengths under the nape, in the order in which they depend on one another.
func (d *draft) below() []movable {
	z, step := d.z, d.step()
	ceiling := z.shoulder - 2*step
	ms := []movable{
		{measure.SideLength, measure.Underarm, z.at(measure.Bust) + step/2, ceiling},
		{measure.NeckToBustPoint, measure.Bust, 2 * step, z.at(measure.Underarm) - step/2},
		{measure.FrontWaist, measure.NeckBase, z.at(measure.AcrossChest) + step/2, z.neck},
		{measure.WaistToHighHip, measure.HighHip, z.at(measure.Hip) + step, -step},
		{measure.WaistToHip, measure.Hip, -lowestHip * z.nape, z.at(measure.HighHip) - step},
	}
	if _, ok := d.sheet[measure.SideLength]; !ok {
		ms = append(ms, movable{measure.ArmscyeGirth, measure.Underarm, z.at(measure.Bust) + step/2, ceiling})
	}
	return ms
}

// solve moves one height so that its length comes out as taken; where it cannot, it goes
// to the nearer end and the length stays as it is.
func (d *draft) solve(k measure.Key, lo, hi float64, set func(float64)) {
	want, ok := d.sheet[k]
	if _, moved := d.movedBy(k); !ok || moved || lo >= hi {
		return
	}
	off := func(h float64) float64 {
		set(h)
		return d.length(k) - want
	}
	h, err := curve.Root(off, lo, hi, lengthTolerance/10)
	if err != nil {
		h = lo
		if math.Abs(off(hi)) < math.Abs(off(lo)) {
			h = hi
		}
	}
	set(h)
}

// length measures the figure as it stands, along a taut tape.
func (d *draft) length(k measure.Key) float64 {
	if k == measure.ArmscyeGirth {
		return loopLength(d.armscye())
	}
	z := d.z
	switch k {
	case measure.BackWaist:
		return tape(d.column(section.Back), 0, z.nape)
	case measure.FrontWaist:
		return tape(d.column(section.Front), 0, z.neckFront)
	case measure.SideLength:
		return tape(d.column(section.Right), 0, z.at(measure.Underarm))
	case measure.WaistToHip:
		return tape(d.column(section.Right), z.at(measure.Hip), 0)
	case measure.WaistToHighHip:
		return tape(d.column(section.Right), z.at(measure.HighHip), 0)
	case measure.NeckToBustPoint:
		neck := plane.Point{X: d.upper.neck.Right, Y: d.upper.ridge}
		return d.stack().overBust(neck, d.bustPoint(), z.neck, z.at(measure.Bust))
	}
	panic("torso: not a length along the skin")
}

// bustPoint is where the right bust point lies: on the tape outline, at the tip of a lobe;
// on a figure without lobes half the half breadth out (from memory).
func (d *draft) bustPoint() plane.Point {
	b := d.bodies[measure.Bust]
	x := b.Lobe
	if x == 0 {
		x = b.Breadth / 4
	}
	return plane.Point{X: x, Y: b.FrontAt(x)}
}

// along lists the lengths that a sheet may hold, in the order in which one measures.
var along = []measure.Key{
	measure.BackWaist, measure.FrontWaist, measure.NeckToBustPoint, measure.SideLength,
	measure.WaistToHighHip, measure.WaistToHip, measure.ArmscyeGirth,
}

// reportLengths writes down every length as taken and as built, and says where they differ.
func (d *draft) reportLengths() {
	for _, k := range along {
		taken, ok := d.sheet[k]
		if !ok {
			continue
		}
		built := d.length(k)
		d.lengths = append(d.lengths, Length{Key: k, Taken: taken, Built: built})
		if l, moved := d.movedBy(k); moved {
			d.noteOverruled("hand-overrules-length", l, k, taken, built)
		} else if diff := math.Abs(taken - built); diff > d.believableOf(k) {
			d.note("lengths-disagree", k, diff, "The %s was taken as %.0f mm, but with the other readings the figure has %.0f mm there: they disagree by %.0f mm. Measure again; the smaller is trusted.", label(k), taken, built, diff)
		}
	}
}

// believableOf is by how much a length along the skin may miss its reading without a word,
// mm. The way of the armscye over the skin is a drawn one, so that it shows only a
// disagreement of a tenth (our judgement).
func (d *draft) believableOf(k measure.Key) float64 {
	if k == measure.ArmscyeGirth {
		return d.sheet[k] / 10
	}
	return believable
}

// believable is by how much the figure may miss a reading without a word, mm.
const believable = 1.0

// label is a measurement in words.
func label(k measure.Key) string {
	if m, ok := measure.Find(measure.Keys, k); ok {
		return m.Label
	}
	return string(k)
}
