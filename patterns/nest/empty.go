package nest

import "slices"

// empty tries to do without the emptiest whole bin, as often as that succeeds.
func (j *job) empty() {
	for j.spare(j.emptiest()) {
		r := j.emptiest()
		items, hi := slices.Clone(j.items), j.rooms[r].hi
		j.meter.stage(0.5)
		j.rooms[r].hi.X = j.rooms[r].lo.X - 1 // nothing fits any more
		for i := range j.items[:j.moves] {
			j.settle(&j.items[i])
		}
		if !j.separateAnew() {
			copy(j.items, items)
			j.rooms[r].hi = hi
			j.measureAll()
			return
		}
	}
}

// emptiest is the whole bin in use on which the least lies; where there are only offcuts, the emptiest of those.
func (j *job) emptiest() int {
	best, least := -1, 0.0
	for _, offcuts := range []bool{false, true} {
		for r, b := range j.bins {
			if a := j.filled(r); j.stock[b.stock].Offcut == offcuts && a > 0 && (best < 0 || a < least) {
				best, least = r, a
			}
		}
		if best >= 0 {
			break
		}
	}
	return best
}

// filled is the area of the pieces that lie in a room.
func (j *job) filled(r int) float64 {
	a := 0.0
	for _, it := range j.items[:j.moves] {
		if it.room == r {
			a += j.area[it.kind]
		}
	}
	return a
}

// spare reports whether, by area and by the size of the pieces, one could do without a whole bin.
func (j *job) spare(r int) bool {
	if j.stock[j.bins[r].stock].Offcut {
		return false
	}
	room, need := 0.0, 0.0
	for k, b := range j.bins {
		need += j.filled(k)
		if k != r && j.filled(k) > 0 {
			room += clean(j.stock[b.stock].Outline).Area()
		}
	}
	if need > room {
		return false
	}
	for i := range j.items[:j.moves] {
		if it := &j.items[i]; it.room == r && !j.fitsElse(it) {
			return false
		}
	}
	return true
}

// fitsElse reports whether an item fits into another room.
func (j *job) fitsElse(it *item) bool {
	for k, r := range j.rooms {
		for _, o := range j.of[it.kind] {
			if _, _, fits := r.span(&j.poses[o]); fits && k != it.room {
				return true
			}
		}
	}
	return false
}
