package nest

import "slices"

// pullBack moves what lies in the last bin back into the others, where there is room for it.
func (j *job) pullBack(last int) {
	all := slices.Clone(j.items[:j.moves])
	for k, it := range all {
		if it.room != last {
			continue
		}
		j.laid = append(slices.Clone(all[:k]), all[k+1:]...)
		for r := range j.rooms {
			if r != last && j.lay(&it, r) {
				all[k] = it
				break
			}
		}
	}
	j.laid = all
	j.gather()
}

// trade lays what lies in the last bin on a smaller stock, if there is one that holds it.
func (j *job) trade() {
	r := j.emptiest()
	now := clean(j.stock[j.bins[r].stock].Outline).Area()
	if j.stock[j.bins[r].stock].Offcut {
		return
	}
	for s, st := range j.stock {
		if st.Offcut || st.Count > 0 && j.used[s] >= st.Count || clean(st.Outline).Area() >= now {
			continue
		}
		if j.moved(r, j.open(s)) {
			now = clean(st.Outline).Area()
			r = len(j.rooms) - 1
		} else {
			j.shut()
		}
	}
}

// moved lays everything that lies in one room in another, which is empty, or nothing.
func (j *job) moved(from, to int) bool {
	j.laid = nil
	var moving []item
	for _, it := range j.items[:j.moves] {
		if it.room == from {
			moving = append(moving, it)
		} else {
			j.laid = append(j.laid, it)
		}
	}
	for _, it := range moving {
		if !j.lay(&it, to) {
			j.laid = slices.Clone(j.items[:j.moves])
			return false
		}
		j.laid = append(j.laid, it)
	}
	slices.SortStableFunc(j.laid, j.byBulk)
	j.gather()
	return true
}
