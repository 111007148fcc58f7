package nest

import "slices"

// admit tries to make room for pieces that were not laid, by pushing the others together.
func (j *job) admit() {
	left := j.wait
	if len(j.rooms) == 0 {
		return
	}
	j.wait = nil
	for k, it := range left {
		j.meter.stage(0.5 / float64(len(left)-k))
		saved := slices.Clone(j.items[:j.moves])
		j.laid = append(saved, it)
		j.gather()
		if last := &j.items[j.moves-1]; !j.settleAnywhere(last) || !j.separateAnew() {
			j.wait = append(j.wait, it)
			j.laid = saved
			j.gather()
		} else {
			j.laid = slices.Clone(j.items[:j.moves])
		}
	}
}

// settleAnywhere puts an item into some room that it fits.
func (j *job) settleAnywhere(it *item) bool {
	it.room = -1
	j.settle(it)
	return it.room >= 0
}

// separateAnew separates the crowd after items were moved.
func (j *job) separateAnew() bool {
	j.measureAll()
	j.unload()
	return j.separate(patience, strikes)
}
