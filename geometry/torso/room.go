package torso

import (
	"math"
	"slices"

	"understructure/geometry/measure"
	"understructure/geometry/section"
)

// row is levels that stand in order from the waist up or down.
type row struct {
	levels []measure.Level
	way    float64 // 1 up, −1 down
	end    float64 // how far from the waist the row may reach, mm
	gap    float64 // the least distance between two of it, and from its ends
}

// ladders are the levels on either side of the waist, up to the shoulder and down as far as
// hips are ever measured: WaistToHip's own limit.
func (d *draft) ladders() [2]row {
	return [2]row{
		{[]measure.Level{measure.Underbust, measure.Bust, measure.Underarm, measure.AcrossChest}, 1, d.z.shoulder, d.step() / 2},
		{[]measure.Level{measure.HighHip, measure.Hip}, -1, lowestHip * d.z.nape, d.step()},
	}
}

// lowestHip is how far below the waist the hip may lie, in heights of the nape above it.
const lowestHip = 1.2

// room is where the level i of the row may stand between two of its levels, or its ends: at
// distances from and to from the waist, counted as levels number first and last.
func (r row) room(i int, from float64, first int, to float64, last int) section.Span {
	return section.Span{Least: from + r.gap*float64(i-first), Most: to - r.gap*float64(last-i)}
}

// pin puts the levels of a row that were set by hand where they were set, as far as their order
// allows: from the waist outwards.
func (d *draft) pin(r row) {
	from, first := 0.0, -1
	for i, l := range r.levels {
		if h := d.hand[l].Height; h != nil {
			from, first = r.room(i, from, first, r.end, len(r.levels)).Clamp(r.way**h), i
			d.z.level[l] = r.way * from
		}
	}
}

// makeRoom moves the other levels of a row between those that are pinned.
func (d *draft) makeRoom(r row) {
	from := 0.0
	for i, l := range r.levels {
		if d.hand[l].Height == nil {
			to, last := d.nextPinned(r, i)
			d.z.level[l] = r.way * r.room(i, from, i-1, to, last).Clamp(r.way*d.z.level[l])
		}
		from = r.way * d.z.level[l]
	}
}

// nextPinned is the first level of the row beyond i that was set by hand, and its distance
// from the waist; the end of the row where there is none.
func (d *draft) nextPinned(r row, i int) (at float64, number int) {
	for k := i + 1; k < len(r.levels); k++ {
		if d.hand[r.levels[k]].Height != nil {
			return r.way * d.z.level[r.levels[k]], k
		}
	}
	return r.end, len(r.levels)
}

// neckRoom is how high the neck base may be set by hand: with a back from well under to
// well over the one taken (our judgement).
func (d *draft) neckRoom() section.Span {
	back := d.sheet[measure.BackWaist]
	return section.Span{Least: 0.6 * back, Most: 1.5 * back}
}

// shoulderRoom is how high the shoulder point may be set by hand under a neck point.
func (d *draft) shoulderRoom() section.Span {
	most := math.Min(d.z.neck/3, 0.95*d.upper.shoulderLength)
	return section.Span{Least: d.z.neck - most, Most: d.z.neck - math.Min(d.step(), most)}
}

// moved reports whether the hand set a height in the row.
func (d *draft) moved(r row) bool {
	return slices.ContainsFunc(r.levels, func(l measure.Level) bool { return d.hand[l].Height != nil })
}
